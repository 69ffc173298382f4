package adjust_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/finding"
	"brimline/network"
)

func codeOf(found []finding.Finding, code string) (finding.Finding, bool) {
	for _, f := range found {
		if f.Code == code {
			return f, true
		}
	}
	return finding.Finding{}, false
}

// Noise four times as large as said fails high, none at all fails low, noise as said passes; a
// redundancy of nought is said.
func TestChiSquareFindings(t *testing.T) {
	for _, c := range []struct {
		noise float64
		want  string
	}{{4, "chi-high"}, {0, "chi-low"}, {1, ""}} {
		m := pool(3, 10, c.noise, true)
		s, found := solve(t, m.n, m.truth)
		for _, code := range []string{"chi-high", "chi-low"} {
			f, ok := codeOf(found, code)
			if ok != (code == c.want) {
				t.Errorf("noise %v: %s is %v; cost %v in %v to %v", c.noise, code, ok, s.Cost, s.ChiLow, s.ChiHigh)
			}
			if ok && math.Abs(f.Figures["value"]-s.Cost) > 1e-9 {
				t.Errorf("noise %v: figures %v", c.noise, f.Figures)
			}
		}
	}
	m := newMaker(rand.New(rand.NewPCG(1, 1)), 1, points(0, 0, 6, 0, 0, 8))
	m.tie(0, 1, 0.003)
	m.tie(0, 2, 0.004)
	m.tie(1, 2, 0.005)
	s, found := solve(t, m.n, m.truth)
	if f, ok := codeOf(found, "no-check"); !ok || f.Figures["readings"] != 3 || f.Figures["unknowns"] != 3 || s.Redundancy != 0 {
		t.Errorf("three ties: %v", found)
	}
}

// Equal repeats of one tape are below any lower limit, and are not called better than stated until
// five readings are to spare.
func TestFewEqualRepeatsArePraisedByNothing(t *testing.T) {
	for spare := 1; spare <= 6; spare++ {
		m := newMaker(rand.New(rand.NewPCG(1, 1)), 0, points(0, 0, 6, 0))
		for range spare + 1 {
			m.tie(0, 1, 0.003)
		}
		s, found := solve(t, m.n, m.truth)
		if _, low := codeOf(found, "chi-low"); low != (spare >= 5) || s.Redundancy != spare || s.Cost >= s.ChiLow {
			t.Errorf("%d to spare: said %v; cost %v, limit %v", spare, low, s.Cost, s.ChiLow)
		}
	}
}

// weakNet is a braced square with one mark more, read by two ties only.
func weakNet(x, y float64, from ...int) *maker {
	m := newMaker(rand.New(rand.NewPCG(1, 9)), 0, points(0, 0, 4, 0, 4, 4, 0, 4, x, y))
	for a := range 4 {
		for b := range a {
			m.tie(a, b, 0.003)
		}
	}
	for _, a := range from {
		m.tie(a, 4, 0.004)
	}
	return m
}

// A mark taped in line with its pegs moves across the line: it is named with that direction. One
// with a single tie moves freely across it. Well-tied marks are not named.
func TestLooseMark(t *testing.T) {
	for _, c := range []struct {
		name    string
		m       *maker
		bearing float64
		free    bool
		words   string
	}{
		{"along x", weakNet(9, 0.05, 0, 1), 0, false, "up and down the plan"},
		{"along y", weakNet(0.05, 9, 0, 3), math.Pi / 2, false, "left and right on the plan"},
		{"along the diagonal", weakNet(9, 9.05, 0, 2), 3 * math.Pi / 4, false, "the plan's lower right and upper left"},
		{"one tie", weakNet(9, 0, 1), 0, true, "up and down the plan"},
		{"one tie, slanting", weakNet(7, 3, 1), 3 * math.Pi / 4, true, "the plan's lower right and upper left"},
	} {
		s, found := solve(t, c.m.n, c.m.truth)
		if len(s.Loose) != 1 || s.Loose[0].Mark != 4 {
			t.Errorf("%s: loose %v, want mark 4", c.name, s.Loose)
			continue
		}
		l := s.Loose[0]
		if turn := math.Abs(math.Remainder(l.Bearing-c.bearing, math.Pi)); turn > 0.02 || math.IsInf(l.Move, 1) != c.free || l.Move < 0.25 {
			t.Errorf("%s: %+v, want bearing %v", c.name, l, c.bearing)
		}
		code := "loose"
		if c.free {
			code = "unheld"
		}
		f, ok := codeOf(found, code)
		if !ok || len(f.Marks) != 1 || f.Marks[0] != c.m.n.Marks[4] || f.Words["direction"] != c.words {
			t.Errorf("%s: %+v", c.name, f)
		}
		if _, has := f.Figures["move"]; has == c.free {
			t.Errorf("%s: figures %v", c.name, f.Figures)
		}
		if s.Redundancy != 1 { // the square's second diagonal, and nothing else
			t.Errorf("%s: redundancy %d, want 1", c.name, s.Redundancy)
		}
	}
	m := weakNet(5, 7, 0, 1, 2)
	if s, _ := solve(t, m.n, m.truth); len(s.Loose) != 0 {
		t.Errorf("a well-tied mark is loose: %v", s.Loose)
	}
}

// The 95 % move of a loose mark by hand: two ties crossing at a small angle.
func TestLooseMoveByHand(t *testing.T) {
	m := weakNet(9, 0.05, 0, 1)
	for i := range 6 { // the square as good as errorless
		m.n.Obs[i].SD[0] = 1e-5
	}
	s, _ := solve(t, m.n, m.truth)
	a, b := math.Atan2(0.05, 9), math.Atan2(0.05, 5)
	// N = (u·uᵀ + v·vᵀ)/sd²; its smaller eigenvalue is (1 − cos(a − b))/sd²
	want := adjust.Radius95 * 0.004 / math.Sqrt(1-math.Cos(a-b))
	near(t, "move", s.Loose[0].Move, want, 1e-3*want)
}

// A network with nothing to use, and a context that is over.
func TestNothingToSolve(t *testing.T) {
	m := pool(1, 6, 1, false)
	s, found := adjust.Solve(context.Background(), m.n, m.n.NewState(), adjust.Options{})
	if s == nil || s.Rows != 0 || len(found) != 0 {
		t.Errorf("without places: %+v %v", s, found)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if s, _ := adjust.Solve(ctx, m.n, m.truth, adjust.Options{}); s != nil {
		t.Error("a cancelled context gave a solution")
	}
}

// A mark without a place takes no part: its readings are left out and its figures are NaN.
func TestUnplacedMark(t *testing.T) {
	m := pool(1, 6, 1, false)
	start := append(network.State(nil), m.truth...)
	start[10], start[11] = math.NaN(), math.NaN()
	s, _ := solve(t, m.n, start)
	d := 0
	for i := range m.n.Obs {
		touches := m.n.Obs[i].Marks[0] == 5 || m.n.Obs[i].Marks[1] == 5
		if s.In[i] == touches {
			t.Errorf("reading %d: in %v, touches the mark %v", i, s.In[i], touches)
		}
		if touches {
			d++
			if !math.IsNaN(s.W[s.First[i]]) || !math.IsNaN(s.Adjusted[s.First[i]]) {
				t.Errorf("reading %d has w %v", i, s.W[s.First[i]])
			}
		}
	}
	if c := s.MarkCov(5); !math.IsNaN(c[0]) || s.Rows != len(m.n.Obs)-d || s.Unknowns != 2*8-3 {
		t.Errorf("covariance %v, %d rows, %d unknowns", c, s.Rows, s.Unknowns)
	}
}
