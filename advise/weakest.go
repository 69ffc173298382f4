package advise

import (
	"math"

	"brimline/adjust"
)

// Weak is a place where much could hide: an error of up to Error in a part could stand unseen and
// move the edge at Mark by Move. Both are infinite where any error could hide. Expose is the tie
// that would raise the redundancy of the part most per minute, its reason "repeat" where it was read
// already; nil where none would.
type Weak struct {
	Part, Mark  int
	Error, Move float64
	Expose      *Proposal
}

// Weakest gives, of the orders' figures that belong to a mark, the few where most could hide: the
// part and the mark whose figure an error of the size detectable (see adjust) in it moves most,
// the worst first, each part and each mark named once. Where a part of redundancy below
// adjust.LeastRed moves a figure by more than adjust.Influence of its own error, anything could
// hide; these go first, those with most influence before the others.
func Weakest(s *adjust.Solution, orders []Order, o Options, count int) []Weak {
	o = o.filled()
	if s.Rows == 0 {
		return nil
	}
	g := newGround(s, nil)
	g.everyPart()
	g.addProbes(orders)
	marks := make([]int, len(g.probes)) // −1: belongs to no mark
	for t := range g.probes {
		p := &g.probes[t]
		mark, ok := s.Net.ByName[orders[p.order].Asks[p.ask].At]
		if marks[t] = mark; !ok || !p.placed {
			marks[t] = -1
		}
	}
	all := g.candidates(o)
	usedMark, usedCause := make([]bool, len(s.Net.Marks)), make([]bool, len(g.causes))
	var out []Weak
	for len(out) < count {
		w, ok := g.weakAmong(marks, usedMark, usedCause)
		if !ok {
			break
		}
		usedMark[w.mark], usedCause[w.cause] = true, true
		c := &g.causes[w.cause]
		out = append(out, Weak{Part: c.parts[0], Mark: w.mark, Error: w.size, Move: w.move, Expose: g.expose(c, all, o)})
	}
	return out
}

type weak struct {
	cause, mark int
	size, move  float64
	unit        float64 // move by one unit of error
}

func (w weak) more(than weak) bool {
	if w.move != than.move {
		return w.move > than.move
	}
	return w.unit > than.unit
}

// everyPart lists a cause for every part that takes part.
func (g *ground) everyPart() {
	s := g.s
	for i := range s.Net.Obs {
		for p := s.First[i]; p < s.First[i+1]; p++ {
			if !s.In[i] || s.Out[p] {
				continue
			}
			c := cause{parts: []int{p}, shift: make([]float64, g.n), quad: s.Redund[p] / (s.SD[p] * s.SD[p])}
			g.single(adjust.Pattern{Parts: c.parts, Size: []float64{1}}, c.shift)
			g.causes = append(g.causes, c)
		}
	}
}

// weakAmong is the part and mark, among those not used, where most could hide; false where nothing
// moves.
func (g *ground) weakAmong(marks []int, usedMark, usedCause []bool) (weak, bool) {
	best, found := weak{}, false
	for c := range g.causes {
		if usedCause[c] {
			continue
		}
		p := g.causes[c].parts[0]
		blind := g.s.Redund[p] < adjust.LeastRed
		for t, m := range marks {
			if m < 0 || usedMark[m] {
				continue
			}
			unit := math.Abs(g.moves[c*len(g.probes)+t])
			w := weak{cause: c, mark: m, size: g.s.Detectable[p], move: unit * g.s.Detectable[p], unit: unit}
			if blind {
				w.size, w.move = math.Inf(1), math.Inf(1)
			}
			if blind && unit <= adjust.Influence || unit < 1e-9 {
				continue
			}
			if !found || w.more(best) {
				best, found = w, true
			}
		}
	}
	return best, found
}

// repeatWorth is what a second reading of a tie is worth beside a tie not read yet of the same gain:
// who reads it again may take the same wrong mark, peg or edge. Common practice, no source.
const repeatWorth = 0.5

// expose finds the tie that raises the redundancy of a part most per minute; see repeatWorth.
func (g *ground) expose(c *cause, all []candidate, o Options) *Proposal {
	p := c.parts[0]
	var best [2]float64 // of ties not read yet, and read already
	at := [2]int{-1, -1}
	for i := range all {
		k := all[i].along(c.shift)
		read := min(all[i].reads, 1)
		if v := k * k / all[i].total(g) / all[i].minutes; v > best[read]*(1+1e-9) && (!o.Alone || all[i].hooked) {
			best[read], at[read] = v, i
		}
	}
	read := 0
	if at[0] < 0 || best[0] < repeatWorth*best[1] {
		read = 1
	}
	sd := g.s.SD[p]
	if at[read] < 0 || best[read]*all[at[read]].minutes*sd*sd < adjust.LeastRed {
		return nil
	}
	a := all[at[read]]
	return &Proposal{Kind: "tie", Marks: []int{a.a, a.b}, About: a.about, Gain: best[read] * a.minutes * sd * sd, Unit: "redundancy", Minutes: a.minutes,
		Alone: a.hooked, Why: Reason{Code: []string{"control", "repeat"}[read], Obs: []int{g.s.ObsOf(p)}}}
}
