package adjust_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
)

// distance is the functional |b − a| of a solution.
func distance(s *adjust.Solution, a, b int) adjust.Functional {
	u := s.X.Point(b).Sub(s.X.Point(a)).Unit()
	return adjust.Functional{Marks: []int{a, b}, Grad: []float64{-u.X, -u.Y, u.X, u.Y}}
}

// sd, hidden and controlled of random functionals by brute force: an error of the detectable
// size in each row in turn, and one linear step with full matrices.
func TestAskAgainstBruteForce(t *testing.T) {
	open := 0
	for seed := range uint64(8) {
		m := pool(seed, 7, 1, seed%2 == 0)
		if seed >= 4 { // a mark with two ties only, which nothing checks
			for i := range m.n.Obs {
				for _, q := range m.n.Obs[i].Marks {
					if q == 5 {
						m.n.Obs[i].Use = false
					}
				}
			}
			m.tie(0, 5, 0.004)
			m.tie(1, 5, 0.004)
		}
		s := m.solve(t)
		d := denseOf(t, s)
		r := rand.New(rand.NewPCG(seed, 3))
		for range 10 {
			f := adjust.Functional{Marks: []int{2 + r.IntN(4), 6, 7}}
			g := make([]float64, len(s.X))
			for _, q := range f.Marks {
				for c := range 2 {
					v := 2*r.Float64() - 1
					f.Grad = append(f.Grad, v)
					g[2*q+c] += v
				}
			}
			variance := 0.0
			for i := range g {
				for j := range g {
					variance += g[i] * d.c.At(i, j) * g[j]
				}
			}
			hidden, controlled := d.worst(g)
			sd, h, ok := s.Ask(f)
			near(t, "sd", sd, math.Sqrt(variance), 1e-6*sd)
			if ok != controlled {
				t.Fatalf("seed %d: controlled %v, want %v", seed, ok, controlled)
			}
			if !controlled {
				open++
				if !math.IsNaN(h) {
					t.Errorf("seed %d: hidden %v although nothing controls it", seed, h)
				}
				continue
			}
			near(t, "hidden", h, hidden, 1e-6*hidden)
		}
	}
	if open == 0 {
		t.Error("no functional was uncontrolled: the test asks too little")
	}
}

// worst is the largest change of g by a detectable error in one row.
func (d *dense) worst(g []float64) (hidden float64, controlled bool) {
	controlled = true
	for row, p := range d.part {
		change := func(e float64) float64 {
			sum := 0.0
			for i, v := range d.moves(d.c, row, e) {
				sum += g[i] * v
			}
			return math.Abs(sum)
		}
		if d.s.Redund[p] < adjust.LeastRed {
			controlled = controlled && change(1) <= adjust.Influence
			continue
		}
		hidden = math.Max(hidden, change(d.s.Detectable[p]))
	}
	return hidden, controlled
}

// A distance has the same sd and the same hidden error in every datum.
func TestAskKnowsNoDatum(t *testing.T) {
	compared := 0
	for seed := range uint64(4) {
		m := pool(seed, 8, 1, seed%2 == 0)
		one := m.solve(t)
		m.n.Base = [2]int{6, 4}
		two := m.solve(t)
		if one.Base == two.Base {
			t.Fatal("the base did not change")
		}
		for _, p := range [][2]int{{0, 1}, {3, 7}, {4, 6}, {2, 9}} {
			near(t, "distance", two.X.Point(p[1]).Dist(two.X.Point(p[0])), one.X.Point(p[1]).Dist(one.X.Point(p[0])), 1e-9)
			sd1, h1, ok1 := one.Ask(distance(one, p[0], p[1]))
			sd2, h2, ok2 := two.Ask(distance(two, p[0], p[1]))
			near(t, "sd", sd2, sd1, 1e-7*sd1)
			if ok1 != ok2 {
				t.Errorf("controlled %v in one datum, %v in the other", ok1, ok2)
			} else if ok1 {
				near(t, "hidden", h2, h1, 1e-7*h1)
				compared++
			}
		}
	}
	if compared < 8 {
		t.Errorf("only %d hidden errors were compared", compared)
	}
}

// Three ties and no more: the sd of a distance by hand, and nothing controls it.
func TestAskByHand(t *testing.T) {
	m := newMaker(rand.New(rand.NewPCG(1, 1)), 0, points(0, 0, 6, 0, 0, 8))
	m.tie(0, 1, 0.003)
	m.tie(0, 2, 0.004)
	m.tie(1, 2, 0.005)
	s := m.solve(t)
	for _, c := range []struct {
		a, b int
		sd   float64
	}{{0, 1, 0.003}, {0, 2, 0.004}, {1, 2, 0.005}} {
		sd, hidden, ok := s.Ask(distance(s, c.a, c.b))
		near(t, "sd", sd, c.sd, 1e-9)
		if ok || !math.IsNaN(hidden) {
			t.Errorf("a triangle of three ties is controlled: hidden %v", hidden)
		}
	}
}
