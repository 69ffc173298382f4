package draft_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"brimline/draft"
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// usual are the papers that most people print on.
var usual = []string{"A4", "A3", "ANSI B"}

// ends says that a path is the straight between two marks of the first view.
func ends(s sheet.Sheet, p sheet.Path, f fixture, a, b string) bool {
	at := func(m string) plane.Point {
		return s.Views[0].Point(plane.Point{X: *f.result.Marks[m].X, Y: *f.result.Marks[m].Y})
	}
	return len(p.Segs) == 1 && p.Segs[0].A.Dist(at(a)) < 1e-9 && p.Segs[0].B.Dist(at(b)) < 1e-9
}

// drawn are the lines of readings between two marks on a sheet.
func drawn(s sheet.Sheet, f fixture, a, b string) []sheet.Item {
	var out []sheet.Item
	for _, it := range s.Flat() {
		if p, ok := it.Shape.(sheet.Path); ok && it.Layer == sheet.LayerReadings && ends(s, p, f, a, b) {
			out = append(out, it)
		}
	}
	return out
}

// What stands out is drawn with its word, whatever the paper; what is struck is not drawn.
func TestOddReadingsAreMarked(t *testing.T) {
	for _, f := range trusted() {
		for _, paper := range usual {
			s := draft.Plan(f.book, f.result, draft.Options{Paper: paper})[0]
			text := words(s)
			for _, r := range f.result.Readings {
				odd := slices.Contains([]string{"suspect", "doubtful", "agrees", "disagrees"}, r.State)
				if odd != (strings.Contains(text, r.N+" "+r.State+"\n") || strings.Contains(text, r.N+" "+r.State+", off ")) {
					t.Errorf("%s on %s: reading %s is %s", f.name, paper, r.N, r.State)
				}
				if r.Kind != "tie" {
					continue
				}
				want := 0
				if odd {
					want = 1
				}
				lines := drawn(s, f, r.Marks[0], r.Marks[1])
				if len(lines) != want {
					t.Errorf("%s on %s: reading %s (%s) is drawn %d times", f.name, paper, r.N, r.State, len(lines))
				} else if odd && (lines[0].Pen == sheet.PenUnder) != (r.State != "agrees") {
					t.Errorf("%s: reading %s (%s) has the pen %s", f.name, r.N, r.State, lines[0].Pen)
				}
			}
		}
	}
}

// Each state can be told without colour: by its word and by its shape.
func TestStatesWithoutColour(t *testing.T) {
	f := trusted()[0]
	shapes := map[string]string{}
	for _, state := range []string{"suspect", "doubtful", "agrees"} {
		r := *f.result
		r.Readings = slices.Clone(r.Readings)
		for i := range r.Readings {
			if r.Readings[i].State != "struck" {
				r.Readings[i].State = "good"
			}
		}
		r.Readings[8].State = state
		s := draft.Plan(f.book, &r, options())[0]
		var marks []sheet.Item
		for _, it := range s.Flat() {
			if it.Layer == sheet.LayerWords && (it.Ink == sheet.Wrong || it.Ink == sheet.Open || it.Ink == sheet.Good) {
				it.Ink, it.Fill = sheet.Black, nil
				marks = append(marks, it)
			}
		}
		shapes[state] = sheet.Sheet{Items: marks}.Dump()
	}
	if shapes["suspect"] == shapes["doubtful"] || shapes["doubtful"] == shapes["agrees"] || shapes["suspect"] == shapes["agrees"] {
		t.Error("two states look alike without colour")
	}
}

// The proposal is one wide dashed line between the symbols of its marks, with its length.
func TestNextIsDrawn(t *testing.T) {
	for _, f := range trusted() {
		for _, paper := range usual {
			s := draft.Plan(f.book, f.result, draft.Options{Paper: paper})[0]
			n := f.result.Next[0]
			lines := 0
			for _, it := range s.Flat() {
				p, ok := it.Shape.(sheet.Path)
				if !ok || it.Layer != sheet.LayerNext {
					continue
				}
				lines++
				for i, q := range []plane.Point{p.Segs[0].A, p.Segs[0].B} {
					m := f.result.Marks[n.Marks[i]]
					if d := s.Views[0].Point(plane.Point{X: *m.X, Y: *m.Y}).Dist(q); d > 3 || it.Pen != sheet.PenNext || it.Ink != sheet.Black {
						t.Errorf("%s on %s: %.1f mm from %s, pen %s", f.name, paper, d, n.Marks[i], it.Pen)
					}
				}
			}
			if want := "next: A–" + n.Marks[1] + " about "; lines != 1 || !strings.Contains(words(s), want) {
				t.Errorf("%s on %s: %d lines; %q in words: %v", f.name, paper, lines, want, strings.Contains(words(s), want))
			}
		}
	}
}

// No line of a dimension crosses the baseline, where it would seem to belong to it.
func TestDimensionsKeepOffTheBaseline(t *testing.T) {
	seen := 0
	defer func() {
		if seen == 0 {
			t.Error("no dimension was drawn")
		}
	}()
	for _, f := range slices.Concat(fixtures(), trusted(), solved(t)) {
		for _, paper := range usual {
			s := draft.Plan(f.book, f.result, draft.Options{Paper: paper})[0]
			var axes, dims []plane.Segment
			for _, it := range s.Items {
				p, ok := it.Shape.(sheet.Path)
				if ok && it.Layer == sheet.LayerAxes && it.Pen == sheet.PenAxis {
					axes = append(axes, p.Segs...)
				}
				if d, ok := it.Shape.(sheet.Dimension); ok && d.Kind != sheet.DimRadius {
					for _, l := range (sheet.Sheet{Items: []sheet.Item{it}}).Flat() {
						if p, ok := l.Shape.(sheet.Path); ok {
							dims = append(dims, p.Segs...)
						}
					}
				}
			}
			if len(axes) != 1 {
				t.Errorf("%s on %s: %d baselines", f.name, paper, len(axes))
			}
			seen += len(dims)
			for _, a := range axes {
				for _, d := range dims {
					if x := a.Meet(d); len(x) > 0 {
						t.Errorf("%s on %s: a dimension crosses the baseline at %v", f.name, paper, x)
					}
				}
			}
		}
	}
}

// A plan crowded with doubtful readings still has each in its table and says how many stand there only.
func TestManyDoubtful(t *testing.T) {
	f := trusted()[1]
	group := 2
	for i := 40; i < 80; i++ {
		f.result.Readings[i].State, f.result.Readings[i].Group = "doubtful", &group
	}
	sheets := draft.Plan(f.book, f.result, draft.Options{Paper: "A4"})
	for _, s := range sheets {
		clear(t, s)
	}
	first, all := words(sheets[0]), flowing(sheets)
	for i := 40; i < 80; i++ {
		n := f.result.Readings[i].N
		if !strings.Contains(first, n+" doubtful\n") && !strings.Contains(all, "Figures that found no room on the plan stand in the ") {
			t.Fatalf("reading %s is neither on the plan nor said to be left off it", n)
		}
	}
	if got := strings.Count(allWords(sheets), "doubtful (2)\n"); got != 40 {
		t.Errorf("%d rows of the group in the table", got)
	}
}

// A proposal that is no straight between two placed marks is said and not drawn.
func TestNextWithoutALine(t *testing.T) {
	for i, n := range []survey.Next{
		{Kind: "tie", Marks: []string{"A", "d9"}, Text: "tape A to d9"},
		{Kind: "level", Marks: []string{"r1"}, Text: "level r1"},
	} {
		f := fixtures()[0]
		f.result.Next = []survey.Next{n}
		s := draft.Plan(f.book, f.result, options())[0]
		for _, it := range s.Items {
			if it.Layer == sheet.LayerNext {
				t.Errorf("%d: drawn", i)
			}
		}
		if want := fmt.Sprintf("Next: %s.", n.Text); !strings.Contains(strings.ReplaceAll(words(s), "\n", " "), want) {
			t.Errorf("%q is not said", want)
		}
	}
}
