package outline

import (
	"math"
	"slices"

	"brimline/plane"
)

// rivals are ways that differ from one in how two pieces join, where that is nearly as good, or in
// that an arc hardly bent is a straight.
func (g *graph) rivals(w way) []way {
	const near = 6
	out := g.eased(w)
	for k := range w.piece {
		before := w.piece[(k+len(w.piece)-1)%len(w.piece)]
		if k == 0 && !g.t.ring {
			continue
		}
		for _, l := range g.next[before] {
			if l.to == w.piece[k] && l.rival < near && l.how == w.how[k] {
				v := w
				v.how = slices.Clone(w.how)
				v.how[k] = l.other
				v.score += l.rival
				out = append(out, v)
			}
		}
		if i := g.flatter(w.piece[k]); i >= 0 {
			v := w
			v.piece = slices.Clone(w.piece)
			v.piece[k] = i
			v.score += g.cost[i] - g.cost[w.piece[k]]
			out = append(out, v)
		}
	}
	return out
}

// eased is the way with every kink that bends but little made tangent, and each such kink alone: of
// a short arc the search sees too little to tell.
func (g *graph) eased(w way) []way {
	all := w
	all.how = slices.Clone(w.how)
	var out []way
	for k, i := range w.piece {
		p, q := &g.piece[w.piece[(k+len(w.piece)-1)%len(w.piece)]], &g.piece[i]
		if k == 0 && !g.t.ring || w.how[k].kind != "kink" || w.how[k].loose != atMark || p.kind == "straight" && q.kind == "straight" {
			continue
		}
		at := g.t.point(q.from)
		if math.Abs(plane.Between(p.along(at), q.along(at))) > mostTurn {
			continue
		}
		all.how[k] = joint{kind: "tangent", loose: nearMark}
		one := w
		one.how = slices.Clone(w.how)
		one.how[k] = all.how[k]
		out = append(out, one)
	}
	if len(out) > 1 {
		out = append([]way{all}, out...)
	}
	return out
}

// flatter is the straight through the marks of an arc that is hardly bent, −1 of others.
func (g *graph) flatter(i int) int {
	const hardly = 50
	p := &g.piece[i]
	if p.kind != "arc" || p.k*p.k > hardly*p.cov[2][2] {
		return -1
	}
	for j := g.first[p.from]; j < g.first[p.from+1]; j++ {
		if q := &g.piece[j]; q.kind == "straight" && q.to == p.to {
			return j
		}
	}
	return -1
}
