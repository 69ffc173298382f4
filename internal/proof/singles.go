package main

import (
	"math"

	"brimline/internal/simulate"
)

// wellRead are the ways in which each mark is read twice more than fixes it, by number. Taken
// strictly, so that any two of its readings may be lost and the rest still cross well at it, that
// is not so of every mark: one in line with two of four pegs is not fixed by these two. The bands
// of what must be found hold for the marks of which it is so by the true design; the rates over
// all marks stand below.
var wellRead = []simulate.Plan{
	{Called: "four pegs", Pegs: 4, PegTies: true, Base: 2},
	{Called: "three pegs and every neighbour", Pegs: 3, PegTies: true, Base: 3, Rows: true, Neighbours: true, Checks: 4},
}

func singles(c config) *report {
	r := &report{}
	var all rates
	for i, p := range wellRead {
		a := gather(c, r, c.n/len(wellRead), c.kind(i), func(seed uint64, k int) rates {
			return spoiled(simulate.Visit(seed, shape(k), p))
		})
		a.tell(r, p.Called, false)
		all.add(a)
	}
	all.tell(r, "all", true)
	return r
}

// tell writes the rates down, with their bands where they have one.
func (a rates) tell(r *report, group string, banded bool) {
	open := math.NaN()
	least, most := func(v float64) float64 { return v }, func(v float64) float64 { return v }
	if !banded {
		least, most = func(float64) float64 { return open }, func(float64) float64 { return open }
	}
	r.plain(group, "solved", a.solved, a.tried)
	r.plain(group, "mistakes beyond 1.25 × detectable, of all planted", a.counts, a.planted)
	r.plain(group, "of those at marks that can lose any two readings", a.spared, a.counts)
	r.atLeast(group, "at such marks: suspect or doubtful", a.sparedShown, a.spared, least(98))
	r.atLeast(group, "at such marks: suspect", a.sparedSuspect, a.spared, least(95))
	r.atLeast(group, "at all marks: suspect or doubtful", a.shown, a.counts, least(98))
	r.atLeast(group, "at all marks: suspect", a.suspect, a.counts, least(95))
	r.plain(group, "of those suspect, no other mistake at the mark", a.sole, a.alone)
	r.atMost(group, "good readings suspect", a.goodSuspect, a.good, most(0.5))
	r.atMost(group, "good readings doubtful", a.goodDoubtful, a.good, most(1))
	r.atLeast(group, "right code first, value within 2 mm", a.rightCode, a.named, least(90))
	r.atLeast(group, "of no listed kind: unknown first, no value", a.leftOpen, a.other, least(80))
}
