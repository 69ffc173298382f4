package basin_test

import (
	"fmt"
	"math"
	"testing"

	"brimline/basin"
	"brimline/internal/checks"
	"brimline/plane"
)

var trade = hopper{3.6, 2.7, 2.4, 1.3, 1.3, 2.4, 1.0, 2.4}

// TestLongSection: through the hopper from shallow to deep: wall, four pieces of floor in one, wall.
func TestLongSection(t *testing.T) {
	s := trade.spec(true)
	s.Shallow, s.Deep = &plane.Point{Y: 2.5}, &plane.Point{X: 10, Y: 2.5}
	b := build(t, s)
	got := b.Long()
	if len(got) != 3 || got[0].Part != basin.Walls || got[1].Part != basin.Floor || got[2].Part != basin.Walls {
		t.Fatalf("pieces %v", got)
	}
	for _, x := range [][2]float64{{0, -1}, {3.6, -1}, {6.3, -2.4}, {8.7, -2.4}, {10, -1}} {
		best := math.Inf(1)
		for _, q := range got[1].Points {
			best = math.Min(best, math.Hypot(q.S-x[0], q.Z-x[1]))
		}
		near(t, fmt.Sprint("the floor comes to ", x), best, 0, 1e-9)
	}
	across := b.Across(7)
	area := 0.0 // below the water, by trapezia
	for _, p := range across {
		for i := 1; i < len(p.Points); i++ {
			u, v := p.Points[i-1], p.Points[i]
			area += (v.S - u.S) * (-math.Min(0, u.Z) - math.Min(0, v.Z)) / 2
		}
	}
	near(t, "cross section at the pad", area, 5+1.4*(2.4+1.3), 1e-9)
}

// TestSectionsAddUp: cross sections, added up along the pool, come to the volume.
func TestSectionsAddUp(t *testing.T) {
	v := everything()
	s := v.spec()
	s.Shallow, s.Deep = &plane.Point{Y: 2}, &plane.Point{X: 9, Y: 2}
	b := build(t, s)
	const n = 3000
	sum := 0.0
	for k := range n {
		area := 0.0
		for _, p := range b.Across(-0.35 + 9.8*(float64(k)+0.5)/n) {
			for i := 1; i < len(p.Points); i++ {
				u, w := p.Points[i-1], p.Points[i]
				du, dw := math.Max(0, v.level().Z-u.Z), math.Max(0, v.level().Z-w.Z)
				if du > 0 != (dw > 0) { // the water line
					t := du / (du - (v.level().Z - w.Z))
					if dw > 0 {
						t = dw / (dw - (v.level().Z - u.Z))
					}
					area += (w.S - u.S) * t * (du + dw) / 2
					continue
				}
				area += (w.S - u.S) * (du + dw) / 2
			}
		}
		sum += area * 9.8 / n
	}
	near(t, "volume", sum, b.Water(v.level()).Volume, 0.008) // half a step at an end
}

// TestContours: at 1.7 m the hopper is a ring half way down every slope.
func TestContours(t *testing.T) {
	lines := build(t, trade.spec(true)).Contours(0, []float64{1.7, 5})
	if len(lines) != 1 || !lines[0].Closed {
		t.Fatalf("%d lines, the first closed: %v", len(lines), len(lines) > 0 && lines[0].Closed)
	}
	length := 2*((2.7+1.3)/2+2.4) + 2*(2.4+1.3)
	near(t, "length of the ring", plane.Polyline(lines[0].Points, true).Length(), length, 1e-9)
}

// TestSteepest: the back and side slopes are the steepest; where it is shallow, the main one.
func TestSteepest(t *testing.T) {
	b := build(t, trade.spec(true))
	s, ok := b.Steepest(0, 0, math.Inf(1))
	if !ok {
		t.Fatal("no slope")
	}
	near(t, "steepest", s.Rise, 1.4/1.3, 1e-9)
	near(t, "without error", s.SD, 0, 1e-12)
}

// TestSlopeSD: the slope between two rows of depths 3 m apart, each of two that may be wrong by 10 mm.
func TestSlopeSD(t *testing.T) {
	s := level(3, 4, 1)
	s.Walls[1].Height.Z, s.Walls[2].Height.Z = -1.5, -1.5
	for i := range s.Walls {
		s.Walls[i].Height.Index = i
	}
	s.Cov = make([]float64, 16)
	for i := range 4 {
		s.Cov[5*i] = 1e-4
	}
	g, ok := build(t, s).Steepest(0, 0, math.Inf(1))
	if !ok {
		t.Fatal("no slope")
	}
	near(t, "rise", g.Rise, 0.5/3, 1e-9)
	if g.SD < 0.010*math.Sqrt2/3 || g.SD > 0.020*math.Sqrt2/3 {
		t.Errorf("sd %.5f", g.SD)
	}
}

// TestPublishedSlopeLimits: item S-03 of the published checks; a metre of fall in 7.00 m lies within 1:7
// and in 6.99 m beyond it, when measured without error.
func TestPublishedSlopeLimits(t *testing.T) {
	limits := checks.Get(t, "S-03")
	var got []float64
	for _, set := range basin.RuleSets {
		for _, r := range set.Rules {
			if r.Figure == basin.SlopeMost {
				got = append(got, 100*r.Limit)
			}
		}
	}
	want := limits.Expected.List("percent")
	for _, w := range want {
		best := math.Inf(1)
		for _, g := range got {
			best = math.Min(best, math.Abs(g-w))
		}
		near(t, fmt.Sprintf("a limit of %.4f %%", w), best, 0, 6e-5)
	}
	set := basin.RuleSet{Name: "one", Edition: "1", Rules: []basin.Rule{{Figure: basin.SlopeMost, Limit: 1.0 / 7, Deep: 3}}}
	for _, x := range []struct {
		run  float64
		want basin.Verdict
	}{{7.0, basin.Meets}, {6.99, basin.Beyond}} {
		s := level(x.run, 4, 1)
		s.Walls[1].Height.Z, s.Walls[2].Height.Z = -2, -2
		if c := build(t, s).Compare(basin.Exact(0), set); len(c) != 1 || c[0].Verdict != x.want {
			t.Errorf("1 m in %.2f m: %v", x.run, c)
		}
	}
}

// TestCompareDepths: a depth near its limit is undecided when its error may carry it over.
func TestCompareDepths(t *testing.T) {
	s := level(10, 5, 2.01)
	for i := range s.Walls {
		s.Walls[i].Height.Index = 0
	}
	s.Cov = []float64{1e-4}
	set := basin.RuleSet{Rules: []basin.Rule{{Figure: basin.DepthLeast, Limit: 2}, {Figure: basin.DepthMost, Limit: 2.5}, {Figure: basin.DepthLeast, Limit: 2.1}}}
	got := build(t, s).Compare(basin.Exact(0), set)
	for i, want := range []basin.Verdict{basin.Undecided, basin.Meets, basin.Beyond} {
		if got[i].Verdict != want {
			t.Errorf("rule %d: %s", i, got[i].Verdict)
		}
	}
}
