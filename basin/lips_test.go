package basin_test

import (
	"math"
	"testing"

	"brimline/basin"
	"brimline/plane"
)

// TestLips: a lip bounds the water, a raised wall does not let it rise above the rest of the rim.
func TestLips(t *testing.T) {
	s := level(8, 4, 1.5)
	s.Spills = []basin.Spill{{Name: "weir", From: 9, To: 11, Lip: []basin.Level{{S: 9, Height: basin.Exact(-0.05)}, {S: 11, Height: basin.Exact(-0.07)}}}}
	s.Raised = []basin.Raised{{Name: "north", From: 13, To: 19, Top: []basin.Level{{S: 13, Height: basin.Exact(0.4)}}}}
	b := build(t, s)
	brim := b.Brim()
	near(t, "brim", brim.Height, -0.07, 1e-12)
	if brim.Name != "weir" {
		t.Errorf("the brim is %q", brim.Name)
	}
	w, found := b.Fill(basin.Exact(0))
	near(t, "level", w.Level, -0.07, 1e-12)
	if len(found) != 1 || found[0].Code != "over-lip" {
		t.Errorf("findings %v", found)
	}
	near(t, "over", found[0].Figures["over"], 0.07, 1e-12)
	high, low := math.Inf(-1), math.Inf(1)
	for _, p := range b.Section(plane.Point{X: 5, Y: 2}, plane.Point{X: 5, Y: 3}) {
		for _, q := range p.Points {
			high, low = math.Max(high, q.Z), math.Min(low, q.Z)
		}
	}
	near(t, "raised wall in the section", high, 0.4, 1e-9)
	near(t, "floor in the section", low, -1.5, 1e-9)
}

// TestRim: mean along the length, high and low with their standard deviations.
func TestRim(t *testing.T) {
	s := level(8, 4, 1.5)
	for i, z := range []float64{0, 0.006, -0.004, 0.002} {
		s.Levels[i].Height = basin.Height{Z: z, Index: i}
	}
	s.Cov = make([]float64, 16)
	for i := range 4 {
		s.Cov[5*i] = 4e-6
	}
	r, ok := build(t, s).Rim()
	if !ok {
		t.Fatal("no rim")
	}
	near(t, "mean", r.Mean, 0.001, 1e-12)
	near(t, "its sd", r.MeanSD, 0.001, 1e-9)
	near(t, "out of level", r.Out, 0.010, 1e-12)
	near(t, "its sd", r.OutSD, 0.002*math.Sqrt2, 1e-9)
	near(t, "high", r.High.Off, 0.005, 1e-12)
	near(t, "its sd", r.High.SD, 0.002*math.Sqrt(0.75), 1e-9)
	if r.High.Name != "b" || r.Low.Name != "c" {
		t.Errorf("high %q, low %q", r.High.Name, r.Low.Name)
	}
}

// TestStages: the table of a pool with upright walls is linear above its floor; the top row is the
// water itself.
func TestStages(t *testing.T) {
	b := build(t, hopper{3.6, 2.7, 2.4, 1.3, 1.3, 2.4, 1.0, 2.4}.spec(true))
	rows, err := b.Stages(basin.Exact(0), 0.1)
	if err != nil || len(rows) != 24 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	near(t, "top", rows[23].Volume, 74.00533, 5e-6)
	for i := 15; i < 24; i++ {
		near(t, "rise above the shallow floor", rows[i].Volume-rows[i-1].Volume, 5, 1e-9)
	}
	for i := 1; i < 14; i++ {
		if d := (rows[i].Volume - rows[i-1].Volume) / 0.1; d < rows[i-1].Area || d > rows[i].Area {
			t.Errorf("row %d: %g m³ per metre between areas %g and %g", i, d, rows[i-1].Area, rows[i].Area)
		}
	}
	if _, err := b.Stages(basin.Exact(0), 0); err == nil {
		t.Error("a step of 0 is taken")
	}
}
