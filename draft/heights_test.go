package draft_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/draft"
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
	"brimline/unit"
)

// heightSheets are the sheets that levels and depths add to a plan.
func heightSheets(f fixture, paper string) []sheet.Sheet {
	o := draft.Options{Paper: paper, Heights: f.heights}
	return draft.Plan(f.book, f.result, o)
}

func titled(sheets []sheet.Sheet, title string) *sheet.Sheet {
	for i := range sheets {
		if strings.HasPrefix(sheets[i].Title, title) {
			return &sheets[i]
		}
	}
	return nil
}

// On every paper and in both units nothing overlaps, and the sheets say what they must.
func TestHeightSheets(t *testing.T) {
	for _, u := range []unit.Unit{unit.M, unit.FT, unit.MM} {
		f := deep(t, u)
		for _, size := range sheet.Sizes {
			sheets := heightSheets(f, size.Name)
			for _, s := range sheets {
				clear(t, s)
			}
			all := flowing(sheets)
			for _, w := range []string{
				"heights exaggerated 50 times", "Heights are counted upward from k1", "3 mm (common practice, no source)", "Beyond it: r13–r19–r1",
				"No statement about diving", "Nothing here advises to empty the pool", "The usual shortcut", "% of the variance", "Section A–A", "Section D–D",
				"heights the same", "floor", "wall", "steps", "water w1", "deepest", "seat", "Stage table", "Depths below w1", "Edge at r17", "liner track",
			} {
				if !strings.Contains(all, w) {
					t.Errorf("%s on %s: %q is not said", u, size.Name, w)
				}
			}
			if strings.Contains(all, "A cover is no floor") {
				t.Errorf("%s on %s: a caution about covers, of which none is ordered", u, size.Name)
			}
		}
	}
}

// Who orders something that lies over the water is told what it is not.
func TestCoverCaution(t *testing.T) {
	f := deep(t, unit.M)
	f.result.Orders = []survey.Order{{Name: "winter", Kind: "cover"}}
	if !strings.Contains(flowing(heightSheets(f, "A3")), "A cover is no floor") {
		t.Error("the caution is missing")
	}
}

// Each station stands where its length and fifty times its height put it.
func TestProfileIsTrue(t *testing.T) {
	f := deep(t, unit.M)
	s := titled(heightSheets(f, "A3"), "Levels")
	if s == nil {
		t.Fatal("no levels")
	}
	var dots []plane.Point
	for _, it := range s.Flat() {
		if c, ok := it.Shape.(sheet.Circle); ok && it.Layer == sheet.LayerMarks {
			dots = append(dots, c.Centre)
		}
	}
	stations := f.heights.Levels.Profiles[0].Stations
	if len(dots) != len(stations) {
		t.Fatalf("%d dots of %d stations", len(dots), len(stations))
	}
	k := sheet.Scale(100).PerMetre()
	for i, d := range dots[1:] {
		a, b := stations[0], stations[i+1]
		want := dots[0].Add(plane.Point{X: (b.Along - a.Along) * k, Y: (b.Off - a.Off) * k * 50})
		if d.Dist(want) > 1e-9 {
			t.Errorf("%s at %v, want %v", b.Mark, d, want)
		}
	}
}

// What is drawn wide in a section is the section, at the scale of its view.
func TestSectionsAreTrue(t *testing.T) {
	f := deep(t, unit.M)
	s := titled(heightSheets(f, "A3"), "Sections")
	if s == nil || len(s.Views) != 4 {
		t.Fatalf("sections %v", s)
	}
	var drawn []plane.Point
	for _, it := range s.Flat() {
		if p, ok := it.Shape.(sheet.Path); ok && it.Layer == sheet.LayerEdge {
			for _, seg := range p.Segs {
				drawn = append(drawn, seg.A, seg.B)
			}
		}
	}
	d := f.heights.Depths
	for i, cut := range append([]draft.Section{d.Long}, d.Across...) {
		for _, piece := range cut.Pieces {
			for _, q := range piece.Points {
				want := s.Views[i].Point(q)
				if !slices.ContainsFunc(drawn, func(p plane.Point) bool { return p.Dist(want) < 1e-9 }) {
					t.Errorf("section %s: nothing is drawn at %v", cut.Name, q)
				}
			}
		}
	}
}

// Contours are drawn whole but for the gaps of their figures, and each figure stands on its line.
func TestContoursCarryTheirDepth(t *testing.T) {
	f := deep(t, unit.M)
	s := titled(heightSheets(f, "A3"), "Depths and volume")
	if s == nil {
		t.Fatal("no depth plan")
	}
	d, v := f.heights.Depths, s.Views[0]
	drawn, whole, gaps := 0.0, 0.0, 0.0
	for _, it := range s.Flat() {
		switch x := it.Shape.(type) {
		case sheet.Path:
			if it.Layer == sheet.LayerUnder && it.Pen == sheet.PenHair {
				drawn += x.Length()
			}
		case sheet.Text:
			if it.Layer != sheet.LayerUnder {
				continue
			}
			gaps += sheet.Width(x.S, x.Height, false) + 1.6
			if !slices.ContainsFunc(d.Contours, func(l draft.Contour) bool {
				_, _, q := v.Path(plane.Polyline(l.Points, l.Closed)).Nearest(x.At)
				return q.Dist(x.At) < 1e-6 && math.Abs(l.Depth-contourDepth(t, x.S)) < 1e-9
			}) {
				t.Errorf("%q stands on no line of its depth", x.S)
			}
		}
	}
	for _, l := range d.Contours {
		whole += v.Path(plane.Polyline(l.Points, l.Closed)).Length()
	}
	if gaps == 0 || math.Abs(whole-drawn-gaps) > 1 {
		t.Errorf("contours are %.1f mm long, drawn %.1f, gaps %.1f", whole, drawn, gaps)
	}
}

func contourDepth(t *testing.T, s string) float64 {
	t.Helper()
	m, err := unit.ParseLength(s, unit.M)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// The causes of the volume's doubt come to its variance, and the bodies hold the volume.
func TestDepthsAreWhole(t *testing.T) {
	d := deep(t, unit.M).heights.Depths
	sum := 0.0
	for _, c := range d.Held.Causes {
		sum += c.Value
	}
	if math.Abs(sum-d.Held.VolumeSD*d.Held.VolumeSD) > 1e-9 {
		t.Errorf("causes come to %g, the variance is %g", sum, d.Held.VolumeSD*d.Held.VolumeSD)
	}
	volume := 0.0
	for _, b := range d.Bodies {
		if !slices.Contains([]string{"floor", "coves", "steps", "ledges"}, b.Name) {
			continue
		}
		for _, x := range b.Triangles {
			p, q, r := b.Points[x[0]], b.Points[x[1]], b.Points[x[2]]
			volume += q.Plan().Sub(p.Plan()).Cross(r.Plan().Sub(p.Plan())) / 2 * (d.Level - (p.Z+q.Z+r.Z)/3)
		}
	}
	if math.Abs(volume-d.Held.Volume) > 1e-6 {
		t.Errorf("the bodies hold %g, the water %g", volume, d.Held.Volume)
	}
}
