package sheet_test

import (
	"math"
	"testing"

	"brimline/plane"
	"brimline/sheet"
)

func TestStraightDimension(t *testing.T) {
	d := sheet.Dimension{A: plane.Point{X: 10, Y: 10}, B: plane.Point{X: 60, Y: 10}, Offset: -12, Skip: 2, Text: "2.500", Height: 3.5, Share: 0.5}
	p := d.Parts()
	if len(p.Lines) != 3 || len(p.Arrows) != 2 {
		t.Fatalf("%d lines, %d arrows", len(p.Lines), len(p.Arrows))
	}
	line := p.Lines[2].Segs[0]
	if line.A != (plane.Point{X: 10, Y: -2}) || line.B != (plane.Point{X: 60, Y: -2}) {
		t.Errorf("dimension line %v", line)
	}
	if tip := p.Arrows[0][0]; tip != line.A {
		t.Errorf("arrow points at %v", tip)
	}
	ext := p.Lines[0].Segs[0]
	if ext.A.Y != 8 || ext.B.Y != -4 {
		t.Errorf("extension line from %v to %v: it leaves 2 mm free and passes by 2 mm", ext.A, ext.B)
	}
	if p.Text.At.X != 35 || p.Text.At.Y <= -2 || p.Text.Turn != 0 {
		t.Errorf("figure at %v turned %g", p.Text.At, p.Text.Turn)
	}
}

// A short dimension has its arrows outside, pointing at each other.
func TestShortDimension(t *testing.T) {
	p := sheet.Dimension{B: plane.Point{X: 4}, Offset: 8, Text: "0.2", Height: 2.5, Share: 0.5}.Parts()
	if line := p.Lines[2].Segs[0]; line.Length() <= 4 {
		t.Errorf("the line is %g long", line.Length())
	}
	if base := p.Arrows[0][1]; base.X >= 0 {
		t.Errorf("the left arrow's body is at %g", base.X)
	}
}

// A concentric dimension of an arc keeps centre and sweep, on either side.
func TestArcDimension(t *testing.T) {
	seg := plane.Segment{A: plane.Point{X: 30}, B: plane.Point{Y: 30}, Bulge: math.Tan(math.Pi / 8)}
	for _, bulge := range []float64{seg.Bulge, -seg.Bulge} {
		arc := plane.Segment{A: seg.A, B: seg.B, Bulge: bulge}
		for _, offset := range []float64{10, -10} {
			d := sheet.Dimension{Kind: sheet.DimArc, A: arc.A, B: arc.B, Bulge: bulge, Offset: offset, Text: "1.885", Height: 3.5, Share: 0.5}
			p := d.Parts()
			got := p.Lines[len(p.Lines)-1].Segs[0]
			if got.Centre().Dist(arc.Centre()) > 1e-9 || math.Abs(got.Sweep()-arc.Sweep()) > 1e-12 {
				t.Errorf("bulge %g offset %g: centre %v sweep %g", bulge, offset, got.Centre(), got.Sweep())
			}
			if r := math.Abs(got.Radius()); math.Abs(r-30-offset) > 1e-9 {
				t.Errorf("bulge %g offset %g: radius %g", bulge, offset, r)
			}
			if len(p.Sign.Segs) != 1 {
				t.Error("the arc sign is missing")
			}
			for _, c := range p.Text.Corners() {
				if d := math.Abs(c.Dist(got.Centre()) - math.Abs(got.Radius())); d < 1e-6 {
					t.Errorf("the figure touches its line at %v", c)
				}
			}
		}
	}
}

func TestHatchCoversItsArea(t *testing.T) {
	ring := plane.Path{Closed: true, Segs: []plane.Segment{
		{A: plane.Point{X: 10, Y: 0}, B: plane.Point{X: -10, Y: 0}, Bulge: 1}, {A: plane.Point{X: -10, Y: 0}, B: plane.Point{X: 10, Y: 0}, Bulge: 1}}}
	hole := plane.Polyline([]plane.Point{{X: -3, Y: -3}, {X: 3, Y: -3}, {X: 3, Y: 3}, {X: -3, Y: 3}}, true)
	for _, turn := range []float64{0, 0.7, math.Pi / 2} {
		h := sheet.Hatch{Rings: []plane.Path{ring, hole}, Turn: turn, Pitch: 0.1}
		s := sheet.Sheet{Items: []sheet.Item{{Layer: sheet.LayerAround, Pen: sheet.PenHair, Shape: h}}}
		sum := 0.0
		for _, it := range s.Flat() {
			sum += it.Shape.(sheet.Path).Length() * 0.1
		}
		if want := math.Pi*100 - 36; math.Abs(sum-want) > 0.01*want {
			t.Errorf("turn %g: lines cover %g, the area is %g", turn, sum, want)
		}
	}
}
