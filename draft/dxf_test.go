package draft_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/plane"
	readdxf "brimline/read/dxf"
	"brimline/sheet"
	"brimline/survey"
	"brimline/unit"
	"brimline/write/dxf"
)

// sketchPool is a measured pool with a check, a reading in doubt, a gap and a finding.
func sketchPool() (*fieldbook.Book, *survey.Result) {
	b, r := measured(rounded(1, 2.5, 9, 5, 1.2, 24, plane.Point{}, plane.Point{X: 7}), unit.M)
	r.Readings = append(r.Readings,
		survey.Reading{N: "91", Kind: "tie", Marks: []string{"r1", "r12"}, Value: 9.106, Adjusted: ref(9.104), Residual: ref(-0.002), State: "agrees", Check: true},
		survey.Reading{N: "92", Kind: "tie", Marks: []string{"A", "r5"}, Value: 6.1, State: "suspect",
			Likely: []survey.Likely{{Code: "metre", Cause: "one metre long", Value: ref(5.1), Probability: 0.93}}})
	r.Findings = []survey.Finding{{Code: "mirror", Severity: "ask", Text: "two places are open", Marks: []string{"r7"}, Cure: "say which"}}
	r.Lines["rim"].Gaps = []survey.Gap{{From: "r20", To: "r2"}}
	return b, r
}

func layerItems(m sheet.Model, l sheet.Layer) []sheet.Item {
	var out []sheet.Item
	for _, it := range m.Items {
		if it.Layer == l {
			out = append(out, it)
		}
	}
	return out
}

func wordsOn(m sheet.Model, l sheet.Layer) string {
	var out []string
	for _, it := range layerItems(m, l) {
		if t, ok := it.Shape.(sheet.Text); ok {
			out = append(out, t.S)
		}
	}
	return strings.Join(out, "\n")
}

// The outline is alone on its layer, closed, with the arcs and the area of the result, and so it comes
// back from the file, in both releases and units.
func TestOutlineIsTheResult(t *testing.T) {
	b, r := sketchPool()
	for _, u := range []sheet.ModelUnit{sheet.Millimetres, sheet.Inches} {
		for _, v := range []dxf.Version{dxf.R2000, dxf.R12} {
			m := draft.Outlines(b, r, draft.Options{}, u)
			if n := len(layerItems(m, "outline rim")); n != 1 {
				t.Fatalf("%d things on the outline's layer", n)
			}
			var out bytes.Buffer
			if err := dxf.Write(&out, dxf.File{Model: m, Version: v}); err != nil {
				t.Fatal(err)
			}
			got, err := readdxf.Outlines(out.Bytes())
			if err != nil {
				t.Fatal(err)
			}
			first := got[0]
			if !strings.EqualFold(strings.ReplaceAll(first.Layer, "_", " "), "outline rim") || !first.Path.Closed || len(first.Path.Segs) != 8 {
				t.Fatalf("first on %q: closed %v, %d segments", first.Layer, first.Path.Closed, len(first.Path.Segs))
			}
			if d := math.Abs(first.Path.Area() - *r.Lines["rim"].Area); d > 1e-9 {
				t.Errorf("area off by %g", d)
			}
			for i, w := range r.Lines["rim"].Vertices {
				s := first.Path.Segs[i]
				if s.A.Dist(plane.Point{X: w.X, Y: w.Y}) > 1e-9 || math.Abs(s.Bulge-w.Bulge) > 1e-12 {
					t.Errorf("vertex %d: %v, want %v", i, s, w)
				}
			}
		}
	}
}

func TestEveryThingOnItsLayer(t *testing.T) {
	b, r := sketchPool()
	m := draft.Outlines(b, r, draft.Options{}, sheet.Millimetres)
	listed := map[sheet.Layer]bool{}
	for _, l := range m.Layers {
		listed[l.Name] = true
		if l.Off != (l.Name == "readings") {
			t.Errorf("layer %q: off %v", l.Name, l.Off)
		}
	}
	for _, it := range m.Items {
		if !listed[it.Layer] {
			t.Fatalf("layer %q is not listed", it.Layer)
		}
	}
	spots := 0
	for _, l := range []sheet.Layer{"marks", "pegs"} {
		for _, it := range layerItems(m, l) {
			if _, ok := it.Shape.(sheet.Spot); ok {
				spots++
			}
		}
	}
	if spots != len(r.Marks) {
		t.Errorf("%d places of %d marks", spots, len(r.Marks))
	}
	for layer, want := range map[sheet.Layer]string{
		"mark names":        "r7",
		"dimensions":        "R 1.20",
		"check readings":    "91 check: read 9.106, computed 9.104, off 2 mm, agrees",
		"readings in doubt": "92 suspect: read 6.100, one metre long, 5.100 (93 %)",
		"findings":          "1 ask: Two places are open",
		"notes":             "Drawn 1:1 in millimetres",
	} {
		if got := wordsOn(m, layer); !strings.Contains(got, want) {
			t.Errorf("layer %q: %q does not say %q", layer, got, want)
		}
	}
	if len(layerItems(m, "readings")) == 0 {
		t.Error("no readings")
	}
}

// What nobody touched runs along the outline, from gap's end to gap's end, also over its start.
func TestInferredAlongOutline(t *testing.T) {
	b, r := sketchPool()
	m := draft.Outlines(b, r, draft.Options{}, sheet.Millimetres)
	edge := layerItems(m, "outline rim")[0].Shape.(sheet.Path).Path
	items := layerItems(m, "edge inferred")
	if len(items) != 1 {
		t.Fatalf("%d inferred pieces", len(items))
	}
	gap := items[0].Shape.(sheet.Path).Path
	for i, mark := range []string{"r20", "r2"} {
		p := plane.Point{X: *r.Marks[mark].X, Y: *r.Marks[mark].Y}
		end := gap.Segs[0].A
		if i == 1 {
			end = gap.Segs[len(gap.Segs)-1].B
		}
		if end.Dist(p) > 1e-9 {
			t.Errorf("%s at %v, the piece ends at %v", mark, p, end)
		}
	}
	for _, s := range gap.Segs {
		if _, _, q := edge.Nearest(s.At(0.5)); q.Dist(s.At(0.5)) > 1e-9 {
			t.Errorf("off the outline by %g", q.Dist(s.At(0.5)))
		}
	}
}

// Every fixture, and a book with nothing solved yet, makes a file.
func TestModelOfEveryFixture(t *testing.T) {
	empty := &survey.Result{Marks: map[string]*survey.Mark{}, Lines: map[string]*survey.Line{}}
	write := func(name string, m sheet.Model) {
		t.Helper()
		for _, v := range []dxf.Version{dxf.R2000, dxf.R12} {
			var out, again bytes.Buffer
			if err := dxf.Write(&out, dxf.File{Model: m, Version: v}); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			_ = dxf.Write(&again, dxf.File{Model: m, Version: v})
			if !bytes.Equal(out.Bytes(), again.Bytes()) {
				t.Errorf("%s: two runs differ", name)
			}
		}
	}
	write("nothing", draft.Outlines(&fieldbook.Book{Name: "empty.yaml"}, empty, draft.Options{}, sheet.Inches))
	for _, f := range fixtures() {
		write(f.name, draft.Outlines(f.book, f.result, draft.Options{}, sheet.Millimetres))
	}
}
