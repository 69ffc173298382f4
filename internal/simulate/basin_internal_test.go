package simulate

import (
	"math"
	"testing"

	"brimline/plane"
)

// plain is a basin without waves, upright walls and a rim of straights, read exactly.
func plain(l, w float64, ground func(x, y float64) float64) *basinDraw {
	d := &basinDraw{Basin: &Basin{}, r: stream(1, streamBasin), length: l, width: w, ground: ground}
	d.lean = func(int) float64 { return 0 }
	d.rise = func(float64) float64 { return 0 }
	d.drawCorners(plane.Point{}, plane.Point{X: l}, plane.Point{X: l, Y: w}, plane.Point{Y: w})
	return d
}

func about(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.5f, want %.5f", what, got, want)
	}
}

// The truth is that of solids whose figures are known: the hopper of the trade's arithmetic by
// Simpson's rule on slices, a trough whose walls lean out (a frustum, by its end and middle sections),
// coves by a direct sum over their section.
func TestBasinTruth(t *testing.T) {
	d := plain(10, 5, func(x, y float64) float64 {
		u := math.Min((x-3.6)/2.7, (10-x)/1.3)
		u = math.Min(u, math.Min(y/1.3, (5-y)/1.3))
		return -1 - 1.4*math.Max(0, math.Min(1, u))
	})
	d.truth()
	about(t, "hopper", d.True.Volume, 74.00533, 2e-3)
	about(t, "its walls and floor", d.True.Wetted, 88.89433, 0.03) // columns astride of the back corners count half of either slope

	d = plain(8, 4, func(x, y float64) float64 { return -2 })
	d.lean = func(int) float64 { return 0.05 }
	d.truth()
	ends := func(z float64) float64 { return (8 + 0.1*z) * (4 + 0.1*z) }
	about(t, "leaning", d.True.Volume, 2*(ends(0)+4*ends(1)+ends(2))/6, 0.03) // corners are left out: 4·0.05²·2³/3
	about(t, "its wetted area", d.True.Wetted, ends(2)+2*math.Sqrt(1+0.0025)*2*(8.1+4.1), 0.05)

	d = plain(8, 4, func(x, y float64) float64 { return -2 })
	d.Cove, d.Round = 0.2, true
	d.truth()
	const n = 20000
	taken := 0.0 // at the distance u from the wall the cove stands r − √(r² − (r−u)²) high, round a ring of 24 − 8u
	for k := range n {
		u := 0.2 * (float64(k) + 0.5) / n
		taken += 0.2 / n * (0.2 - math.Sqrt(0.04-(0.2-u)*(0.2-u))) * (24 - 8*u)
	}
	about(t, "coved", 64-d.True.Volume, taken, 1e-5)
}

// Basins keep to their 12 to 60 soundings, and come out the same twice.
func TestDrawBasin(t *testing.T) {
	for _, kind := range BasinKinds {
		for seed := range uint64(12) {
			a, b := DrawBasin(seed+9000, kind), DrawBasin(seed+9000, kind)
			if n := len(a.Floor); n < 12 || n > 60 || len(a.True.Places) != 5 {
				t.Errorf("%s %d: %d soundings, %d places", kind, seed, n, len(a.True.Places))
			}
			if a.True.Volume != b.True.Volume || a.Floor[11] != b.Floor[11] {
				t.Errorf("%s %d: another one the second time", kind, seed)
			}
			if v, deep := a.True.Volume, a.True.Area*3; !(v > 0 && v < deep) || !(a.True.Wetted > a.True.Area) {
				t.Errorf("%s %d: volume %g, wetted %g, area %g", kind, seed, v, a.True.Wetted, a.True.Area)
			}
		}
	}
}
