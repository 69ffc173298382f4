package main

import (
	"math"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/locate"
	"brimline/network"
	"brimline/plane"
)

// start plants gross errors in 5 % of the readings and asks how often the start coordinates of
// all marks that no wrong reading touches still form the true figure, not mirrored, within
// nearEnough, before anything is rejected. Without a band.
func start(c config) *report {
	r := &report{}
	for i, m := range simulate.Methods {
		right := 0
		for k, ok := range pools(c.n, func(k int) bool {
			s := c.kind(i) + uint64(k)
			return located(simulate.Wrong(simulate.Pool(s, shape(k), m, simulate.Options{}), s, 0.05))
		}) {
			if ok {
				right++
			} else {
				r.miss(c, "%s seed %d", m.Name(), c.kind(i)+uint64(k))
			}
		}
		r.plain(m.Name(), "right", right, c.n)
	}
	return r
}

const nearEnough = 0.3 // metres

func located(c simulate.Case, gross []simulate.Gross) bool {
	b, err := fieldbook.Parse("pool.yaml", c.Book)
	if err != nil {
		return false
	}
	touched := map[string]bool{}
	for _, g := range gross {
		for _, name := range c.Readings[g.Index].Marks {
			touched[name] = true
		}
	}
	n, _ := network.Build(&b, nil)
	x := locate.Find(n).X
	var from, to []plane.Point
	for _, name := range everyMark(c) {
		p := x.Point(n.ByName[name])
		if math.IsNaN(p.X) && !touched[name] {
			return false
		}
		if !touched[name] {
			from, to = append(from, c.Truth[name]), append(to, p)
		}
	}
	fit, ok := plane.FitRigid(from, to, nil)
	for k := range from {
		ok = ok && fit.Apply(from[k]).Dist(to[k]) < nearEnough
	}
	return ok
}
