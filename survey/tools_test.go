package survey_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/survey"
)

// reeled is the court with its ties to r4, r5 and r6 taped by a reel that reads scale·true + zero.
func reeled(scale, zero float64, words string) string {
	all := crossed(taped("A", "B", "C"))
	for i := range all {
		if slices.Contains([]string{"r4", "r5", "r6"}, all[i].b) {
			all[i].tool, all[i].is = "reel", scale*all[i].is+zero
		}
	}
	return strings.Replace(written(all, courtRim), "reel: {sigma: 4 mm", "reel: {sigma: 4 mm"+words, 1)
}

// A tool's zero and scale are found where they are asked for, within what their sd promises.
func TestSolvedTools(t *testing.T) {
	for _, c := range []struct {
		words       string
		scale, zero float64
	}{{", zero: solve", 1, 0.1}, {", scale: solve", 1.006, 0}, {"", 1, 0}} {
		r := run(t, reeled(c.scale, c.zero, c.words))
		tool := r.Tools["reel"]
		if (tool.SD == nil) != (c.words == "") {
			t.Fatalf("%q: %+v", c.words, tool)
		}
		sd := 0.0
		if tool.SD != nil {
			sd = *tool.SD
		}
		near(t, c.words+" zero", tool.Zero, c.zero, 3*sd)
		near(t, c.words+" scale", tool.Scale, c.scale, 3*sd)
		if sd > 0.005 || len(r.Mistakes) > 0 || found(r, "tool-held") != nil {
			t.Errorf("%q: sd %g, mistakes %+v, found %s", c.words, sd, r.Mistakes, codes(r))
		}
		unmoved(t, r, 0.010)
		if x := r.Tools["tape"]; x.Zero != 0 || x.Scale != 1 || x.SD != nil {
			t.Errorf("tape %+v", x)
		}
		if c.words != "" {
			plain := run(t, reeled(1, 0, ""))
			if got, want := r.Statistics.Unknowns, plain.Statistics.Unknowns+1; got != want {
				t.Errorf("%q: %d unknowns, want %d", c.words, got, want)
			}
		}
	}
}

// A given zero and scale are taken off what was read.
func TestGivenTools(t *testing.T) {
	r := run(t, reeled(1.002, 0.05, ", zero: 50 mm, scale: 1.002"))
	if x := r.Tools["reel"]; x.Zero != 0.05 || x.Scale != 1.002 || x.SD != nil {
		t.Errorf("reel %+v", x)
	}
	unmoved(t, r, 0.010)
	for _, x := range r.Readings { // an instrument's length is scale × true + zero
		if x.Tool == "reel" {
			d := place(t, r, x.Marks[0]).Dist(place(t, r, x.Marks[1]))
			near(t, "adjusted "+x.N, *x.Adjusted, 1.002*d+0.05, 1e-9)
		}
	}
}

// Where the readings cannot tell it from the shape it is held at no error, with a finding.
func TestHeldTool(t *testing.T) {
	book := written(taped("A", "B"), courtRim)
	held := run(t, strings.Replace(book, "tape: {sigma: 4 mm}", "tape: {sigma: 4 mm, scale: solve}", 1))
	if f := found(held, "tool-held"); f == nil || !strings.Contains(f.Text, "tape") {
		t.Fatalf("found %s", codes(held))
	}
	if x := held.Tools["tape"]; x.Scale != 1 || x.SD != nil {
		t.Errorf("tape %+v", x)
	}
	plain := run(t, book)
	for m, p := range plain.Marks { // order-free: each mark is compared alone
		q := held.Marks[m]
		near(t, m, math.Hypot(*p.X-*q.X, *p.Y-*q.Y), 0, 1e-9)
	}
}

// A peg that was moved is another point afterwards: B (2), with a place of its own.
func TestMovedPeg(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	b := court["B"]
	b.X, b.Y = b.X+0.15, b.Y+0.08
	first := at(t, all, "A", "r4")
	for i := first; i < len(all); i++ {
		if all[i].a == "B" {
			all[i].is += b.Dist(court[all[i].b]) - court["B"].Dist(court[all[i].b])
		}
	}
	src := written(all, courtRim)
	mark := all[first].String()
	r := run(t, strings.Replace(src, mark, "- {moved: B, why: dog line}\n"+mark, 1))
	if len(r.Mistakes) > 0 || len(states(r, "suspect")) > 0 {
		t.Fatalf("mistakes %+v", r.Mistakes)
	}
	near(t, "B (2)", place(t, r, "B (2)").Dist(b), 0, 0.010)
	unmoved(t, r, 0.010)
	for _, x := range r.Readings {
		if slices.Contains(x.Marks, "B (2)") != (x.Marks[0] != "A" && strings.HasPrefix(x.Marks[0], "B") && x.Marks[1] >= "r4") {
			t.Errorf("reading %s: %v", x.N, x.Marks)
		}
	}
	if m := r.Marks["B (2)"]; m.Kind != "peg" || m.Ellipse95 == nil {
		t.Errorf("B (2) %+v", m)
	}
	checkMoved(t, r, src)
}

// checkMoved wants the moved book to read as many values as the other, with two unknowns more.
func checkMoved(t *testing.T, r *survey.Result, src string) {
	t.Helper()
	plain := run(t, src)
	n := 0
	for _, m := range plain.Mistakes {
		if m.Code == "peg-moved" {
			n++
		}
	}
	if n != 1 {
		t.Errorf("without the word the move is not named: %+v", plain.Mistakes)
	}
	if got, want := r.Statistics.Unknowns, 2*len(r.Marks)-3; got != want {
		t.Errorf("%d unknowns, want %d", got, want)
	}
}
