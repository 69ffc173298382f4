package draft_test

import (
	"strings"
	"testing"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/sheet"
	"brimline/survey"
)

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

func flowing(sheets []sheet.Sheet) string { return strings.ReplaceAll(allWords(sheets), "\n", " ") }

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
	for _, w := range []string{"The readings leave open on which side r4 lies. Tape r4 to r16.", "Not fixed yet: d9.", "for 62 unknowns: 9 are over and check the rest.",
		"chi-square 9.7, 95 % limits 2.7 and 19.0", "Least certain mark: r11", "An error of up to 37 mm could hide in reading 1 (tie A–r1).", "is 26 mm, at r7.",
		"A mistake would not show at r1, r6, r11, r16 and r21.", "Struck in the book: reading 3.", "Reading 3 struck: wrong peg.", "Nobody touched 1.400 m of rim",
		"Left and right are said standing at the shallow end (r17) and facing the deep end (r7).", "The marks of rim (nose of the coping) run counter-clockwise from r1.", "another place that the readings allow", "lasting mark"} {
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

func TestNothingProves(t *testing.T) {
	f := fixtures()[1]
	f.result.Statistics = survey.Statistics{Readings: 121, Unknowns: 121}
	if all := flowing(draft.Plan(f.book, f.result, options())); !strings.Contains(all, "no reading checks another. The shape closes but nothing proves it.") {
		t.Error("the statement does not say that nothing proves the shape")
	}
}

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
			if x == d {
				t.Errorf("%s and %s have one shape", state, other)
			}
		}
		if len(shapes) == 0 {
			t.Errorf("%s has no shape", state)
		}
		seen[state] = d
	}
}

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
