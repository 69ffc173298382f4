package survey_test

import (
	"math"
	"strings"
	"testing"
)

// Marks exactly in line leave an arc no radius and no centre; the result is still printed.
func TestArcThroughMarksInLine(t *testing.T) {
	book := func(a, b, c string) string {
		return "brimline: 1\nreadings:\n- {tie: A B, is: 9}\n" +
			"- {offset: r1, line: A B, at: " + a + ", left: 1.15}\n- {offset: r2, line: A B, at: " + b + ", left: 1.15}\n- {offset: r3, line: A B, at: " + c + ", left: 1.15}\n" +
			"lines:\n  edge: {runs: [{arc: [r1, r2, r3]}]}\n"
	}
	r := run(t, book("1", "2", "4"))
	if found(r, "arc-flat") == nil || !strings.Contains(bytesOf(t, r), `"edge"`) {
		t.Errorf("in line: found %s", codes(r))
	}
	r = run(t, book("1", "4", "2"))
	if l := r.Lines["edge"].Length; found(r, "arc-order") == nil || l == nil || *l > 10 {
		t.Errorf("out of order: found %s, length %v", codes(r), l)
	}
}

// Three wanted places that are not in line say on which hand the figure lies.
func TestWantedPlacesSettleTheHand(t *testing.T) {
	r := run(t, "brimline: 1\nmarks: {A: {at: [0, 0]}, B: {at: [5, 0]}, r1: {at: [1, -3]}}\nreadings:\n"+
		"- {tie: A B, is: 5}\n- {tie: A r1, is: 3.162}\n- {tie: B r1, is: 5}\n")
	if y := r.Marks["r1"].Y; y == nil || math.Abs(*y+3) > 0.01 || found(r, "datum-misfit") != nil {
		t.Errorf("r1 at y %v, found %s", y, codes(r))
	}
}

// The direction of a loose mark is that of its ellipse, in degrees of the book's frame.
func TestLooseDirectionIsTheEllipse(t *testing.T) {
	r := run(t, "brimline: 1\nmarks: {A: {at: [0, 0]}, B: {at: [0, 9]}}\nreadings:\n"+
		"- {tie: A B, is: 9}\n- {tie: A r1, is: 4.0005, sigma: 10 mm}\n- {tie: B r1, is: 5.0005, sigma: 10 mm}\n")
	f := found(r, "loose")
	if f == nil {
		t.Fatalf("found %s", codes(r))
	}
	e := r.Marks["r1"].Ellipse95
	if d := math.Abs(math.Remainder(f.Figures["bearing"]-e.Bearing, 180)); d > 0.1 {
		t.Errorf("bearing %g, ellipse %g", f.Figures["bearing"], e.Bearing)
	}
}

// A struck reading of two values shows what it had when it stood.
func TestStruckPartsArePutBackTogether(t *testing.T) {
	book := "brimline: 1\nreadings:\n- {tie: A B, is: 9}\n- {tie: A C, is: 7.004}\n- {tie: B C, is: 8.003}\n- {tie: A r, is: 5.002}\n- {tie: B r, is: 6.001}\n- {tie: C r, is: 4.5}\n" +
		"- {offset: r, line: A B, at: 3.9, left: 3.1, sigma: [200 mm, 150 mm], id: x}\n"
	in, out := run(t, book).Readings[6], run(t, book+"- {strike: x, why: slack}\n").Readings[6]
	if out.State != "struck" {
		t.Fatalf("state %s", out.State)
	}
	for k, a := range in.Parts {
		b := out.Parts[k]
		for _, c := range [][2]float64{{*a.W, *b.W}, {*a.Redundancy, *b.Redundancy}, {*a.Residual, *b.Residual}} {
			if math.Abs(c[0]-c[1]) > 2e-3*math.Abs(c[0])+1e-6 {
				t.Errorf("part %s: %g in the solution, %g put back", a.Part, c[0], c[1])
			}
		}
	}
}

// Where the readings leave something free the redundancies still add up.
func TestRedundanciesAddUpWhereMarksAreFree(t *testing.T) {
	r := run(t, "brimline: 1\nreadings:\n- {seen: r1, setup: T, at: [1, 2]}\n- {seen: r1, setup: T, at: [1.002, 2]}\n- {seen: r2, setup: T, at: [4, 2]}\n")
	sum := 0.0
	for _, x := range r.Readings {
		sum += *x.Redundancy
	}
	if math.Abs(sum-float64(r.Statistics.Redundancy)) > 1e-6 {
		t.Errorf("redundancies sum to %g, statistics say %d", sum, r.Statistics.Redundancy)
	}
}
