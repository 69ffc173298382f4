package plane_test

import (
	"math"
	"testing"

	"brimline/plane"
)

// Worked figures of the trade handbook, appendix A, to the places printed there. They were
// computed there from the closed formulas named here, with no arc of this package.

const deg = math.Pi / 180

// Two pegs: x = (A² − B² + b²)/(2b), y = √(A² − x²); γ by the law of cosines.
func TestHandbookTwoPegs(t *testing.T) {
	a, b := plane.Point{}, plane.Point{X: 6}
	p, mirror, gap := plane.MeetCircles(a, 7.325, b, 5.810)
	near(t, "gap", gap, 0, 0)
	nearPoint(t, "point", p, plane.Point{X: 4.65829375, Y: 5.65295713}, 5e-9)
	nearPoint(t, "mirror image", mirror, plane.Point{X: 4.65829375, Y: -5.65295713}, 5e-9)
	near(t, "angle", plane.Between(a.Sub(p), b.Sub(p)), 52.841935*deg, 5e-7*deg)
	q, _, _ := plane.MeetCircles(a, 5.810, b, 7.325)
	nearPoint(t, "columns swapped", q, plane.Point{X: 1.34170625, Y: 5.65295713}, 5e-9)
}

// Chord and rise: R = c²/(8h) + h/2; segment area R²(θ − sin θ)/2.
func TestHandbookChordAndRise(t *testing.T) {
	for _, c := range []struct{ c, h, r, theta, arc, area, rTol float64 }{
		{2.4, 0.3, 2.550, 56.144974, 2.49878236, 0.48594751, 1e-12},
		{2.4, 0.9, 1.250, 147.479591, 3.21750554, 1.59094096, 1e-12},
		{3.4, 1.25, 1.781, 145.307303, 4.51677785, 3.11949068, 1e-12}, // roman end; 145.3073038 was cut, not rounded
	} {
		r, sweep, arc, area := plane.ChordRise(c.c, c.h)
		near(t, "radius", r, c.r, c.rTol)
		near(t, "sweep", sweep, c.theta*deg, 1e-6*deg)
		near(t, "arc", arc, c.arc, 5e-9)
		near(t, "segment", area, c.area, 5e-9)
	}
}

func TestChordRiseEnds(t *testing.T) {
	r, sweep, arc, area := plane.ChordRise(2, 0)
	if !math.IsInf(r, 1) || sweep != 0 || arc != 2 || area != 0 {
		t.Errorf("flat: %v %v %v %v", r, sweep, arc, area)
	}
	r, sweep, arc, area = plane.ChordRise(2, 1)
	near(t, "half circle", r-1+sweep-math.Pi+arc-math.Pi+area-math.Pi/2, 0, 1e-14)
	r, sweep, arc, area = plane.ChordRise(2, -1)
	near(t, "to the other side", r+1+sweep+math.Pi+arc-math.Pi+area+math.Pi/2, 0, 1e-14)
	if r, sweep, _, _ := plane.ChordRise(1, 3); !(sweep > math.Pi) || r > 3 {
		t.Errorf("more than a half circle: radius %v, sweep %v", r, sweep)
	}
	if r, _, _, _ := plane.ChordRise(0, 1); !math.IsNaN(r) {
		t.Errorf("no chord: %v", r)
	}
}

// R = abc/(4K), K by Heron's formula; a triangle with sides 2.0, 2.5, 3.0.
func TestHandbookCircumradius(t *testing.T) {
	c, _, _ := plane.MeetCircles(plane.Point{}, 2.5, plane.Point{X: 2}, 3)
	corners := []plane.Point{{}, {X: 2}, c}
	near(t, "area", plane.PolygonArea(corners), 2.48039185, 5e-9)
	o, _ := plane.Circumcircle(corners[0], corners[1], corners[2])
	near(t, "radius", o.R, 1.51185789, 5e-9)
}

// tangentRing joins lines and arcs given as corner points and the sweep from each to the next.
func tangentRing(corners []plane.Point, sweeps ...float64) plane.Path {
	p := plane.Polyline(corners, true)
	for i := range p.Segs {
		p.Segs[i].Bulge = math.Tan(sweeps[i] / 4)
	}
	return p
}

func figure(t *testing.T, name string, p plane.Path, length, area, tol float64) {
	t.Helper()
	if err := p.Validate(); err != nil {
		t.Errorf("%s: %v", name, err)
	}
	if c := p.Crossings(); c != nil {
		t.Errorf("%s crosses itself: %v", name, c)
	}
	near(t, name+" perimeter", p.Length(), length, tol)
	near(t, name+" area", p.Area(), area, tol)
}

// P = 2(L + W) − (8 − 2π)r, A = LW − (4 − π)r²; stadium: straights and half circles.
func TestHandbookStraightsAndQuarters(t *testing.T) {
	const r = 0.6
	q := math.Pi / 2
	pts := []plane.Point{{X: r}, {X: 8 - r}, {X: 8, Y: r}, {X: 8, Y: 4 - r}, {X: 8 - r, Y: 4}, {X: r, Y: 4}, {Y: 4 - r}, {Y: r}}
	figure(t, "rounded rectangle", tangentRing(pts, 0, q, 0, q, 0, q, 0, q), 22.96991118, 31.69097336, 5e-9)
	pts = []plane.Point{{X: -2.5, Y: -2.5}, {X: 2.5, Y: -2.5}, {X: 2.5, Y: 2.5}, {X: -2.5, Y: 2.5}}
	figure(t, "stadium", tangentRing(pts, 0, math.Pi, 0, math.Pi), 25.70796327, 44.63495408, 5e-9)
}

// An oval of four tangent arcs in a 9.6 × 5.1 box: end arcs of radius 2.2 at ±2.6, side arcs of
// radius R centred at distance R − 2.55 across, tangent where (R − 2.2)² = 2.6² + (R − 2.55)².
func TestHandbookOval(t *testing.T) {
	const end, half, across = 2.2, 4.8 - 2.2, 5.1 / 2
	r := (half*half + across*across - end*end) / (2 * (across - end))
	near(t, "side radius", r, 12.03214286, 5e-9)
	phi := math.Atan2(half, r-across)
	near(t, "half sweep", phi, 15.333609*deg, 5e-7*deg)
	side := plane.Point{Y: -(r - across)}
	p := side.Add(plane.Point{Y: r}.Turn(-phi)) // the joint at the upper right
	pts := []plane.Point{{X: p.X, Y: -p.Y}, p, {X: -p.X, Y: p.Y}, {X: -p.X, Y: -p.Y}}
	figure(t, "oval", tangentRing(pts, math.Pi-2*phi, 2*phi, math.Pi-2*phi, 2*phi), 24.34819685, 40.79616353, 5e-9)
}

// Four tangent arcs: lobes 2.4 and 1.8 with centres 5.0 apart, back 6.1 round both, waist 1.5
// turning the other way. Centres and joint lie on one line; the signed sweeps add up to 360°.
func TestHandbookKidney(t *testing.T) {
	a, b := plane.Point{}, plane.Point{X: 5}
	back, _, _ := plane.MeetCircles(a, 6.1-2.4, b, 6.1-1.8)
	waist, _, _ := plane.MeetCircles(a, 2.4+1.5, b, 1.8+1.5)
	ba, bb := back.Add(a.Sub(back).Unit().Mul(6.1)), back.Add(b.Sub(back).Unit().Mul(6.1))
	wb, wa := waist.Add(b.Sub(waist).Unit().Mul(1.5)), waist.Add(a.Sub(waist).Unit().Mul(1.5))
	sweep := func(p, q, c plane.Point, sign float64) float64 {
		w := plane.Between(p.Sub(c), q.Sub(c))
		if w*sign < 0 {
			w += sign * 2 * math.Pi
		}
		return w
	}
	w := []float64{sweep(ba, bb, back, 1), sweep(bb, wb, b, 1), sweep(wb, wa, waist, -1), sweep(wa, ba, a, 1)}
	near(t, "signed sweep", w[0]+w[1]+w[2]+w[3], 2*math.Pi, 1e-12)
	kidney := tangentRing([]plane.Point{ba, bb, wb, wa}, w...)
	figure(t, "kidney", kidney, 24.17693144, 36.73126037, 5e-9)
	for i, s := range kidney.Segs {
		nearPoint(t, "smooth joint", s.Tangent(1), kidney.Segs[(i+1)%4].Tangent(0), 1e-12)
	}
}

// Regular octagon of side s: A = 2(1 + √2)s², across flats (1 + √2)s. Ellipse: perimeter.
func TestHandbookOctagonAndEllipse(t *testing.T) {
	var pts []plane.Point
	at := plane.Point{}
	for i := range 8 {
		pts = append(pts, at)
		at = at.Add(plane.Point{X: 0.92}.Turn(float64(i) * math.Pi / 4))
	}
	p := plane.Polyline(pts, true)
	figure(t, "octagon", p, 7.36, 4.08678072, 5e-9)
	box := p.Bounds()
	near(t, "across flats", box.Max.Y-box.Min.Y, 2.22107648, 5e-9)
	// Printed is Ramanujan's second formula, 1.1e-8 short of the exact at this shape.
	near(t, "ellipse", plane.EllipsePerimeter(5, 2.5), 24.22112054+1.1e-8, 6e-9)
}
