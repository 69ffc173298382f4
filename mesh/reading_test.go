package mesh_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/mesh"
	"brimline/plane"
)

// TestFindAndHeight: places all over the plane against a look at every triangle.
func TestFindAndHeight(t *testing.T) {
	points, breaks, ring, holes := uneven(200)
	s, _ := mesh.Triangulate(points, breaks, ring, holes)
	r := rand.New(rand.NewPCG(1, 1))
	last, inside := 0, 0
	for range 3000 {
		p := plane.Point{X: 12*r.Float64() - 6, Y: 12*r.Float64() - 6}
		holding := map[int]bool{}
		for k, v := range s.Triangles {
			a, b, c := s.Points[v[0]].Plan(), s.Points[v[1]].Plan(), s.Points[v[2]].Plan()
			if mesh.Orient(a, b, p) >= 0 && mesh.Orient(b, c, p) >= 0 && mesh.Orient(c, a, p) >= 0 {
				holding[k] = true
			}
		}
		k := s.Find(p, last)
		if (k >= 0) != (len(holding) > 0) || k >= 0 && !holding[k] {
			t.Fatalf("%v: found in %d, lies in %v", p, k, holding)
		}
		if z, at, ok := s.Height(p, last); ok != (k >= 0) || ok && (at != k || z > -0.5 || z < -2.1) {
			t.Fatalf("%v: height %g in %d, %v", p, z, at, ok)
		}
		if k >= 0 {
			last = k
			inside++
		}
	}
	if inside < 500 || inside > 2500 {
		t.Errorf("%d of 3000 inside", inside)
	}
}

// TestHeightOfAPlane: on a plane every height is the plane's.
func TestHeightOfAPlane(t *testing.T) {
	points := scattered(3, 200, 10)
	for i, p := range points {
		points[i].Z = 0.3*p.X - 0.2*p.Y + 1
	}
	s, _ := mesh.Triangulate(points, nil, nil, nil)
	for _, p := range []plane.Point{{X: 5, Y: 5}, {X: 2, Y: 7.5}, {X: 8.1, Y: 1.9}, points[17].Plan()} {
		z, _, ok := s.Height(p, 3)
		if !ok {
			t.Errorf("no surface at %v", p)
		}
		near(t, "height", z, 0.3*p.X-0.2*p.Y+1, 1e-11)
	}
	steep, ok := s.Steepest(0.01)
	if !ok || steep.Uphill.Dist(plane.Point{X: 0.3, Y: -0.2}.Unit()) > 1e-9 {
		t.Errorf("steepest %+v", steep)
	}
	near(t, "rise", steep.Rise, math.Hypot(0.3, 0.2), 1e-9)
}

// TestSteepestLeavesOutThinOnes: a needle with a wrong height does not count where its width is asked for.
func TestSteepestLeavesOutThinOnes(t *testing.T) {
	points := []mesh.Point3{{}, {X: 4}, {X: 4, Y: 4, Z: 1}, {Y: 4, Z: 1}, {X: 2, Y: 0.001, Z: 0.5}}
	s, _ := mesh.Triangulate(points, nil, nil, nil)
	thin, _ := s.Steepest(0)
	wide, ok := s.Steepest(0.1)
	near(t, "needle", thin.Rise, 500, 1e-6)
	if !ok || wide.Rise > 0.6 {
		t.Errorf("without it %+v", wide)
	}
	if _, ok := s.Steepest(10); ok {
		t.Error("something is wider than 10 m")
	}
}

// TestSectionOfTheHopper: along the middle and across the pad, worked out by hand.
func TestSectionOfTheHopper(t *testing.T) {
	points, ring, breaks := first.points()
	s, _ := mesh.Triangulate(points, breaks, ring, nil)
	along := s.Section([]plane.Point{{X: -1, Y: 2.5}, {X: 12, Y: 2.5}})
	across := s.Section([]plane.Point{{X: 7, Y: 5}, {X: 7, Y: 0}})
	checkStations(t, along, map[float64]float64{1: -1, 4.6: -1, 7.3: -2.4, 9.7: -2.4, 11: -1})
	checkStations(t, across, map[float64]float64{0: -1, 1.3: -2.4, 3.7: -2.4, 5: -1})
	// A bent line: S runs on around the corner.
	checkStations(t, s.Section([]plane.Point{{X: 0, Y: 2}, {X: 7, Y: 2}, {X: 7, Y: 5}}),
		map[float64]float64{0: -1, 3.6: -1, 6.3: -2.4, 8.7: -2.4, 10: -1})
	// Along an edge of the surface and along a break.
	checkStations(t, s.Section([]plane.Point{{X: 1, Y: 0}, {X: 9, Y: 0}}), map[float64]float64{0: -1, 8: -1})
	checkStations(t, s.Section([]plane.Point{{X: 6.3, Y: 1.3}, {X: 6.3, Y: 3.7}}), map[float64]float64{0: -2.4, 2.4: -2.4})
}

// checkStations wants one part that passes through the stations and is straight between them.
func checkStations(t *testing.T, parts [][]mesh.Station, want map[float64]float64) {
	t.Helper()
	if len(parts) != 1 {
		t.Fatalf("%d parts: %v", len(parts), parts)
	}
	for s, z := range want {
		best := math.Inf(1)
		for _, p := range parts[0] {
			best = math.Min(best, math.Abs(p.S-s)+math.Abs(p.Z-z))
		}
		near(t, "station", best, 0, 1e-12)
	}
	for k := 1; k < len(parts[0]); k++ {
		if parts[0][k].S <= parts[0][k-1].S {
			t.Errorf("stations %v do not advance", parts[0])
		}
	}
}

// TestSectionsAgreeWithHeights: on random lines every station has the surface's height, and a hole parts the line.
func TestSectionsAgreeWithHeights(t *testing.T) {
	points, breaks, ring, holes := uneven(300)
	s, _ := mesh.Triangulate(points, breaks, ring, holes)
	through := s.Section([]plane.Point{{X: -5, Y: 1}, {X: 5, Y: 1}})
	if len(through) != 2 {
		t.Fatalf("%d parts across the hole, want 2", len(through))
	}
	near(t, "width of the hole", through[1][0].S-through[0][len(through[0])-1].S, 1, 1e-9)
	r := rand.New(rand.NewPCG(5, 6))
	for range 50 {
		a := plane.Point{X: 8*r.Float64() - 4, Y: 8*r.Float64() - 4}
		b := plane.Point{X: 8*r.Float64() - 4, Y: 8*r.Float64() - 4}
		for _, part := range s.Section([]plane.Point{a, b}) {
			for k := 1; k < len(part); k++ {
				mid := (part[k-1].S + part[k].S) / 2
				z, _, ok := s.Height(plane.Lerp(a, b, mid/a.Dist(b)), 0)
				if !ok {
					t.Fatalf("no surface at %g of %v", mid, part)
				}
				near(t, "between stations", z, (part[k-1].Z+part[k].Z)/2, 1e-9)
			}
		}
	}
}

// TestContoursOfABowl: where none reaches the surface's edge, all are closed, lie at their level, have the
// higher ground on the left, and enclose what the water at that level covers.
func TestContoursOfABowl(t *testing.T) {
	points, breaks, ring, holes := uneven(300)
	for i := range 68 {
		points[i].Z = 0 // ring and hole stand above the water
	}
	s, _ := mesh.Triangulate(points, breaks, ring, holes)
	levels := []float64{-0.2, -0.9, -1.4, -1.8}
	enclosed := map[float64]float64{}
	for _, c := range s.Contours(levels) {
		if !c.Closed {
			t.Fatalf("the contour %v is open", c)
		}
		for k, p := range c.Points {
			q := c.Points[(k+1)%len(c.Points)]
			enclosed[c.Level] -= p.Cross(q) / 2
			z, _, ok := s.Height(plane.Lerp(p, q, 0.5), 0)
			if !ok {
				t.Fatalf("a contour runs off the surface at %v", p)
			}
			near(t, "height of the contour", z, c.Level, 1e-9)
		}
	}
	for _, level := range levels {
		near(t, "water's area", enclosed[level], s.Under(level).Plan, 1e-9)
	}
}

// TestContoursOfAHopper: at the level of the pad's rim the contour is the pad; on the slope it is open nowhere; a
// contour of a tilted plane ends at the surface's edges.
func TestContoursOfAHopper(t *testing.T) {
	points, ring, breaks := first.points()
	s, _ := mesh.Triangulate(points, breaks, ring, nil)
	if got := s.Contours([]float64{-2.4}); len(got) != 0 {
		t.Errorf("below nothing: %v", got)
	}
	mid := s.Contours([]float64{-1.7})
	if len(mid) != 1 || !mid[0].Closed {
		t.Fatalf("half way down: %v", mid)
	}
	tilted := scattered(4, 100, 10)
	for i, p := range tilted {
		tilted[i].Z = p.X
	}
	u, _ := mesh.Triangulate(tilted, nil, nil, nil)
	open := u.Contours([]float64{3, 5})
	if len(open) != 2 || open[0].Closed || open[1].Closed {
		t.Fatalf("%v", open)
	}
	for _, c := range open {
		// Higher ground, at greater x, is on the left: the line runs down the y axis.
		if c.Points[0].Y < c.Points[len(c.Points)-1].Y {
			t.Errorf("contour %g has the higher ground on its right", c.Level)
		}
		for _, p := range c.Points {
			near(t, "x", p.X, c.Level, 1e-9)
		}
	}
}
