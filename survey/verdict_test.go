package survey_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/survey"
)

// The tests of the shape are those of the edge at every mark of the outline, each with the figures
// that it rests on; the shape is as bad as the worst.
func TestTestsOfTheShape(t *testing.T) {
	r := run(t, written(crossed(taped("A", "B", "C")), courtRim))
	s := r.Shape
	if s.Tolerance != 0.025 || s.Share != 0.5 || s.Unseen != 0.01 || s.State != "ready" || len(s.Why) > 0 {
		t.Errorf("%+v", s)
	}
	worst, at := 0.0, ""
	var marks []string
	for _, x := range s.Tests {
		if x.Name != "edge" || x.Tolerance != s.Tolerance || x.Share != s.Share || x.Value != 0 || x.State != "ready" || x.Why != "" {
			t.Errorf("%+v", x)
		}
		if x.U95 == nil || x.Unseen == nil || *x.U95 <= 0 || *x.U95 > 0.0125 || *x.Unseen < 0 || *x.Unseen > 0.01 {
			t.Errorf("at %s: u95 %v, unseen %v", x.At, x.U95, x.Unseen)
			continue
		}
		marks = append(marks, x.At)
		if *x.U95 > worst {
			worst, at = *x.U95, x.At
		}
	}
	slices.Sort(marks)
	if len(marks) != 8 || marks[0] != "r1" || marks[7] != "r8" || s.At != at || *s.Worst != worst {
		t.Errorf("marks %v, worst %v at %s; want %g at %s", marks, *s.Worst, s.At, worst, at)
	}
	// Ties from two pegs and nothing else: a listed mistake would pass unseen, and more than one
	// reading in a hundred is one.
	two := run(t, strings.Replace(written(taped("A", "B"), courtRim), "sigma: 4 mm", "sigma: 2 mm", 1)).Shape
	if two.State != "unproven" || !strings.Contains(strings.Join(two.Why, "; "), "could pass unseen") {
		t.Errorf("two pegs: %s %v", two.State, two.Why)
	}
	for _, x := range two.Tests {
		if x.State != "unproven" || *x.Unseen <= 0.01 || !strings.Contains(x.Why, "could pass unseen") {
			t.Errorf("two pegs, at %s: %s, unseen %g, %q", x.At, x.State, *x.Unseen, x.Why)
		}
	}
}

// What lies between the marks of a curve is a test of its own, which does not count for ready.
func TestBetween(t *testing.T) {
	between := func(r *survey.Result) *survey.Test {
		for i := range r.Shape.Tests {
			if r.Shape.Tests[i].Name == "between" {
				return &r.Shape.Tests[i]
			}
		}
		return nil
	}
	dense, thin := run(t, oval(40)), run(t, oval(9))
	a, b := between(dense), between(thin)
	if a == nil || b == nil {
		t.Fatalf("dense %v, thin %v", a, b)
	}
	if a.State != "ready" || a.At != "rim" || a.Unseen != nil || a.Why != "" || *a.U95 > 0.0125 {
		t.Errorf("forty marks: %+v", *a)
	}
	if b.State != "unfit" || !strings.Contains(b.Why, "read a mark there") || *b.U95 <= 0.0125 {
		t.Errorf("nine marks: %+v", *b)
	}
	if thin.Shape.State != "ready" {
		t.Errorf("shape of nine marks %s: %v", thin.Shape.State, thin.Shape.Why)
	}
	if straight := run(t, written(crossed(taped("A", "B", "C")), courtRim)); between(straight) != nil {
		t.Error("between the marks of straights")
	}
}

// The sentence for the weakest places: the error that could hide, the move, and the tape that
// would expose it; the figures are those of the reading.
func TestWeakestSentence(t *testing.T) {
	r := run(t, written(crossed(taped("A", "B", "C")), courtRim))
	if len(r.Shape.Weakest) != 3 {
		t.Fatalf("%+v", r.Shape.Weakest)
	}
	last := math.Inf(1)
	for _, w := range r.Shape.Weakest {
		x := reading(t, r, w.Reading)
		near(t, "error", *w.Error, *x.Detectable, 1e-12)
		if *w.Move > last || *w.Move <= 0 || *w.Move > *w.Error {
			t.Errorf("%+v after a move of %g", w, last)
		}
		last = *w.Move
		again := ""
		if slices.Equal(w.Expose, x.Marks) {
			again = " again"
		}
		want := fmt.Sprintf("An error of up to %.1f mm could hide in tie %s–%s and would move the edge at %s by %.1f mm; tape %s to %s%s to expose it.",
			1000**w.Error, x.Marks[0], x.Marks[1], w.Mark, 1000**w.Move, w.Expose[0], w.Expose[1], again)
		if w.Text != want {
			t.Errorf("%q, want %q", w.Text, want)
		}
	}
	for _, w := range run(t, written(taped("A", "B"), courtRim)).Shape.Weakest {
		if w.Error != nil || w.Move != nil || !strings.HasPrefix(w.Text, "Any error could hide in tie ") || !strings.HasSuffix(w.Text, " to expose it.") {
			t.Errorf("two pegs: %+v", w)
		}
	}
}

// What is proposed can be read, says why, and is never what cannot be read.
func TestNext(t *testing.T) {
	all := taped("A", "B")
	book := written(all, courtRim)
	r := run(t, book)
	if len(r.Next) == 0 || len(r.Next) > 3 {
		t.Fatalf("%+v", r.Next)
	}
	var words []string
	for _, n := range r.Next {
		p, q := n.Marks[0], n.Marks[1]
		if n.Kind != "tie" || n.Order != "shape" || n.Why == "" || n.Minutes <= 0 || n.Gain <= 0 || !strings.HasPrefix(n.Text, "tape "+p+" to "+q+", about ") {
			t.Errorf("%+v", n)
		}
		near(t, "about", *n.About, court[p].Dist(court[q]), 0.05)
		words = append(words, fmt.Sprintf("- {cannot: %s %s, why: hedge}\n", p, q))
	}
	first := r.Next[0].Text
	for range 6 {
		r = run(t, strings.Replace(book, "- {side", strings.Join(words, "")+"- {side", 1))
		for _, n := range r.Next {
			word := fmt.Sprintf("- {cannot: %s %s, why: hedge}\n", n.Marks[0], n.Marks[1])
			if slices.Contains(words, word) || slices.Contains(words, fmt.Sprintf("- {cannot: %s %s, why: hedge}\n", n.Marks[1], n.Marks[0])) {
				t.Fatalf("%s is proposed, which cannot be read", n.Text)
			}
			words = append(words, word)
		}
	}
	if len(r.Next) > 0 && r.Next[0].Text == first {
		t.Errorf("%q again", first)
	}
	ready := run(t, written(crossed(taped("A", "B", "C")), courtRim))
	if ready.Shape.State != "ready" || len(ready.Next) > 0 {
		t.Errorf("a shape that is %s, next %+v", ready.Shape.State, ready.Next)
	}
}

// Reading what is proposed makes the shape ready.
func TestNextLeadsToReady(t *testing.T) {
	all := taped("A", "B")
	for n := range 12 {
		r := run(t, written(all, courtRim))
		if r.Shape.State == "ready" {
			if n < 2 {
				t.Errorf("ready after %d readings", n)
			}
			return
		}
		if len(r.Next) == 0 {
			t.Fatalf("%s, and nothing is proposed", r.Shape.State)
		}
		m := r.Next[0].Marks
		all = append(all, tape{a: m[0], b: m[1], is: court[m[0]].Dist(court[m[1]]) + scatter[n]})
	}
	t.Error("not ready after twelve readings")
}

// With a suspect or doubtful reading nothing is scaled, however much the others scatter.
func TestScaledOnlyWithoutMistakes(t *testing.T) {
	c := simulate.Pool(3, simulate.Shapes[1], simulate.Methods[1], simulate.Options{Checks: 2})
	loud := noise(t, c, 3)
	if !loud.Statistics.Scaled || len(loud.Mistakes) > 0 {
		t.Fatalf("statistics %+v, mistakes %+v", loud.Statistics, loud.Mistakes)
	}
	b := parse(t, string(c.Book))
	for i, x := range c.Readings {
		for k := range x.True {
			b.Readings[i].Values[k].Metres = x.True[k] + 3*(x.Typed[k]-x.True[k])
		}
	}
	b.Readings[12].Values[0].Metres += 3
	r := solve(t, b)
	if s := r.Statistics; s.Scaled || len(states(r, "suspect"))+len(states(r, "doubtful")) == 0 || s.Redundancy < 20 {
		t.Errorf("statistics %+v, suspect %v", s, states(r, "suspect"))
	}
}
