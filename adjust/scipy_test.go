package adjust_test

import (
	"testing"

	"brimline/adjust"
	"brimline/internal/oracle"
)

// scipyRow and scipyNet are what testdata/least_squares.py reads.
type scipyRow struct {
	Kind   string    `json:"kind"`
	At     []int     `json:"at"`
	Values []float64 `json:"values"`
	SD     []float64 `json:"sd"`
	Flip   bool      `json:"flip"`
	Solve  bool      `json:"solve"`
	Zero   float64   `json:"zero"`
	Scale  float64   `json:"scale"`
}

type scipyNet struct {
	Start []float64  `json:"start"`
	Held  []int      `json:"held"`
	Rows  []scipyRow `json:"rows"`
}

// forScipy hands a network over, from a start some centimetres off the solution.
func forScipy(s *adjust.Solution) scipyNet {
	out := scipyNet{Held: []int{0, 1, 3}}
	for i, v := range s.X {
		if i != 0 && i != 1 && i != 3 {
			v += 0.03 * float64(i%5-2)
		}
		out.Start = append(out.Start, v)
	}
	out.Start[0], out.Start[1], out.Start[3] = 0, 0, 0
	for i := range s.Net.Obs {
		o := &s.Net.Obs[i]
		out.Rows = append(out.Rows, scipyRow{o.Kind.Name(), o.At, o.Values, o.SD, o.Flip, o.Solve, o.Zero, o.Scale})
	}
	return out
}

// Five networks against scipy.optimize.least_squares: coordinates to 1e-6 m, covariance to 1e-4
// of the product of the two sd.
func TestAgainstScipy(t *testing.T) {
	var nets []scipyNet
	var ours []*adjust.Solution
	for seed := range uint64(5) {
		m := pool(20+seed, 6+2*int(seed), 1, seed%2 == 0)
		s := m.solve(t)
		ours, nets = append(ours, s), append(nets, forScipy(s))
	}
	var theirs []struct {
		X    []float64   `json:"x"`
		Free []int       `json:"free"`
		Cov  [][]float64 `json:"cov"`
		Cost float64     `json:"cost"`
	}
	oracle.Ask(t, "testdata/least_squares.py", []string{"scipy", "numpy"}, nets, &theirs)
	for k, s := range ours {
		want := theirs[k]
		near(t, "cost", s.Cost, want.Cost, 1e-6*(1+want.Cost))
		for i, v := range want.X {
			near(t, "coordinate", s.X[i], v, 1e-6)
		}
		n := s.Net
		blocks := []int{}
		for b := range len(n.Offset) - 1 {
			blocks = append(blocks, b)
		}
		c := s.Cov(blocks...)
		compareCov(t, c, len(s.X), want.Free, want.Cov)
	}
}

func compareCov(t *testing.T, ours []float64, n int, free []int, theirs [][]float64) {
	t.Helper()
	for i, p := range free {
		for j, q := range free {
			scale := (theirs[i][i] + theirs[j][j]) / 2
			near(t, "covariance", ours[p*n+q], theirs[i][j], 1e-4*scale)
		}
	}
}
