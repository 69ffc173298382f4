package adjust_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/internal/checks"
)

// Mikhail and Ackermann, Observations and Least Squares, example 4.3 (LS-11).
func TestPublishedEllipse(t *testing.T) {
	item := checks.Get(t, "LS-11")
	c := item.Expected.Rows("Cxx")
	major, minor, bearing := adjust.Axes(c[0][0], c[0][1], c[1][1])
	item.Compare("semi_major", major)
	item.Compare("semi_minor", minor)
	fromX := 90 - bearing*180/math.Pi
	item.Compare("major_axis_deg_from_x", fromX)
}

// The factor of the 95 % ellipse, and what ellipses of other sizes hold (LS-12): by formula, and
// by 200,000 draws on the axes, whose own sd is 0.0011 at most.
func TestEllipseHolds(t *testing.T) {
	item := checks.Get(t, "LS-12")
	item.Compare("k_for_95", adjust.Radius95)
	near(t, "probability", 1-math.Exp(-adjust.Radius95*adjust.Radius95/2), 0.95, 1e-12)
	l := [3]float64{3, 1.5, 0.8} // lower factor of the covariance
	major, minor, bearing := adjust.Axes(l[0]*l[0], l[0]*l[1], l[1]*l[1]+l[2]*l[2])
	r := rand.New(rand.NewPCG(12, 12))
	const draws = 200000
	k := item.Inputs.List("k")
	inside := make([]float64, len(k))
	s, c := math.Sincos(bearing)
	for range draws {
		u, v := r.NormFloat64(), r.NormFloat64()
		x, y := l[0]*u, l[1]*u+l[2]*v
		along, across := x*s+y*c, x*c-y*s
		q := math.Hypot(along/major, across/minor)
		for i := range k {
			if q <= k[i] {
				inside[i] += 1.0 / draws
			}
		}
	}
	for i, want := range item.Expected.List("P_k") {
		near(t, "share inside", inside[i], want, 0.0045)
	}
}

// Axes by hand: bearings are clockwise from +y, in [0, π).
func TestAxesByHand(t *testing.T) {
	for _, c := range []struct{ xx, xy, yy, major, minor, bearing float64 }{
		{9, 0, 4, 3, 2, math.Pi / 2},
		{4, 0, 9, 3, 2, 0},
		{5, 4, 5, 3, 1, math.Pi / 4},
		{5, -4, 5, 3, 1, 3 * math.Pi / 4},
		{4, 4, 4, math.Sqrt(8), 0, math.Pi / 4},
	} {
		major, minor, bearing := adjust.Axes(c.xx, c.xy, c.yy)
		near(t, "major", major, c.major, 1e-12)
		near(t, "minor", minor, c.minor, 1e-7)
		near(t, "bearing", bearing, c.bearing, 1e-12)
	}
}
