package plane_test

import (
	"math"
	"testing"

	"brimline/internal/parallels"
	"brimline/plane"

	"pgregory.net/rapid"
)

// Of any parallel the area grows by its length as the distance grows: dA/dd = L, whatever has been cut
// away; where nothing has and every corner is round, the length grows by the turning: dL/dd = 2π.
// Central differences; the length is not smooth in d where pieces vanish, so that the area is held
// between the lengths at both ends.
func TestRates(t *testing.T) {
	const h = 1e-4
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t).Move(movement(t))
		d := signed(t)
		if math.Abs(d) < 2*h {
			return
		}
		size := func(d float64) (area, length float64) {
			for _, q := range offset(t, p, d, plane.RoundCorners).Paths {
				area, length = area+q.Area(), length+q.Length()
			}
			return area, length
		}
		below, short := size(d - h)
		_, mid := size(d)
		above, long := size(d + h)
		rate, least, most := (above-below)/(2*h), min(short, mid, long), max(short, mid, long)
		if slack := 1e-3; rate < least-slack || rate > most+slack {
			t.Fatalf("at %g the area grows by %g a metre; lengths %g, %g, %g", d, rate, short, mid, long)
		}
	})
	for _, d := range []float64{0.5, -0.5} {
		far, near0 := single(t, kidney(), d+h, plane.RoundCorners), single(t, kidney(), d-h, plane.RoundCorners)
		near(t, "turning", (far.Length()-near0.Length())/(2*h), 2*math.Pi, 1e-6)
	}
}

// Rings of 2,000 segments against Steiner's formula, and against reach by reach where it does not hold.
func TestOffsetOfTwoThousand(t *testing.T) {
	for _, kind := range parallels.Kinds {
		p := parallels.Ring(kind, 2000)
		for _, d := range []float64{0.3, -0.3} {
			out := single(t, p, d, plane.RoundCorners)
			near(t, kind, out.Area(), parallels.Area(p, d), 1e-5)
		}
	}
}
