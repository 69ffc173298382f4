package draft_test

import (
	"slices"
	"strings"
	"testing"

	"brimline/draft"
	"brimline/internal/simulate"
	"brimline/plane"
	"brimline/sheet"
	"brimline/unit"
)

// families are pools of every simulated family with 12, 28, 60 and 120 marks, in metres and in feet.
func families() []fixture {
	var out []fixture
	for i, s := range simulate.Shapes {
		for k, marks := range []int{12, 28, 60, 120} {
			u := []unit.Unit{unit.M, unit.FT}[(i+k)%2]
			out = append(out, made(uint64(10*i+k), s.Name(), marks, u))
		}
	}
	return out
}

// Nothing lies on anything else, however many marks there are; and every mark has its number on the
// plan or on a detail.
func TestManyMarks(t *testing.T) {
	list := append(families(), taped(t, 3, "freeform", 120, "m"), taped(t, 3, "L", 120, "ft"), taped(t, 5, "L", 120, "m"))
	details := 0
	for _, f := range list {
		for _, paper := range usual {
			t.Run(f.name+" on "+paper, func(t *testing.T) {
				sheets := draft.Plan(f.book, f.result, draft.Options{Paper: paper})
				for _, s := range sheets {
					clear(t, s)
					if strings.HasPrefix(s.Title, "Detail") {
						details++
					}
				}
				if lost := unnamed(f, sheets); len(lost) > 0 {
					t.Errorf("no drawing numbers %v", lost)
				}
			})
		}
	}
	if details == 0 {
		t.Error("no detail was drawn")
	}
}

// unnamed are the marks without a number on any drawing.
func unnamed(f fixture, sheets []sheet.Sheet) []string {
	said := map[string]bool{}
	for _, s := range sheets {
		for _, it := range s.Flat() {
			if text, ok := it.Shape.(sheet.Text); ok && it.Layer == sheet.LayerNumbers {
				said[text.S] = true
			}
		}
	}
	var out []string
	for _, m := range f.result.MarkOrder {
		if !said[m] {
			out = append(out, m)
		}
	}
	return out
}

// A detail is true to its scale, its frame on the plan holds what its window shows, and both carry
// its letter, which is no mark's name.
func TestDetails(t *testing.T) {
	f := taped(t, 3, "L", 120, "m")
	sheets := draft.Plan(f.book, f.result, draft.Options{Paper: "A4"})
	plan := sheets[0].Views[0]
	frames := boxes(sheets[0])
	var views []sheet.View
	for _, s := range sheets[1:] {
		windows := boxes(s)
		if len(windows) != len(s.Views) {
			t.Fatalf("%s: %d frames, %d views", s.Title, len(windows), len(s.Views))
		}
		for i, v := range s.Views {
			if v.Scale*1.5 > plan.Scale || !slices.Contains(sheet.Scales(false), v.Scale) {
				t.Errorf("%s at %s, the plan at %s", v.Name, v.Scale, plan.Scale)
			}
			low, high := plan.Point(v.Back(windows[i].Min)), plan.Point(v.Back(windows[i].Max))
			if !slices.ContainsFunc(frames, func(b plane.Box) bool { return b.Min.Dist(low) < 1e-6 && b.Max.Dist(high) < 1e-6 }) {
				t.Errorf("%s has no frame on the plan", v.Name)
			}
			letter := strings.TrimPrefix(v.Name, "detail ")
			if f.result.Marks[letter] != nil || !strings.Contains(words(sheets[0]), letter+"\n") || !strings.Contains(words(s), "Detail "+letter+"\n") {
				t.Errorf("the letter of %s", v.Name)
			}
			inWindow(t, s, v, windows[i], f)
		}
		views = append(views, s.Views...)
	}
	if len(views) < 2 || len(views) != len(frames) {
		t.Errorf("%d details, %d frames", len(views), len(frames))
	}
}

// inWindow holds each dot of a window to the place of a mark, and the edge to the window.
func inWindow(t *testing.T, s sheet.Sheet, v sheet.View, window plane.Box, f fixture) {
	t.Helper()
	inside := func(p plane.Point) bool {
		return p.X > window.Min.X-1e-6 && p.X < window.Max.X+1e-6 && p.Y > window.Min.Y-1e-6 && p.Y < window.Max.Y+1e-6
	}
	dots := 0
	for _, it := range s.Flat() {
		c, ok := it.Shape.(sheet.Circle)
		if !ok || it.Layer != sheet.LayerMarks || !inside(c.Centre) {
			continue
		}
		dots++
		at := v.Back(c.Centre)
		if !slices.ContainsFunc(f.result.MarkOrder, func(m string) bool {
			k := f.result.Marks[m]
			return k.X != nil && at.Dist(plane.Point{X: *k.X, Y: *k.Y}) < 0.02 // a joint lies where its runs meet, beside its mark
		}) {
			t.Errorf("%s: a dot at %v belongs to no mark", v.Name, at)
		}
	}
	if dots == 0 {
		t.Errorf("%s is empty", v.Name)
	}
}

// boxes are the frames of details on a sheet.
func boxes(s sheet.Sheet) []plane.Box {
	var out []plane.Box
	for _, it := range s.Items {
		if p, ok := it.Shape.(sheet.Path); ok && it.Layer == sheet.LayerDetails {
			out = append(out, p.Bounds())
		}
	}
	return out
}
