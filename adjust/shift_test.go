package adjust_test

import (
	"math"
	"testing"

	"brimline/adjust"
	"brimline/network"
)

// Whole is the covariance of all marks in one piece: block by block that of Cov, and by full
// matrices.
func TestWholeAgainstCov(t *testing.T) {
	for seed := range uint64(3) {
		m := pool(170+seed, 8, 1, seed%2 == 0)
		s := m.solve(t)
		d := denseOf(t, s)
		whole, n := s.Whole(), 2*len(s.Net.Marks)
		for a := range s.Net.Marks {
			for b := range s.Net.Marks {
				c := s.Cov(a, b)
				for r := range 2 {
					for k := range 2 {
						got := whole[(2*a+r)*n+2*b+k]
						tol := 1e-6 * math.Sqrt(d.c.At(2*a+r, 2*a+r)*d.c.At(2*b+k, 2*b+k))
						near(t, "block", got, d.c.At(2*a+r, 2*b+k), tol+1e-15)
						if a != b {
							near(t, "block by Cov", got, c[r*4+2+k], tol+1e-15)
						}
					}
				}
			}
		}
	}
}

// A mark without a place has rows of nought.
func TestWholeOfUnplacedMark(t *testing.T) {
	m := pool(2, 6, 1, false)
	start := append(network.State(nil), m.truth...)
	start[10], start[11] = math.NaN(), math.NaN()
	s, _ := solve(t, m.n, start)
	whole, n := s.Whole(), 2*len(s.Net.Marks)
	other := 0.0
	for k := range n {
		for _, r := range []int{10, 11} {
			if whole[r*n+k] != 0 || whole[k*n+r] != 0 {
				t.Errorf("row %d, column %d: %g", r, k, whole[r*n+k])
			}
		}
		other += whole[k*n+k]
	}
	if !(other > 0) {
		t.Errorf("the other marks have a variance of %g", other)
	}
}

// With the detectable size added to each reading in turn, and to all parts of some at once, one
// linear step by full matrices gives the moves predicted, to 1e-6 of the largest.
func TestShiftIsOneLinearStep(t *testing.T) {
	for seed := range uint64(4) {
		s := pool(180+seed, 8, 1, seed%2 == 0).solve(t)
		d := modelOf(t, s.Net, s.X, s.Base, taking(s))
		zero := d.step(d.y, len(s.X))
		var last adjust.Pattern
		for p := range s.W {
			if s.Redund[p] < adjust.LeastRed {
				continue
			}
			q := adjust.Pattern{Parts: []int{p}, Size: []float64{s.Detectable[p]}}
			stepped(t, s, d, q, zero)
			last.Parts, last.Size = append(last.Parts, p), append(last.Size, q.Size[0]*float64(p%5-2))
		}
		stepped(t, s, d, last, zero)
	}
}

func stepped(t *testing.T, s *adjust.Solution, d *plainModel, q adjust.Pattern, zero []float64) {
	t.Helper()
	y := append([]float64(nil), d.y...)
	for k, p := range q.Parts {
		y[p] += q.Size[k] / d.sd[p]
	}
	step := d.step(y, len(s.X))
	got, most := s.Shift(q), 0.0
	for i := range got {
		most = math.Max(most, math.Abs(step[i]-zero[i]))
	}
	for i, v := range got {
		near(t, "move", v, step[i]-zero[i], 1e-6*most)
	}
	if most == 0 {
		t.Error("an error of a reading moves nothing")
	}
}

// Where readings fit exactly, the moves by a small error are those of a solution with the error in
// it: to 1e-3 of the largest, which the curvature of the tapes allows.
func TestShiftAgainstSolution(t *testing.T) {
	m := pool(190, 8, 0, true)
	s := m.solve(t)
	const e = 2e-4
	for i := range m.n.Obs {
		was := m.n.Obs[i].Values[0]
		m.n.Obs[i].Values[0] = was + e
		wrong := m.solve(t)
		m.n.Obs[i].Values[0] = was
		got := s.Shift(adjust.Pattern{Parts: []int{s.First[i]}, Size: []float64{e}})
		most := 0.0
		for k := range got {
			most = math.Max(most, math.Abs(wrong.X[k]-s.X[k]))
		}
		for k, v := range got {
			near(t, "move", v, wrong.X[k]-s.X[k], 1e-3*most+1e-9)
		}
	}
}

// Ask's hidden is the largest change by a detectable error in one reading, as Shift gives it.
func TestHiddenIsTheLargestShift(t *testing.T) {
	compared := 0
	for seed := range uint64(6) {
		s := pool(200+seed, 10, 1, seed%2 == 0).solve(t)
		for _, pair := range [][2]int{{0, 4}, {3, 8}, {5, 7}} {
			f := distance(s, pair[0], pair[1])
			_, hidden, controlled := s.Ask(f)
			if !controlled {
				continue
			}
			compared++
			want := 0.0
			for p := range s.W {
				if s.Redund[p] < adjust.LeastRed {
					continue
				}
				move := s.Shift(adjust.Pattern{Parts: []int{p}, Size: []float64{s.Detectable[p]}})
				by := 0.0
				for k, m := range f.Marks {
					by += f.Grad[2*k]*move[2*m] + f.Grad[2*k+1]*move[2*m+1]
				}
				want = math.Max(want, math.Abs(by))
			}
			near(t, "hidden", hidden, want, 1e-9)
		}
	}
	if compared < 8 {
		t.Errorf("only %d hidden errors were compared", compared)
	}
}

// Errors in what takes no part move nothing.
func TestShiftOfPartsLeftOut(t *testing.T) {
	m := pool(210, 8, 1, true)
	m.n.Obs[5].Use = false
	m.tie(3, 6, 0.004).Check = true
	s := m.solve(t)
	last := len(m.n.Obs) - 1
	for _, v := range s.Shift(adjust.Pattern{Parts: []int{s.First[5], s.First[last]}, Size: []float64{1, 1}}) {
		if v != 0 {
			t.Errorf("a struck reading and a check move a mark by %g", v)
		}
	}
}
