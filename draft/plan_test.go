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
	"brimline/fieldbook"
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
	"brimline/unit"
)

var update = flag.Bool("update", false, "write the golden files anew")

func options() draft.Options {
	return draft.Options{Date: time.Date(2026, 5, 20, 0, 0, 0, 0, time.UTC), Version: "0.1.0", Revision: "A"}
}

func words(s sheet.Sheet) string {
	var b strings.Builder
	for _, p := range patches(s) {
		b.WriteString(p.text + "\n")
	}
	return b.String()
}

func allWords(sheets []sheet.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		b.WriteString(words(s))
	}
	return b.String()
}

// flowing is the words of all sheets with line ends as spaces, for sentences.
func flowing(sheets []sheet.Sheet) string { return strings.ReplaceAll(allWords(sheets), "\n", " ") }

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
func TestChainAddsUp(t *testing.T) {
	f := fixtures()[0]
	text := allWords(draft.Plan(f.book, f.result, options()))
	total := regexp.MustCompile(`length (\d+\.\d{3}) m`).FindStringSubmatch(text)
	want, err := strconv.ParseFloat(total[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		if (l == "straight" || l == "arc") && lines[i-1] == "rim" {
			x, err := strconv.ParseFloat(lines[i+3], 64)
			if err != nil {
				t.Fatal(err)
			}
			sum += x
		}
	}
	if math.Abs(sum-want) > 1e-9 {
		t.Errorf("runs add up to %.3f, the outline is %.3f", sum, want)
	}
}

func TestWhatIsSaid(t *testing.T) {
	f := fixtures()[0]
	sheets := draft.Plan(f.book, f.result, options())
	first, all := words(sheets[0]), flowing(sheets)
	for _, w := range []string{"unproven", "all dimensions in metres", "Larch Court", "26-114", "crew 2", "2026-05-14", "2026-05-20", "1:50", "1 of 3", "N",
		"shallow end", "deep end", "house", "rim: nose of the coping", "R 1.20", "176.8°", "viewed from above"} {
		if !strings.Contains(first, w) {
			t.Errorf("the first sheet lacks %q", w)
		}
	}
	for _, w := range []string{"The readings leave open on which side r4 lies. Tape r4 to r16.", "Not fixed yet: d9.", "for 49 unknowns: 9 are over and check the rest.",
		"chi-square 9.7, 95 % limits 2.7 and 19.0", "Least certain mark: r11", "An error of up to 37 mm could hide in reading 1 (tie A–r1).", "is 26 mm, at r7.",
		"A mistake would not show at r1, r6, r11, r16 and r21.", "Struck in the book: 3.", "Reading 3 struck: wrong peg.", "Nobody touched 1.400 m of rim",
		"Left and right are said standing at the shallow end (r17) and facing the deep end (r7).", "run counter-clockwise from r1", "another place that the readings allow", "lasting mark"} {
		if !strings.Contains(all, w) {
			t.Errorf("nowhere is said %q", w)
		}
	}
	if strings.Contains(all, "not on the plan") {
		t.Error("a mere note stands among the questions")
	}
	for _, w := range []string{"safe", "compliant", "certified"} {
		if strings.Contains(strings.ToLower(all), w) {
			t.Errorf("the drawing says %q", w)
		}
	}
}

func TestFeetAndMillimetres(t *testing.T) {
	f := fixtures()[1]
	all := allWords(draft.Plan(f.book, f.result, options()))
	for _, w := range []string{"all dimensions in feet and inches", "1:48", "R 3′ 11¹⁄₄″", "ft in", " ft²"} {
		if !strings.Contains(all, w) {
			t.Errorf("%s: %q is missing", f.name, w)
		}
	}
	f = fixtures()[3]
	all = allWords(draft.Plan(f.book, f.result, options()))
	for _, w := range []string{"all dimensions in millimetres", "R 150", "8700"} {
		if !strings.Contains(all, w) {
			t.Errorf("%s: %q is missing", f.name, w)
		}
	}
}

// Every reading, mark and run stands in a table exactly once, and every piece has its header.
func TestTablesAreWhole(t *testing.T) {
	for _, f := range fixtures() {
		for _, paper := range []string{"A3", "A4", "ANSI B"} {
			o := options()
			o.Paper = paper
			rows := map[string]int{}
			for _, s := range draft.Plan(f.book, f.result, o)[1:] {
				for _, it := range s.Items {
					if table, ok := it.Shape.(sheet.Table); ok {
						kind := table.Columns[0].Title[0]
						rows[kind] += len(table.Rows)
						if len(table.Rows) == 0 {
							t.Errorf("%s on %s: a table without rows", f.name, paper)
						}
					}
				}
			}
			placed := 0
			for _, m := range f.result.Marks {
				if m.X != nil {
					placed++
				}
			}
			if rows["no."] != len(f.result.Readings) || rows["mark"] != placed || rows["line"] != len(f.result.Lines["rim"].Runs) {
				t.Errorf("%s on %s: %v rows", f.name, paper, rows)
			}
		}
	}
}

// No reading is over: the statement says so.
func TestNothingProves(t *testing.T) {
	f := fixtures()[1]
	f.result.Statistics = survey.Statistics{Readings: 121, Unknowns: 121}
	if all := flowing(draft.Plan(f.book, f.result, options())); !strings.Contains(all, "no reading checks another. The shape closes but nothing proves it.") {
		t.Error("the statement does not say that nothing proves the shape")
	}
}

// Each state of the shape has its word and its shape.
func TestVerdicts(t *testing.T) {
	f := fixtures()[0]
	seen := map[string]string{}
	for _, state := range []string{"ready", "unproven", "unfit"} {
		f.result.Shape.State = state
		s := draft.Plan(f.book, f.result, options())[0]
		if !strings.Contains(words(s), state+"\n") {
			t.Errorf("%s is not written", state)
		}
		var shapes []sheet.Item
		for _, it := range s.Flat() {
			if it.Ink == sheet.Good || it.Ink == sheet.Open || it.Ink == sheet.Wrong {
				it.Ink, it.Fill = sheet.Black, nil // the colour set aside
				shapes = append(shapes, it)
			}
		}
		d := sheet.Sheet{Items: shapes}.Dump()
		for other, x := range seen {
			if x == d && state != "ready" {
				t.Errorf("%s and %s have one shape", state, other)
			}
		}
		if len(shapes) == 0 {
			t.Errorf("%s has no shape", state)
		}
		seen[state] = d
	}
}

// An almost empty book gives a sheet that says what is missing.
func TestAlmostEmpty(t *testing.T) {
	b := &fieldbook.Book{}
	for name, r := range map[string]*survey.Result{
		"nothing": {},
		"one tie": {Marks: map[string]*survey.Mark{"A": {X: ref(0), Y: ref(0), Kind: "peg"}, "B": {X: ref(5.2), Y: ref(0), Kind: "peg"}}},
		"one mark": {Marks: map[string]*survey.Mark{"A": {X: ref(3), Y: ref(4), Kind: "peg"}, "r1": {}},
			Lines: map[string]*survey.Line{"rim": {Closed: true, Waits: []string{"r1"}}}},
		"one point twice": {Marks: map[string]*survey.Mark{"A": {X: ref(3), Y: ref(4), Kind: "peg"}, "B": {X: ref(3), Y: ref(4), Kind: "peg"}}},
	} {
		for _, size := range sheet.Sizes {
			sheets := draft.Plan(b, r, draft.Options{Paper: size.Name})
			if len(sheets) == 0 {
				t.Fatalf("%s: no sheet", name)
			}
			for _, s := range sheets {
				clear(t, s)
			}
			if name == "nothing" && !strings.Contains(words(sheets[0]), "No mark has a place yet") {
				t.Error("an empty sheet says nothing")
			}
			if name == "one mark" && !strings.Contains(flowing(sheets), "Not fixed yet: r1.") {
				t.Error("the mark without a place is not named")
			}
		}
	}
}

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
