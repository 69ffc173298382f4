package adjust

import (
	"context"
	"math"
	"sort"

	"brimline/network"
)

// restart begins again with weights 1/(1+(u/c)²) (Cauchy; Huber and Ronchetti, Robust
// Statistics, 2009, section 4.8), c shrinking from the spread of the start to 2: large errors
// lose their pull, and the plain solution that follows keeps the better of both places.
func (s *Solution) restart(ctx context.Context, from network.State, most int) {
	plain := append(network.State(nil), s.X...)
	settled := s.Converged
	copy(s.X, from)
	w := make([]float64, s.First[len(s.In)])
	c := 0.0
	for step := range robustSteps {
		var us []float64
		s.each(s.X, func(_ int, u float64) { us = append(us, math.Abs(u)) })
		sort.Float64s(us)
		if median := us[len(us)/2]; step == 0 || c > 3*median {
			c = 3 * median
		}
		c = math.Max(c*0.6, 2)
		s.each(s.X, func(p int, u float64) { w[p] = 1 / (1 + u*u/(c*c)) })
		s.iterate(ctx, w, 3)
	}
	s.Robust = append(network.State(nil), s.X...)
	far := func(x network.State) int { // readings far outside: fewer is the better place
		n := 0
		s.each(x, func(_ int, u float64) {
			if math.Abs(u) > 5 {
				n++
			}
		})
		return n
	}
	robust, before := far(s.X), far(plain)
	s.Converged = s.iterate(ctx, nil, most)
	if settled && robust >= before && s.cost(plain) <= s.cost(s.X)*(1+1e-9) {
		copy(s.X, plain)
		s.Converged = true
	}
}

const robustSteps = 12
