package draft_test

import (
	"bytes"
	"math"
	"slices"
	"testing"

	"brimline/draft"
	"brimline/plane"
	"brimline/sheet"
	"brimline/unit"
	"brimline/write/dxf"
)

// The rim in space runs through every station at its height, lies over the flat outline, and the
// floor points stand at their depths below the water.
func TestModelHasTrueHeights(t *testing.T) {
	f := deep(t, unit.M)
	m := draft.Outlines(f.book, f.result, draft.Options{Heights: f.heights}, sheet.Millimetres)
	items := layerItems(m, "outline rim in space")
	if len(items) != 1 {
		t.Fatalf("%d rims in space", len(items))
	}
	rim := items[0].Shape.(sheet.Course)
	flat := layerItems(m, "outline rim")[0].Shape.(sheet.Path).Path
	for i, q := range rim.At {
		if _, _, p := flat.Nearest(q); p.Dist(q) > 1e-9 || math.Abs(rim.Z[i]) > 0.02 {
			t.Errorf("place %d at %v, %g lies off the outline", i, q, rim.Z[i])
		}
	}
	if ring := plane.Polyline(rim.At, true); math.Abs(ring.Length()-flat.Length()) > 0.005 {
		t.Errorf("the rim in space is %g long, the outline %g", ring.Length(), flat.Length())
	}
	for _, s := range f.heights.Levels.Profiles[0].Stations {
		p := plane.Point{X: *f.result.Marks[s.Mark].X, Y: *f.result.Marks[s.Mark].Y}
		i := slices.IndexFunc(rim.At, func(q plane.Point) bool { return q.Dist(p) < 1e-4 })
		if i < 0 || math.Abs(rim.Z[i]-s.Z) > 1e-9 {
			t.Errorf("%s is not on the rim in space at its height", s.Mark)
		}
	}
	d := f.heights.Depths
	points := layerItems(m, "floor points")
	if len(points) != len(d.Soundings) || len(layerItems(m, "floor breaks")) != 2 || len(layerItems(m, "steps and ledges")) != 3 {
		t.Errorf("%d floor points of %d", len(points), len(d.Soundings))
	}
	for i, it := range points {
		if s := it.Shape.(sheet.Spot); s.At != d.Soundings[i].At || math.Abs(s.Z-(d.Level-d.Soundings[i].Depth)) > 1e-12 {
			t.Errorf("floor point %d at %v", i, s)
		}
	}
	for _, it := range layerItems(m, "floor contours") {
		if c := it.Shape.(sheet.Course); len(c.Z) != len(c.At) || math.Abs(math.Remainder(d.Level-c.Z[0], d.Step)) > 1e-9 {
			t.Errorf("a contour at %g", c.Z[0])
		}
	}
	if words := len(layerItems(m, "floor depths")); words < len(d.Soundings) {
		t.Errorf("%d depths written", words)
	}
}

// Both releases take the model in space, twice the same.
func TestModelInSpaceIsWritten(t *testing.T) {
	for _, u := range []unit.Unit{unit.M, unit.FT} {
		f := deep(t, u)
		m := draft.Outlines(f.book, f.result, draft.Options{Heights: f.heights}, sheet.Inches)
		for _, v := range []dxf.Version{dxf.R2000, dxf.R12} {
			var first, second bytes.Buffer
			if err := dxf.Write(&first, dxf.File{Model: m, Version: v}); err != nil {
				t.Fatal(err)
			}
			if err := dxf.Write(&second, dxf.File{Model: m, Version: v}); err != nil || !bytes.Equal(first.Bytes(), second.Bytes()) {
				t.Errorf("two runs differ, %v", err)
			}
		}
	}
}
