package plane_test

import (
	"math"
	"testing"

	"brimline/internal/checks"
	"brimline/plane"
)

func dms(l []float64) float64 { return (l[0] + l[1]/60 + l[2]/3600) * math.Pi / 180 }

// curve elements from radius and deflection by way of the segment itself.
func elements(r, delta float64) (s plane.Segment, tangent, external float64) {
	s = plane.Segment{A: plane.Point{X: r}, B: plane.Point{X: r}.Turn(delta), Bulge: math.Tan(delta / 4)}
	pi, _ := plane.MeetLines(s.A, s.A.Add(s.Tangent(0)), s.B, s.B.Add(s.Tangent(1)))
	return s, pi.Dist(s.A), pi.Dist(s.At(0.5))
}

// C-04: solution sheet on horizontal curves. C-05: Wolf and Ghilani, Elementary Surveying,
// degree of curve by the arc definition. C-06: R = C²/(8M) + M/2 on the figures of C-04.
func TestPublishedCurveElements(t *testing.T) {
	all := checks.Load(t)
	c := all["C-04"]
	s, tangent, external := elements(c.Inputs.Number("R_m"), dms(c.Inputs.List("delta_dms")))
	c.Compare("T", tangent)
	c.Compare("long_chord", s.Chord())
	c.Compare("middle_ordinate", s.Sagitta())
	c.Compare("external", external)
	c.Compare("arc", s.Length())

	c = all["C-05"]
	r := 100 / (c.Inputs.Number("D_deg") * math.Pi / 180) // an arc of 100 ft turns by D
	s, tangent, external = elements(r, dms(c.Inputs.List("delta_dms")))
	c.Compare("R", s.Radius())
	c.Compare("L", s.Length())
	c.Compare("T", tangent)
	c.Compare("long_chord", s.Chord())
	c.Compare("external", external)
	c.Compare("middle_ordinate", s.Sagitta())
	c.Compare("PC_station", c.Inputs.Number("PI_station_ft")-tangent)
	c.Compare("PT_station", c.Inputs.Number("PI_station_ft")-tangent+s.Length())

	c = all["C-06"]
	r, _, _, _ = plane.ChordRise(c.Inputs.Number("chord"), c.Inputs.Number("middle_ordinate"))
	c.Compare("R", r)
}

// teaching sheet on offsets. A-02: Wolf and Ghilani. A-03: shoelace formula, encyclopaedia.
func TestPublishedAreas(t *testing.T) {
	all := checks.Load(t)
	c := all["A-01"]
	o, step := c.Inputs.List("offsets_m"), c.Inputs.Number("interval_m")
	c.Compare("trapezoidal_m2", plane.TrapezoidArea(o, step))
	simpson, ok := plane.SimpsonArea(o, step)
	if !ok {
		t.Error("12 steps are even")
	}
	c.Compare("simpson_m2", simpson)

	c = all["A-02"]
	c.Compare("area_ft2", plane.TrapezoidArea(c.Inputs.List("offsets_ft"), c.Inputs.Number("interval_ft")))

	c = all["A-03"]
	pts := pairs(c.Inputs.Rows("vertices"))
	c.Compare("area", plane.PolygonArea(pts))
	c.Compare("area", plane.Polyline(pts, true).Area())
	c.Compare("area", -plane.Polyline(pts, true).Reverse().Area())
}

// double meridian distances, solution sheet. The figure does not close by 2 mm each way,
// and by how much the coordinate area may then differ follows from that gap times the size.
func TestPublishedMeridianDistances(t *testing.T) {
	c := checks.Get(t, "A-04")
	lat, dep := c.Inputs.List("latitudes"), c.Inputs.List("departures")
	var pts []plane.Point
	var at plane.Point
	for i := range lat {
		pts = append(pts, at)
		at = at.Add(plane.Point{X: dep[i], Y: lat[i]})
	}
	gap := at.Len()
	size := plane.BoundsOf(pts...).Diagonal()
	near(t, "coordinate area", math.Abs(plane.PolygonArea(pts)), c.Expected.Number("area"), gap*size+c.Tolerance("area"))
	near(t, "gap", gap, 0.002*math.Sqrt2, 1e-9)
}

// GeographicLib's quarter meridian. A-06: complete elliptic integral, NIST DLMF 19.
func TestPublishedEllipses(t *testing.T) {
	all := checks.Load(t)
	c := all["A-05"]
	a := c.Inputs.Number("a")
	p := plane.EllipsePerimeter(a, a*(1-1/c.Inputs.Number("inverse_flattening")))
	c.Compare("perimeter", p)
	c.Compare("quarter", p/4)
	c = all["A-06"]
	var got []float64
	for _, ab := range c.Inputs.Rows("a_b") {
		got = append(got, plane.EllipsePerimeter(ab[0], ab[1]))
	}
	c.Compare("exact", got...)
}

func TestEllipseLimits(t *testing.T) {
	near(t, "circle", plane.EllipsePerimeter(3, 3), 6*math.Pi, 1e-14)
	near(t, "double line", plane.EllipsePerimeter(3, 0), 12, 0)
	near(t, "almost a line", plane.EllipsePerimeter(3, 1e-9), 12, 1e-12)
	near(t, "either order", plane.EllipsePerimeter(-2, 5), plane.EllipsePerimeter(5, 2), 0)
}

// Simpson's rule is exact for cubics, the trapezoid for straights (any numerical textbook).
func TestOffsetRules(t *testing.T) {
	var line, cubic []float64
	for i := range 7 {
		x := float64(i) / 2
		line, cubic = append(line, 1+2*x), append(cubic, 1+x-x*x+x*x*x)
	}
	near(t, "trapezoid", plane.TrapezoidArea(line, 0.5), 3+9, 1e-14)
	got, _ := plane.SimpsonArea(cubic, 0.5)
	near(t, "Simpson", got, 3+4.5-9+20.25, 1e-13)
	for _, n := range []int{0, 1, 2, 4} {
		if _, ok := plane.SimpsonArea(line[:n], 1); ok {
			t.Errorf("Simpson says something of %d offsets", n)
		}
	}
	near(t, "one offset", plane.TrapezoidArea(line[:1], 1), 0, 0)
	near(t, "two corners", plane.PolygonArea(pairs([][]float64{{1, 1}, {2, 5}})), 0, 0)
}
