package main

import "brimline/internal/simulate"

func twoPegs(c config) *report {
	r := &report{}
	m := simulate.Methods[0]
	a := gather(c, r, c.n, c.kind(0), func(seed uint64, k int) rates {
		return spoiled(simulate.Pool(seed, shape(k), m, simulate.Options{}))
	})
	r.plain(m.Name(), "solved", a.solved, a.tried)
	r.plain(m.Name(), "mistakes beyond 1.25 × detectable, of all planted", a.counts, a.planted)
	r.atLeast(m.Name(), "of those suspect or doubtful", a.shown, a.counts, 95)
	r.plain(m.Name(), "of those suspect", a.suspect, a.counts)
	r.atLeast(m.Name(), "suspect readings that are wrong", a.wrongSuspect, a.wrongSuspect+a.wronglyNamed, 95)
	r.plain(m.Name(), "good readings doubtful", a.goodDoubtful, a.good)
	r.plain(m.Name(), "right code first, value within 2 mm", a.rightCode, a.named)
	return r
}
