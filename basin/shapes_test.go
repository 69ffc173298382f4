package basin_test

import (
	"math"
	"testing"

	"brimline/basin"
	"brimline/internal/checks"
	"brimline/plane"
)

// level is a pool of one depth, with corners read and a rim read at them.
func level(l, w, depth float64) basin.Spec {
	s := basin.Spec{Rim: rectangle(l, w)}
	for i, at := range []float64{0, l, l + w, 2*l + w} {
		s.Walls = append(s.Walls, basin.Foot{S: at, Height: basin.Exact(-depth)})
		s.Levels = append(s.Levels, basin.Level{S: at, Height: basin.Exact(0), Name: string(rune('a' + i))})
	}
	return s
}

// TestPublishedTank: item V-01 of the published checks, a tank whose four sides slope inwards by one
// metre, here as walls that lean.
func TestPublishedTank(t *testing.T) {
	tank := checks.Get(t, "V-01")
	top, bottom, depth := tank.Inputs.List("top"), tank.Inputs.List("bottom"), tank.Inputs.Number("depth")
	s := level(top[0], top[1], depth)
	in := (top[0] - bottom[0]) / 2
	for _, at := range []float64{1, top[0] + 1, top[0] + top[1] + 1} {
		s.Profiles = append(s.Profiles, basin.Profile{S: at, Points: []basin.Out{{Down: depth, Outward: -in}}})
	}
	w, _ := build(t, s).Fill(basin.Exact(0))
	tank.Compare("volume_m3", w.Volume)
	near(t, "surface", w.Area, top[0]*top[1], 1e-9)
	half, _ := build(t, s).Fill(basin.Exact(-depth / 2))
	near(t, "surface half way down", half.Area, (top[0]+bottom[0])*(top[1]+bottom[1])/4, 1e-9)
	side := math.Hypot(depth, in)
	near(t, "walls", w.Parts[basin.Walls], side*(top[0]+bottom[0]+top[1]+bottom[1]), 1e-9)
	near(t, "floor", w.Parts[basin.Floor], bottom[0]*bottom[1], 1e-9)
}

// TestPublishedMeanDepth: item V-04, a pool whose floor slopes evenly, in feet.
func TestPublishedMeanDepth(t *testing.T) {
	const ft = 0.3048
	p := checks.Get(t, "V-04")
	l, w := p.Inputs.Number("length_ft")*ft, p.Inputs.Number("width_ft")*ft
	s := level(l, w, p.Inputs.Number("shallow_ft")*ft)
	for _, k := range []int{1, 2} {
		s.Walls[k].Height.Z = -p.Inputs.Number("deep_ft") * ft
	}
	water, _ := build(t, s).Fill(basin.Exact(0))
	p.Compare("volume_litres", water.Volume*1000)
	near(t, "mean depth in feet", water.Mean/ft, p.Expected.Number("mean_depth_ft"), 1e-9)
	near(t, "shallow and deep", water.Shortcut.Error, 0, 1e-9)
}

// TestCoves: a fillet takes away its section along the path of its centroid (Pappus): area r²(1 − π/4),
// r(10 − 3π)/(12 − 3π) from either side; a bevel r²/2, r/3 from them. The
// arc has πr/2, r(1 − 2/π) from the wall. The arc is drawn by eight chords, which the figures here take into account: area
// and length of a fan of eight instead of a quarter circle.
func TestCoves(t *testing.T) {
	const l, w, depth, r = 8, 4, 1.5, 0.2
	around := func(in float64) float64 { return 2*(l+w) - 8*in }
	for _, x := range []struct {
		round       bool
		taken, cove float64
		tolerance   float64
	}{
		{false, r * r / 2 * around(r/3), r * math.Sqrt2 * around(r/2), 1e-9},
		{true, r * r * (1 - 4*math.Sin(math.Pi/16)) * around(r*(10-3*math.Pi)/(12-3*math.Pi)), 16 * r * math.Sin(math.Pi/32) * around(r*(1-2/math.Pi)), 2e-3},
	} {
		s := level(l, w, depth)
		s.Coves = []basin.Cove{{Round: x.round, Size: r}}
		water, _ := build(t, s).Fill(basin.Exact(0))
		near(t, "volume", water.Volume, l*w*depth-x.taken, x.tolerance)
		near(t, "cove", water.Parts[basin.Coves], x.cove, x.tolerance)
		near(t, "walls", water.Parts[basin.Walls], 2*(l+w)*(depth-r), 1e-9)
		near(t, "floor", water.Parts[basin.Floor], (l-2*r)*(w-2*r), 1e-9)
	}
}

// TestCoveOfOneSide: only the side from 0 to l has it; a rod that ended on its top finds the same floor.
func TestCoveOfOneSide(t *testing.T) {
	const l, w, depth, r = 8.0, 4.0, 1.5, 0.2
	s := level(l, w, depth)
	s.Coves = []basin.Cove{{From: 1, To: 7, Size: r}}
	s.Walls = append(s.Walls, basin.Foot{S: 4, Height: basin.Exact(r - depth), ToCove: true})
	water, _ := build(t, s).Fill(basin.Exact(0))
	near(t, "volume", water.Volume, l*w*depth-r*r/2*6, 2e-4)            // its ends are drawn over 5 mm
	near(t, "cove", water.Parts[basin.Coves], r*math.Sqrt2*6+r*r, 5e-3) // with its two ends
}

// TestSteps: three treads across the shallow end in a corner and a bench at a side, by hand.
func TestSteps(t *testing.T) {
	const l, w, depth = 8.0, 4.0, 1.2
	s := level(l, w, depth)
	entry := basin.Step{Name: "entry"}
	for k, top := range []float64{0.3, 0.6, 0.9} {
		entry.Treads = append(entry.Treads, basin.Tread{Ring: box(0, 0, 0.3*float64(k+1), 2), Height: basin.Exact(-top)})
	}
	s.Steps = []basin.Step{entry}
	s.Ledges = []basin.Ledge{{Name: "seat", Kind: "bench", Ring: box(4, 3.5, 7, 4), Height: basin.Exact(-0.5)}}
	water, found := build(t, s).Fill(basin.Exact(0))
	if len(found) > 0 {
		t.Errorf("findings %v", found)
	}
	near(t, "volume", water.Volume, l*w*depth-0.6*(0.9+0.6+0.3)-1.5*0.7, 1e-9)
	fronts := 2 * (0.3 + 0.3 + 0.3) // across: from tread to tread, and from the last to the floor
	ends := 0.3 * (0.9 + 0.6 + 0.3) // at their free side
	near(t, "steps", water.Parts[basin.Steps], 3*0.6+fronts+ends, 1e-9)
	near(t, "ledges", water.Parts[basin.Ledges], 1.5+0.7*(3+0.5+0.5), 1e-9)
	covered := 2*0.9 + 0.3*(0.9+0.6+0.3) + 3*0.7
	near(t, "walls", water.Parts[basin.Walls], 2*(l+w)*depth-covered, 1e-9)
	near(t, "floor", water.Parts[basin.Floor], l*w-1.8-1.5, 1e-9)
}

// TestStepsOverCove: under a step the cove is gone, beside it the cove begins.
func TestStepsOverCove(t *testing.T) {
	const l, w, depth, r = 8.0, 4.0, 1.2, 0.15
	s := level(l, w, depth)
	s.Coves = []basin.Cove{{Size: r}}
	bare, _ := build(t, s).Fill(basin.Exact(0))
	s.Ledges = []basin.Ledge{{Name: "seat", Kind: "bench", Ring: box(2, 0, 5, 0.5), Height: basin.Exact(-0.5)}}
	with, _ := build(t, s).Fill(basin.Exact(0))
	near(t, "taken away", bare.Volume-with.Volume, 3*0.5*0.7-3*r*r/2, 1e-3)
}

func box(x0, y0, x1, y1 float64) plane.Path {
	return plane.Polyline([]plane.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}, true)
}

// TestBay: two treads beyond the rim add their water, and the wall goes where they open.
func TestBay(t *testing.T) {
	const l, w, depth = 8.0, 4.0, 1.2
	s := level(l, w, depth)
	s.Steps = []basin.Step{{Name: "bay", Bay: true, Treads: []basin.Tread{
		{Ring: box(-0.4, 1, 0, 3), Height: basin.Exact(-0.8)}, {Ring: box(-0.8, 1, -0.4, 3), Height: basin.Exact(-0.4)},
	}}}
	s.Walls = append(s.Walls, basin.Foot{S: 2*l + w + 1, Height: basin.Exact(-depth)}, basin.Foot{S: 2*l + w + 3, Height: basin.Exact(-depth)})
	water, _ := build(t, s).Fill(basin.Exact(-0.1))
	near(t, "volume", water.Volume, l*w*(depth-0.1)+0.8*0.7+0.8*0.3, 1e-9)
	near(t, "surface", water.Area, l*w+1.6, 1e-9)
	near(t, "steps", water.Parts[basin.Steps], 1.6+2*0.4+2*0.4*(0.7+0.3)+2*0.3, 1e-9)
	near(t, "walls", water.Parts[basin.Walls], 2*(l+w)*(depth-0.1)-2*0.7, 1e-9)
}
