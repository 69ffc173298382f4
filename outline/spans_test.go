package outline_test

import (
	"fmt"
	"math"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// A span much longer than the usual step of its line is inferred where nobody stated its kind, and
// not where the book says straight.
func TestInferred(t *testing.T) {
	s := anyOf(simulate.Stadium(10, 5), 5)
	for _, name := range []string{"r2", "r3", "r4", "r5", "r6"} { // one side is left without its inner marks
		drop(s, name)
	}
	l, _ := s.fit(t)
	near(t, "inferred", l.Inferred, 5, 0.02)
	stated := figure(simulate.Stadium(10, 5), 5)
	stated.runs[0].Names, stated.runs[0].Marks = []string{"r1", "r7"}, []int{stated.number("r1"), stated.number("r7")}
	if l, _ = stated.fit(t); l.Inferred != 0 {
		t.Errorf("inferred %g of a line stated throughout", l.Inferred)
	}
}

// drop leaves a mark out of the only run.
func drop(s *scene, name string) {
	r := &s.runs[0]
	for i, n := range r.Names {
		if n == name {
			r.Names = append(r.Names[:i:i], r.Names[i+1:]...)
			r.Marks = append(r.Marks[:i:i], r.Marks[i+1:]...)
			return
		}
	}
}

// A curve whose bends change between marks far apart is open there: gaps name the spans, and length
// and area are trusted less than the marks alone would let them be. Marks twice as close close them.
func TestGaps(t *testing.T) {
	wavy := func(n int) *scene {
		s := newScene(true)
		var names []string
		for k := range n {
			a := 2 * math.Pi * float64(k) / float64(n)
			names = append(names, fmt.Sprint("w", k))
			s.mark(names[k], plane.Point{X: 4 + 0.5*math.Cos(3*a)}.Turn(a), usual)
		}
		s.run("curve", "", append(names, names[0])...)
		return s
	}
	few, _ := wavy(12).fit(t)
	many, _ := wavy(36).fit(t)
	if len(few.Gaps) < 6 || len(many.Gaps) != 0 {
		t.Errorf("%d gaps between 12 marks, %d between 36", len(few.Gaps), len(many.Gaps))
	}
	for _, g := range few.Gaps {
		if g.SD < usual/2 || g.SD > 0.5 || math.Abs(g.Length-2.2) > 0.8 || g.From == g.To {
			t.Errorf("gap %+v", g)
		}
	}
	if few.AreaSD < 1.1*many.AreaSD {
		t.Errorf("sd of the area %.4f from 12 marks, %.4f from 36", few.AreaSD, many.AreaSD)
	}
}
