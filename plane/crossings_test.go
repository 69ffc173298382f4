package plane_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"brimline/plane"

	"pgregory.net/rapid"
)

func TestCrossingsByHand(t *testing.T) {
	pt := func(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }
	bow := plane.Polyline([]plane.Point{pt(0, 0), pt(2, 2), pt(2, 0), pt(0, 2)}, true)
	dip := plane.Path{Closed: true, Segs: []plane.Segment{ // an arc that dips through the far side
		{A: pt(-1, 0), B: pt(1, 0)}, {A: pt(1, 0), B: pt(1, 0.5)}, {A: pt(1, 0.5), B: pt(-1, 0.5), Bulge: -1}, {A: pt(-1, 0.5), B: pt(-1, 0)},
	}}
	spike := plane.Polyline([]plane.Point{pt(0, 0), pt(3, 0), pt(1, 0), pt(1, 2)}, true)
	graze := plane.Path{Segs: []plane.Segment{ // a line touched by a circle from above
		{A: pt(-2, 0), B: pt(2, 0)}, {A: pt(2, 0), B: pt(1, 1)}, {A: pt(1, 1), B: pt(-1, 1), Bulge: -1},
	}}
	vertex := plane.Polyline([]plane.Point{pt(0, 0), pt(4, 0), pt(4, 2), pt(2, 0), pt(0, 2)}, true)
	for _, c := range []struct {
		name string
		p    plane.Path
		want []plane.Crossing
	}{
		{"bow tie", bow, []plane.Crossing{{I: 0, J: 2, At: pt(1, 1)}}},
		{"dipping arc", dip, []plane.Crossing{{I: 0, J: 2, At: pt(-math.Sqrt(0.75), 0)}, {I: 0, J: 2, At: pt(math.Sqrt(0.75), 0)}}},
		{"there and back", spike, []plane.Crossing{{I: 0, J: 1, At: pt(1, 0)}, {I: 0, J: 2, At: pt(1, 0)}}},
		{"touching arc", graze, []plane.Crossing{{I: 0, J: 2, At: pt(0, 0)}}},
		{"corner on a side", vertex, []plane.Crossing{{I: 0, J: 2, At: pt(2, 0)}, {I: 0, J: 3, At: pt(2, 0)}}},
	} {
		got := c.p.Crossings()
		if fmt.Sprint(len(got)) != fmt.Sprint(len(c.want)) {
			t.Errorf("%s: %v", c.name, got)
			continue
		}
		for i, g := range got {
			if g.I != c.want[i].I || g.J != c.want[i].J || g.At.Dist(c.want[i].At) > 1e-8 {
				t.Errorf("%s: %v, want %v", c.name, g, c.want[i])
			}
		}
	}
}

func TestNoFalseCrossings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t).Move(movement(t))
		// The arcs of one circle, cut at random, meet only in common ends.
		var cut plane.Path
		cut.Closed = true
		for _, s := range p.Segs {
			f := rapid.Float64Range(0.01, 0.99).Draw(t, "cut")
			cut.Segs = append(cut.Segs, s.Part(0, f), s.Part(f, 1))
		}
		if c := p.Crossings(); c != nil {
			t.Fatalf("ring: %v", c)
		}
		if c := cut.Crossings(); c != nil {
			t.Fatalf("cut ring: %v", c)
		}
	})
}

// Two segments are compared with the crossings of their fine polygons.
func TestMeetByPolygon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, r := segment(t, "s"), segment(t, "r")
		got := s.Meet(r)
		for _, q := range got {
			u, _ := s.Nearest(q)
			v, _ := r.Nearest(q)
			near(t, "on both", u.Dist(q)+v.Dist(q), 0, 2e-9)
		}
		count := 0
		a, b := plane.Path{Segs: []plane.Segment{s}}.Flatten(1e-4), plane.Path{Segs: []plane.Segment{r}}.Flatten(1e-4)
		for i := 1; i < len(a); i++ {
			for j := 1; j < len(b); j++ {
				if crosses(a[i-1], a[i], b[j-1], b[j]) {
					count++
				}
			}
		}
		if count != len(got) && !doubtful(s, r) {
			t.Fatalf("%d meetings %v, polygons cross %d times", len(got), got, count)
		}
	})
}

func crosses(a, b, c, d plane.Point) bool {
	side := func(p, q, r plane.Point) bool { return q.Sub(p).Cross(r.Sub(p)) > 0 }
	return side(a, b, c) != side(a, b, d) && side(c, d, a) != side(c, d, b)
}

// doubtful pairs come within 2 mm of an end or nearly touch, so that polygons may count wrong.
func doubtful(s, r plane.Segment) bool {
	for _, c := range [][2]plane.Segment{{s, r}, {r, s}} {
		for _, f := range []float64{0, 1} {
			if q, _ := c[1].Nearest(c[0].At(f)); q.Dist(c[0].At(f)) < 2e-3 {
				return true
			}
		}
	}
	for i := range 2001 {
		p := s.At(float64(i) / 2000)
		q, f := r.Nearest(p)
		lean := math.Abs(s.Tangent(float64(i) / 2000).Cross(r.Tangent(f)))
		if q.Dist(p) < 0.02 && lean < 0.15 {
			return true
		}
	}
	return false
}

// Smooth neighbours of nearly equal curvature are the hardest to tell from overlapping ones.
func TestSmoothNeighbours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segment(t, "s")
		end := s.Tangent(1)
		chord := rapid.Float64Range(0.05, 2).Draw(t, "chord")
		k := s.Curvature() * (1 + math.Pow(10, rapid.Float64Range(-15, 0).Draw(t, "more")))
		half := math.Asin(math.Max(-1, math.Min(1, k*chord/2)))
		if math.Abs(s.Sweep())+2*math.Abs(half) > 6 {
			return
		}
		r := plane.ArcTangent(s.B, end, s.B.Add(end.Turn(half).Mul(chord)))
		for _, p := range []plane.Path{{Segs: []plane.Segment{s, r}}, plane.Path{Segs: []plane.Segment{s, r}}.Reverse()} {
			if c := p.Crossings(); c != nil {
				t.Fatalf("%v then %v: %v", s, r, c)
			}
		}
	})
}

// A spiral of 20,000 short arcs: the sweep must not look at every pair.
func TestCrossingsAreFast(t *testing.T) {
	var pts []plane.Point
	for i := range 10000 {
		a := 0.02 * float64(i)
		pts = append(pts, plane.Point{X: 1 + 0.05*a}.Turn(a))
	}
	p := plane.Fair(pts, false, nil, nil)
	start := time.Now()
	if c := p.Crossings(); c != nil {
		t.Errorf("%d crossings, first %v", len(c), c[0])
	}
	if d := time.Since(start); d > 10*time.Second {
		t.Errorf("%d segments took %v", len(p.Segs), d)
	} else {
		t.Logf("%d segments in %v", len(p.Segs), d)
	}
}
