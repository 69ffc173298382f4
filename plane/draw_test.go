package plane_test

import (
	"math"
	"testing"

	"brimline/plane"

	"pgregory.net/rapid"
)

// What the random tests draw.

func coord(t *rapid.T, name string) float64 { return rapid.Float64Range(-10, 10).Draw(t, name) }

func point(t *rapid.T, name string) plane.Point {
	return plane.Point{X: coord(t, name+".x"), Y: coord(t, name+".y")}
}

// segment draws straights, nearly straight arcs and arcs up to 0.998 of a full circle, at least
// 1 mm long.
func segment(t *rapid.T, name string) plane.Segment {
	a := point(t, name)
	d := plane.Point{X: rapid.Float64Range(0.001, 10).Draw(t, name+".chord")}
	b := a.Add(d.Turn(rapid.Float64Range(-math.Pi, math.Pi).Draw(t, name+".way")))
	bulge := 0.0
	switch rapid.IntRange(0, 3).Draw(t, name+".kind") {
	case 1:
		bulge = math.Pow(10, rapid.Float64Range(-12, -2).Draw(t, name+".flat"))
	case 2:
		bulge = math.Tan(rapid.Float64Range(0.01, 0.998*math.Pi/2).Draw(t, name+".arc"))
	case 3:
		bulge = -math.Tan(rapid.Float64Range(0.01, 0.998*math.Pi/2).Draw(t, name+".arc"))
	}
	return plane.Segment{A: a, B: b, Bulge: bulge}
}

func movement(t *rapid.T) plane.Rigid {
	return plane.Turned(rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "turn"), point(t, "shift"))
}

func moved(s plane.Segment, m plane.Rigid) plane.Segment {
	return plane.Segment{A: m.Apply(s.A), B: m.Apply(s.B), Bulge: s.Bulge}
}

// near fails when a and b differ by more than tol.
func near(t rapid.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Fatalf("%s: %.15g, want %.15g, off by %.3g, allowed %.1g", what, got, want, math.Abs(got-want), tol)
	}
}

func nearPoint(t rapid.TB, what string, got, want plane.Point, tol float64) {
	t.Helper()
	if !(got.Dist(want) <= tol) {
		t.Fatalf("%s: %v, want %v, off by %.3g, allowed %.1g", what, got, want, got.Dist(want), tol)
	}
}

// ring is a closed path that does not cross itself: straights and arcs round the origin.
func ring(t *rapid.T) plane.Path {
	n := rapid.IntRange(3, 9).Draw(t, "corners")
	var pts []plane.Point
	for i := range n {
		way := 2 * math.Pi * (float64(i) + rapid.Float64Range(-0.3, 0.3).Draw(t, "way")) / float64(n)
		pts = append(pts, plane.Point{X: rapid.Float64Range(3, 5).Draw(t, "reach")}.Turn(way))
	}
	p := plane.Polyline(pts, true)
	for i := range p.Segs {
		p.Segs[i].Bulge = rapid.Float64Range(-0.15, 0.4).Draw(t, "bulge")
	}
	return p
}

func TestPointDirections(t *testing.T) {
	for _, c := range []struct{ x, y, angle, bearing float64 }{
		{1, 0, 0, math.Pi / 2},
		{0, 1, math.Pi / 2, 0},
		{-1, 0, math.Pi, 1.5 * math.Pi},
		{0, -1, -math.Pi / 2, math.Pi},
		{-1e-30, 1, math.Pi / 2, 0},
		{0, 0, 0, 0},
	} {
		p := plane.Point{X: c.x, Y: c.y}
		near(t, "angle", plane.Angle(p), c.angle, 1e-15)
		near(t, "bearing", plane.Bearing(p), c.bearing, 1e-15)
	}
	p := plane.Point{X: 3, Y: 4}
	if p.Left() != (plane.Point{X: -4, Y: 3}) || p.Len() != 5 || p.Cross(p.Left()) != 25 {
		t.Errorf("left of %v is %v", p, p.Left())
	}
	nearPoint(t, "quarter turn", p.Turn(math.Pi/2), p.Left(), 1e-14)
	nearPoint(t, "unit", p.Unit(), plane.Point{X: 0.6, Y: 0.8}, 1e-15)
	if (plane.Point{}).Unit() != (plane.Point{}) || (plane.Point{X: math.NaN()}).Finite() || (plane.Point{Y: math.Inf(1)}).Finite() || !p.Finite() {
		t.Error("zero, NaN or Inf")
	}
}
