package draft_test

import (
	"math"
	"strings"
	"testing"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
	"brimline/unit"
)

// pathAt is a place on the segment of a line.
func pathAt(f fixture, seg int, share float64) plane.Point {
	v := f.result.Lines["rim"].Vertices
	w := v[(seg+1)%len(v)]
	return plane.Segment{A: plane.Point{X: v[seg].X, Y: v[seg].Y}, B: plane.Point{X: w.X, Y: w.Y}, Bulge: v[seg].Bulge}.At(share)
}

// shaped is a pool with a soft run, a corner that nobody reached, a derived tile line inside the rim and an open line beside it.
func shaped(u unit.Unit) fixture {
	f := makeOf("soft and derived", rounded(1, 2.5, 9, 5, 1.2, 24, plane.Point{}, plane.Point{X: 7}), u)
	rim := f.result.Lines["rim"]
	for i := range rim.Runs {
		if r := &rim.Runs[i]; r.Radius != nil {
			r.Sagitta, r.SagittaSD = ref(*r.Radius*(1-math.Sqrt2/2)), ref(0.004)
		}
	}
	at := pathAt(f, 3, 0.1)
	rim.Corners = []survey.Corner{{Name: "c1", X: at.X, Y: at.Y, SD: 0.01}}
	rim.Runs[4].Kind, rim.Runs[4].Joint, rim.Runs[5].Joint = "soft", "", ""
	in := rounded(1.12, 2.62, 8.76, 4.76, 1.08, 24).path
	tile := &survey.Line{Closed: true, Edge: "tile", Length: ref(in.Length()), LengthSD: ref(0.01), Area: ref(in.Area()), AreaSD: ref(0.05)}
	for _, s := range in.Segs {
		tile.Vertices = append(tile.Vertices, survey.Vertex{X: s.A.X, Y: s.A.Y, Bulge: s.Bulge})
	}
	f.result.Lines["tile"] = tile
	f.result.LineOrder = append(f.result.LineOrder, "tile")
	tile.From, tile.Inward = "rim", ref(0.12)
	f.book.Lines = []fieldbook.Line{{Name: "rim", Closed: true, Edge: "nose"}, {Name: "tile", From: "rim", Outward: -0.12, Edge: "tile"}}
	return f
}

// inferredAt is the length of the rim between two neighbouring marks on one arc.
func inferredAt(f fixture, a, b string) float64 {
	r := *f.result.Lines["rim"].Runs[3].Radius
	return 2 * r * math.Asin(between(f.result, a, b)/(2*r))
}

// lengths of the drawn paths in metres by pen.
func lengths(s sheet.Sheet, layers ...sheet.Layer) map[sheet.Pen]float64 {
	out := map[sheet.Pen]float64{}
	for _, it := range s.Flat() {
		p, ok := it.Shape.(sheet.Path)
		for _, l := range layers {
			if ok && it.Layer == l {
				out[it.Pen] += p.Length() / s.Views[0].Scale.PerMetre()
			}
		}
	}
	return out
}

// A soft edge has its own line and so has a derived line, which stands back; the key and a label say
// what they are.
func TestSoftAndDerived(t *testing.T) {
	for _, u := range []unit.Unit{unit.M, unit.FT} {
		f := shaped(u)
		for _, paper := range usual {
			sheets := draft.Plan(f.book, f.result, draft.Options{Paper: paper})
			for _, s := range sheets {
				clear(t, s)
			}
			got := lengths(sheets[0], sheet.LayerEdge, sheet.LayerAround)
			past := inferredAt(f, "r10", "r11")
			soft := f.result.Lines["rim"].Runs[4].Length
			for pen, want := range map[sheet.Pen]float64{sheet.PenSoft: soft, sheet.PenEdge: *f.result.Lines["rim"].Length - soft - past, sheet.PenThin: *f.result.Lines["tile"].Length} {
				if math.Abs(got[pen]-want) > 1e-6 {
					t.Errorf("%s: %g m with the pen %s, want %g", paper, got[pen], pen, want)
				}
			}
			if x := lengths(sheets[0], sheet.LayerInferred)[sheet.PenInferred]; math.Abs(x-past) > 1e-6 {
				t.Errorf("%s: %g m past the corner, want %g", paper, x, past)
			}
			all := flowing(sheets)
			step, rise := "120 mm", "rise 0.351"
			if u == unit.FT {
				step, rise = "4.72 in", "rise 1′ 1¹³⁄₁₆″"
			}
			for _, w := range []string{"tile: face of the tile, " + step + " inward of rim", "soft edge, that has no sharp line", "line derived from the edge by a stated step", "tile: length ",
				"corner that could not be reached", "c1", rise} {
				if !strings.Contains(all, w) {
					t.Errorf("%s: %q is not said", paper, w)
				}
			}
		}
	}
}

// In a file the soft stretch has a layer of its own, over the closed outline, and so has the tile line.
func TestSoftAndDerivedInModel(t *testing.T) {
	f := shaped(unit.M)
	m := draft.Outlines(f.book, f.result, draft.Options{}, sheet.Millimetres)
	items := layerItems(m, "edge soft")
	if len(items) != 1 || math.Abs(items[0].Shape.(sheet.Path).Length()-f.result.Lines["rim"].Runs[4].Length) > 1e-9 {
		t.Errorf("%d soft stretches", len(items))
	}
	tile := layerItems(m, "outline tile")
	if len(tile) != 1 || tile[0].Pen != sheet.PenThin || !tile[0].Shape.(sheet.Path).Closed {
		t.Error("the tile line")
	}
}

// Every mark has its name in a file, however many there are, and no two figures lie on each other.
func TestManyMarksInModel(t *testing.T) {
	for _, f := range []fixture{made(3, "freeform", 120, unit.M), made(4, "L", 120, unit.FT), made(5, "kidney", 60, unit.M)} {
		m := draft.Outlines(f.book, f.result, draft.Options{Paper: "A4"}, sheet.Millimetres)
		said := map[string]bool{}
		var rooms [][4]plane.Point
		var texts []string
		for _, it := range m.Items {
			text, ok := it.Shape.(sheet.Text)
			if !ok || it.Layer == "notes" || it.Layer == "findings" {
				continue
			}
			said[text.S] = true
			rooms, texts = append(rooms, text.Corners()), append(texts, text.S)
		}
		for i := range rooms {
			for k := range i {
				if !apart(rooms[i][:], rooms[k][:]) {
					t.Errorf("%s: %q lies on %q", f.name, texts[i], texts[k])
				}
			}
		}
		for _, n := range f.result.MarkOrder {
			if !said[n] {
				t.Errorf("%s: %s has no name", f.name, n)
			}
		}
	}
}
