package basin_test

import (
	"math"
	"testing"

	"brimline/basin"
	"brimline/plane"
)

// hopper is a pool as in the trade's arithmetic: a flat shallow end, a slope, a pad and a back slope
// along its length; side slopes beside the pad that run out to nothing at the break and the back wall.
type hopper struct {
	flat, slope, pad, back float64
	side, padWide          float64
	shallow, deep          float64
}

func (h hopper) size() (length, width float64) {
	return h.flat + h.slope + h.pad + h.back, h.padWide + 2*h.side
}

// spec reads it exactly: wall feet at the corners and where the slope begins, and the pad. With
// joined the edges of the side slopes are stated as breaks.
func (h hopper) spec(joined bool) basin.Spec {
	l, w := h.size()
	s := basin.Spec{Rim: rectangle(l, w)}
	toe := h.flat + h.slope
	for _, p := range [][3]float64{
		{h.flat, 0, h.shallow}, {h.flat, w, h.shallow},
		{toe, h.side, h.deep}, {toe + h.pad, h.side, h.deep}, {toe + h.pad, w - h.side, h.deep}, {toe, w - h.side, h.deep},
		{l, 0, h.shallow}, {l, w, h.shallow},
	} {
		s.Floor = append(s.Floor, basin.Sounding{At: plane.Point{X: p[0], Y: p[1]}, Height: basin.Exact(-p[2])})
	}
	for _, at := range []float64{0, l, l + w, 2*l + w} {
		s.Walls = append(s.Walls, basin.Foot{S: at, Height: basin.Exact(-h.shallow)})
	}
	s.Breaks, s.Pad = [][]int{{0, 1}}, []int{2, 3, 4, 5}
	if joined {
		s.Breaks = append(s.Breaks, []int{0, 2}, []int{1, 5}, []int{6, 3}, []int{7, 4})
	}
	return s
}

func rectangle(l, w float64) plane.Path {
	return plane.Polyline([]plane.Point{{}, {X: l}, {X: l, Y: w}, {Y: w}}, true)
}

func build(t *testing.T, s basin.Spec) *basin.Basin {
	t.Helper()
	b, found, err := basin.New(s)
	if err != nil || b == nil {
		t.Fatalf("%v, findings %v", err, found)
	}
	return b
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.6f, want %.6f", what, got, want)
	}
}

// TestTradeHoppers: two hoppers of the trade handbook, computed there by Simpson's rule on slices,
// exact because every section is a quadratic in the run; and the estimate from two depths.
func TestTradeHoppers(t *testing.T) {
	for _, x := range []struct {
		name             string
		h                hopper
		volume, shortcut float64
	}{
		{"10 by 5", hopper{3.6, 2.7, 2.4, 1.3, 1.3, 2.4, 1.0, 2.4}, 74.00533, 85.0},
		{"36 ft by 18 ft", hopper{3.66, 3.05, 2.74, 1.52, 1.22, 3.05, 1.07, 2.29}, 91.75197, 101.17850},
	} {
		for _, joined := range []bool{false, true} {
			b := build(t, x.h.spec(joined))
			w, _ := b.Fill(basin.Exact(0))
			near(t, x.name+" volume", w.Volume, x.volume, 5e-6)
			near(t, x.name+" shortcut", w.Shortcut.Volume, x.shortcut, 5e-5)
			near(t, x.name+" error of it", w.Shortcut.Error, x.shortcut-x.volume, 5e-5)
			l, wide := x.h.size()
			near(t, x.name+" area", w.Area, l*wide, 1e-9)
			near(t, x.name+" walls", w.Parts[basin.Walls], 2*(l+wide)*x.h.shallow, 1e-9)
			near(t, x.name+" floor", w.Parts[basin.Floor], x.h.floorArea(), 1e-9)
			near(t, x.name+" greatest depth", w.Deepest.Depth, x.h.deep, 1e-12)
			near(t, x.name+" mean depth", w.Mean, x.volume/(l*wide), 1e-6)
		}
	}
}

// floorArea is that of its facets on their slopes.
func (h hopper) floorArea() float64 {
	_, w := h.size()
	d := h.deep - h.shallow
	on := func(run float64) float64 { return math.Hypot(run, d) / run }
	ends := (w + h.padWide) / 2 * (h.slope*on(h.slope) + h.back*on(h.back))
	sides := h.side * (h.pad + (h.slope+h.back)/2) * 2 * on(h.side)
	return h.flat*w + h.pad*h.padWide + ends + sides
}
