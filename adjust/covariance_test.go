package adjust_test

import (
	"math"
	"testing"

	"brimline/adjust"
)

// Covariance, redundancy, w and detectable sizes of ten random networks against full matrices.
func TestAgainstDense(t *testing.T) {
	for seed := range uint64(10) {
		m := pool(seed, 6+int(seed), 1, seed%2 == 0)
		s := m.solve(t)
		d := denseOf(t, s)
		tol := 1e-7 * largest(d.c)
		marks := make([]int, len(m.n.Marks))
		for i := range marks {
			marks[i] = i
		}
		all := s.Cov(marks...)
		for i := range 2 * len(marks) {
			for j := range 2 * len(marks) {
				near(t, "covariance by solving", all[i*2*len(marks)+j], d.c.At(i, j), tol)
			}
		}
		for i := range marks {
			c := s.MarkCov(i)
			for k, at := range [][2]int{{0, 0}, {0, 1}, {1, 1}} {
				near(t, "covariance of a mark", c[k], d.c.At(2*i+at[0], 2*i+at[1]), tol)
			}
		}
		pair := s.Cov(3, 0, 4) // ties bind these: the selected inverse holds them
		for i, p := range []int{6, 7, 0, 1, 8, 9} {
			for j, q := range []int{6, 7, 0, 1, 8, 9} {
				near(t, "selected covariance", pair[i*6+j], d.c.At(p, q), tol)
			}
		}
		for b := range m.n.Setups {
			at := m.n.Offset[m.n.SetupBlock(b)]
			near(t, "sd of a turn", s.BlockSD(int(m.n.SetupBlock(b)), 2), math.Sqrt(d.c.At(at+2, at+2)), 1e-7)
		}
		sum := 0.0
		for r, p := range d.part {
			var q float64
			for i := range s.X {
				for j := range s.X {
					q += d.a.At(r, i) * d.c.At(i, j) * d.a.At(r, j)
				}
			}
			sum += s.Redund[p]
			near(t, "redundancy", s.Redund[p], 1-q, 1e-7)
			if 1-q < 0.05 {
				continue
			}
			near(t, "w", s.W[p], s.Residual[p]/(d.sd[r]*math.Sqrt(1-q)), 1e-6*(1+math.Abs(s.W[p])))
			near(t, "detectable", s.Detectable[p], adjust.Shift*d.sd[r]/math.Sqrt(1-q), 1e-7)
		}
		near(t, "sum of redundancies", sum, float64(s.Rows-s.Unknowns), 1e-6)
		if s.Redundancy != s.Rows-len(d.free) {
			t.Errorf("redundancy %d of %d rows and %d unknowns", s.Redundancy, s.Rows, len(d.free))
		}
	}
}

// Residuals are adjusted minus read and stand at right angles to the columns of the problem.
func TestStationary(t *testing.T) {
	for seed := range uint64(6) {
		s := pool(seed, 9, 1, seed%2 == 0).solve(t)
		d := denseOf(t, s)
		for _, c := range d.free {
			sum, size := 0.0, 0.0
			for r, p := range d.part {
				v := d.a.At(r, c) * s.Residual[p] / d.sd[r]
				sum += v
				size += math.Abs(v)
			}
			near(t, "gradient", sum, 0, 1e-6*size+1e-8) // a whole row is some 250
		}
		cost := 0.0
		for i := range s.Net.Obs {
			o := &s.Net.Obs[i]
			for k := range o.Values {
				near(t, "residual", s.Residual[s.First[i]+k], s.Adjusted[s.First[i]+k]-o.Values[k], 0)
				cost += math.Pow(s.Residual[s.First[i]+k]/o.SD[k], 2)
			}
		}
		near(t, "cost", s.Cost, cost, 1e-9*cost)
		near(t, "reference sd", s.ReferenceSD, math.Sqrt(cost/float64(s.Redundancy)), 1e-12)
	}
}

// A reading left out gets the figures that it has once it alone is put back, to first order.
func TestLeftOutAgainstPutBack(t *testing.T) {
	for seed := range uint64(5) {
		m := pool(seed, 9, 1, true)
		i := 3 + int(seed)
		with := m.solve(t)
		m.n.Obs[i].Use = false
		without := m.solve(t)
		if without.Rows != with.Rows-len(m.n.Obs[i].SD) {
			t.Fatalf("%d rows, %d with the reading", without.Rows, with.Rows)
		}
		for k := range m.n.Obs[i].SD {
			p := with.First[i] + k
			near(t, "w", without.W[p], with.W[p], 0.01)
			near(t, "redundancy", without.Redund[p], with.Redund[p], 0.002)
			near(t, "detectable", without.Detectable[p], with.Detectable[p], 1e-4)
			near(t, "residual", without.Residual[p], with.Residual[p], 1e-4)
			near(t, "adjusted", without.Adjusted[p], with.Adjusted[p], 1e-4)
		}
	}
}
