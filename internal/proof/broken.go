package main

import "brimline/internal/simulate"

// broken is the section singles where what the book states is not so, each assumption in turn.
func broken(c config) *report {
	r := &report{}
	kinds := simulate.Assumptions
	for i, s := range kinds {
		a := gather(c, r, c.n/len(kinds), c.kind(i), func(seed uint64, k int) rates {
			v := simulate.Visit(seed, shape(k), wellRead[k/len(simulate.Shapes)%len(wellRead)])
			return spoiled(s.Break(v, seed))
		})
		a.tell(r, s.Name, false)
	}
	return r
}
