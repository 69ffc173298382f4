package draft_test

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"brimline/draft"
	"brimline/plane"
	"brimline/sheet"
	"brimline/unit"
)

var update = flag.Bool("update", false, "write the golden files anew")

func options() draft.Options {
	return draft.Options{Date: time.Date(2026, 5, 20, 0, 0, 0, 0, time.UTC), Version: "0.1.0", Revision: "A"}
}

// flowing is the words of all sheets with line ends as spaces, for sentences.
func TestGolden(t *testing.T) {
	for _, f := range fixtures()[:2] {
		var b strings.Builder
		for _, s := range draft.Plan(f.book, f.result, options()) {
			b.WriteString(s.Dump())
		}
		file := filepath.Join("testdata", strings.ReplaceAll(f.name, " ", "-")+".txt")
		if *update {
			if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got := b.String(); got != string(want) {
			t.Errorf("%s has changed: %s (go test ./draft -update writes it anew)", file, firstDifference(got, string(want)))
		}
	}
}

func firstDifference(got, want string) string {
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			return "line " + strconv.Itoa(i+1) + ": " + g[i]
		}
	}
	return "lines are missing at the end"
}

// The drawing does not depend on the order in which maps are walked or on a second run.
func TestSameSheetsTwice(t *testing.T) {
	for _, f := range fixtures() {
		f.result.MarkOrder, f.result.LineOrder = nil, nil
		var first string
		for i := 0; i < 3; i++ {
			var b strings.Builder
			for _, s := range draft.Plan(f.book, f.result, options()) {
				b.WriteString(s.Dump())
			}
			if i == 0 {
				first = b.String()
			} else if b.String() != first {
				t.Errorf("%s: run %d differs: %s", f.name, i+1, firstDifference(b.String(), first))
			}
		}
	}
}

// Marks stand on paper where the view puts them, at a preferred scale.
func TestTrueToScale(t *testing.T) {
	for _, f := range fixtures() {
		s := draft.Plan(f.book, f.result, options())[0]
		v := s.Views[0]
		if !slices.Contains(sheet.Scales(f.book.Units.Length == unit.FT), v.Scale) {
			t.Errorf("%s: scale %s is not a preferred one", f.name, v.Scale)
		}
		var dots []plane.Point
		for _, it := range s.Flat() {
			if c, ok := it.Shape.(sheet.Circle); ok && (it.Layer == sheet.LayerMarks || it.Layer == sheet.LayerPegs) {
				dots = append(dots, v.Back(c.Centre))
			}
		}
		for name, m := range f.result.Marks {
			if m.X == nil || m.Kind == "benchmark" {
				continue
			}
			at := plane.Point{X: *m.X, Y: *m.Y}
			if !slices.ContainsFunc(dots, func(d plane.Point) bool { return d.Dist(at) < 1e-9 }) {
				t.Errorf("%s: nothing is drawn at %s", f.name, name)
			}
		}
	}
}

// The edge is drawn whole: wide where it was touched, dashed along the gaps.
func TestEdgeAndGaps(t *testing.T) {
	f := fixtures()[0]
	s := draft.Plan(f.book, f.result, options())[0]
	k := s.Views[0].Scale.PerMetre()
	length := map[sheet.Layer]float64{}
	for _, it := range s.Flat() {
		if p, ok := it.Shape.(sheet.Path); ok && (it.Layer == sheet.LayerEdge || it.Layer == sheet.LayerInferred) {
			length[it.Layer] += p.Length() / k
			if want := map[sheet.Layer]sheet.Pen{sheet.LayerEdge: sheet.PenEdge, sheet.LayerInferred: sheet.PenInferred}[it.Layer]; it.Pen != want {
				t.Errorf("%s is drawn with %s", it.Layer, it.Pen)
			}
		}
	}
	at := func(m string) plane.Point { return plane.Point{X: *f.result.Marks[m].X, Y: *f.result.Marks[m].Y} }
	// r13 to r14 is part of a straight; r23 to r1 part of the last arc, of which it leaves the first third.
	want := at("r13").Dist(at("r14")) + *f.result.Lines["rim"].Runs[7].Radius*math.Pi/2*2/3
	if math.Abs(length[sheet.LayerInferred]-want) > 1e-6 {
		t.Errorf("inferred %g m, want %g", length[sheet.LayerInferred], want)
	}
	if total := length[sheet.LayerEdge] + length[sheet.LayerInferred]; math.Abs(total-*f.result.Lines["rim"].Length) > 1e-6 {
		t.Errorf("the edge is %g m long in the drawing, %g in the result", total, *f.result.Lines["rim"].Length)
	}
}

// The printed lengths of the runs add up to the printed length of the outline.
// Every reading, mark and run stands in a table exactly once, and every piece has its header.
// No reading is over: the statement says so.
// Each state of the shape has its word and its shape.
// An almost empty book gives a sheet that says what is missing.
// Ellipses are drawn as many times larger as the sheet says.
func TestExaggeration(t *testing.T) {
	f := fixtures()[0]
	for _, asked := range []float64{0, 25} {
		o := options()
		o.Exaggeration = asked
		s := draft.Plan(f.book, f.result, o)[0]
		said := regexp.MustCompile(`drawn[ \n]+(\d+)[ \n]+times`).FindStringSubmatch(words(s))
		if said == nil {
			t.Fatal("the exaggeration is not said")
		}
		factor, err := strconv.ParseFloat(said[1], 64)
		if err != nil || asked > 0 && factor != asked {
			t.Fatalf("asked for %g, said %q", asked, said[1])
		}
		n := 0
		for _, it := range s.Flat() {
			e, ok := it.Shape.(sheet.Ellipse)
			if !ok || it.Layer != sheet.LayerEllipses {
				continue
			}
			n++
			real := e.A / factor / s.Views[0].Scale.PerMetre()
			if !slices.ContainsFunc(f.result.MarkOrder, func(m string) bool {
				k := f.result.Marks[m]
				return k.Ellipse95 != nil && math.Abs(k.Ellipse95.Major-real) < 1e-9 && s.Views[0].Back(e.Centre).Dist(plane.Point{X: *k.X, Y: *k.Y}) < 1e-9 &&
					math.Abs(math.Remainder(math.Pi/2-e.Turn-k.Ellipse95.Bearing*math.Pi/180, math.Pi)) < 1e-9
			}) {
				t.Errorf("an ellipse of %g m at %v belongs to no mark", real, e.Centre)
			}
		}
		if n < 24 {
			t.Errorf("%d ellipses", n)
		}
	}
}
