package adjust_test

import (
	"math/rand/v2"
	"testing"

	"brimline/adjust"
)

// yardNet is three pegs, a mark well read, and one by as many tapes as said, the last `computed` of
// them corrections that nobody read, which are said to be better than any reading.
func yardNet(seed uint64, ties, computed int) *maker {
	m := newMaker(rand.New(rand.NewPCG(seed, 2)), 1, points(0, 0, 9, 0, 9.5, 8, 3, 4, 6, 4.5))
	for a := range 3 {
		for b := range a {
			m.tie(a, b, 0.004)
		}
		m.tie(a, 3, 0.004)
	}
	for k := range ties {
		o := m.tie([]int{0, 1, 2, 3}[k], 4, 0.005)
		if o.Computed = k >= ties-computed; o.Computed {
			o.SD[0] = 0.0015
		}
	}
	return m
}

// A correction that nobody read is dropped where other readings hold the mark: everything is as
// without it. It is kept where the mark would be open; then it is no redundancy.
func TestComputedReadings(t *testing.T) {
	for _, c := range []struct {
		name                 string
		ties, computed, kept int
	}{
		{"two read, one computed", 3, 1, 0},
		{"one read, one computed", 2, 1, 1},
		{"one read, two computed", 3, 2, 1},
		{"one read, three computed", 4, 3, 1},
		{"none read, two computed", 2, 2, 2},
		{"none read, four computed", 4, 4, 2},
		{"three read, one computed", 4, 1, 0},
	} {
		m := yardNet(7, c.ties, c.computed)
		s := m.solve(t)
		kept := 0
		for i := range s.Net.Obs {
			p := s.First[i]
			if s.Net.Obs[i].Computed && !s.Out[p] {
				kept++
				if s.Redund[p] >= adjust.LeastRed {
					t.Errorf("%s: a computed reading with redundancy %g takes part", c.name, s.Redund[p])
				}
			}
		}
		if kept != c.kept {
			t.Errorf("%s: %d take part, want %d", c.name, kept, c.kept)
		}
		plain := yardNet(7, c.ties-c.computed, 0)
		if want := 6 + c.ties - c.computed + c.kept - 7; s.Redundancy != want || s.Rows != want+7 {
			t.Errorf("%s: redundancy %d of %d rows, want %d", c.name, s.Redundancy, s.Rows, want)
		}
		if c.kept > 0 {
			continue
		}
		one := plain.solve(t)
		for i, v := range one.X {
			near(t, c.name+": coordinate", s.X[i], v, 1e-9)
		}
		near(t, c.name+": sum of squares", s.Cost, one.Cost, 1e-9)
		for p := range one.W {
			near(t, c.name+": redundancy", s.Redund[p], one.Redund[p], 1e-8)
		}
	}
}

// A dropped correction shows the misfit that it would have if put back, as any reading left out.
func TestDroppedCorrectionShowsItsMisfit(t *testing.T) {
	m := yardNet(8, 3, 1)
	o := &m.n.Obs[len(m.n.Obs)-1]
	o.Values[0] += 0.5
	s := m.solve(t)
	p := s.First[len(m.n.Obs)-1]
	if s.ReferenceSD > 3 {
		t.Errorf("the correction bends the figure: reference sd %g", s.ReferenceSD)
	}
	o.Computed = false
	back := m.solve(t)
	near(t, "redundancy", s.Redund[p], back.Redund[p], 0.05)
	if s.W[p] > -30 {
		t.Errorf("half a metre off, and w is %g", s.W[p])
	}
}
