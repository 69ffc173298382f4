package outline

import (
	"cmp"
	"math"
	"slices"
)

// plans are the descriptions worth fitting: the fair curve through all marks, the circle, the
// best found by the approximate scores of the search, and what is nearly as good.
func (t *trail) plans() []plan {
	const most = 5
	g := newGraph(t)
	out := []plan{g.fair()}
	if c, ok := g.circle(); ok {
		out = append(out, c)
	}
	var taken []way
	for _, e := range g.ends() {
		if len(taken) == most {
			break
		}
		if slices.ContainsFunc(taken, e.part) {
			continue
		}
		if w := g.way(e.s, e.i, e.fore, e.back); !slices.ContainsFunc(taken, func(v way) bool { return g.same(v, w) }) {
			taken = append(taken, w)
			out = append(out, g.plan(w))
		}
	}
	if len(taken) > 0 {
		parent := len(out) - len(taken)
		for _, w := range g.rivals(taken[0]) {
			p := g.plan(w)
			p.rivals = parent
			out = append(out, p)
		}
	}
	return out
}

// ends are the cheapest ways through each piece that are nearly as good as the best, best first.
func (g *graph) ends() []end {
	const near = 9
	var ends []end
	best := math.Inf(1)
	for _, s := range g.starts() {
		fore, back := g.through(s)
		for i := range g.piece {
			if s >= 0 && g.piece[s].kind == "curve" && g.piece[i].kind == "curve" {
				continue // may be all one curve, which stands in the list already
			}
			if v := fore[i].score + back[i].score; v < best+near {
				ends = append(ends, end{v, s, i, fore, back})
				best = math.Min(best, v)
			}
		}
	}
	ends = slices.DeleteFunc(ends, func(e end) bool { return e.score >= best+near })
	slices.SortStableFunc(ends, func(a, b end) int {
		if d := a.score - b.score; d < -tie || d > tie {
			return cmp.Compare(d, 0)
		}
		return 0
	})
	return ends
}

// same says that two ways tell of the same pieces, none of whose joints lie further apart than a
// mark and the next: a loose joint finds its place in either.
func (g *graph) same(v, w way) bool {
	n := len(v.piece)
	if n != len(w.piece) {
		return false
	}
	turns := n
	if !g.t.ring {
		turns = 1
	}
	for turn := range turns {
		alike := true
		for k := range n {
			a, b := &g.piece[v.piece[k]], &g.piece[w.piece[(k+turn)%n]]
			p, q := v.how[k], w.how[(k+turn)%n]
			d := 2*a.from - 2*b.from
			if p.loose == between {
				d--
			}
			if q.loose == between {
				d++
			}
			if g.t.ring {
				d = (d+3*len(g.t.at))%(2*len(g.t.at)) - len(g.t.at)
			}
			reach := 2
			if p.kind == "kink" && p.loose == atMark {
				reach = 0
			}
			alike = alike && a.kind == b.kind && p.kind == q.kind && max(d, -d) <= reach
		}
		if alike {
			return true
		}
	}
	return false
}

// end is the cheapest way through piece i and s.
type end struct {
	score      float64
	s, i       int
	fore, back []label
}

// part says that a way goes through the piece at the same score: it is the same way.
func (e end) part(w way) bool {
	return math.Abs(w.score-e.score) < tie && slices.Contains(w.piece, e.i)
}

// starts are the pieces of which one must stand in every description of a ring: those over the
// gap between two marks that the fewest lie over.
func (g *graph) starts() []int {
	if !g.t.ring {
		return []int{-1}
	}
	over := make([][]int, len(g.t.at))
	for i, p := range g.piece {
		for m := p.from; m < p.to; m++ {
			over[g.t.index(m)] = append(over[g.t.index(m)], i)
		}
	}
	least := 0
	for m := range over {
		if len(over[m]) < len(over[least]) {
			least = m
		}
	}
	out := over[least]
	for skip := range 1 + mostFilled { // a joint, or an arc between two straights, may lie over the gap itself
		next := g.t.index(least + 1 + skip)
		for j := g.first[next]; j < g.first[next+1]; j++ {
			if skip == 0 || g.piece[j].kind == "straight" && !slices.Contains(out, j) {
				out = append(out, j)
			}
		}
	}
	return out
}
