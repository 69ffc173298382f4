package survey_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/survey"
)

// planted is a mistake that makes several tapes of the court wrong at once: what was written, what
// the tapes were.
type planted struct {
	code, text string
	all        []tape
	was        map[int]float64 // by place in the list; NaN: no length is left for it
}

// swap writes A's tapes in B's column from r5 to r7.
func swap(t *testing.T) planted {
	p := planted{code: "columns", text: "A and B are swapped from r5 to r7", all: crossed(taped("A", "B", "C")), was: map[int]float64{}}
	for _, m := range []string{"r5", "r6", "r7"} {
		i, j := at(t, p.all, "A", m), at(t, p.all, "B", m)
		p.was[i], p.was[j] = p.all[i].is, p.all[j].is // as typed, to the millimetre
		p.all[i].is, p.all[j].is = p.all[j].is, p.all[i].is
	}
	return p
}

// slip writes C's tapes of r4 to r7 one row down.
func slip(t *testing.T) planted {
	p := planted{code: "slip", text: "the numbering slips by one in the column of C", all: crossed(taped("A", "B", "C")), was: map[int]float64{}}
	for _, m := range [][2]string{{"r8", "r7"}, {"r7", "r6"}, {"r6", "r5"}, {"r5", "r4"}} {
		i, j := at(t, p.all, "C", m[0]), at(t, p.all, "C", m[1])
		p.was[i] = p.all[i].is
		p.all[i].is = p.all[j].is
	}
	i := at(t, p.all, "C", "r4")
	p.all[i].is += 0.431 // something else was read there
	p.was[i], p.was[at(t, p.all, "C", "r8")] = math.NaN(), math.NaN()
	return p
}

// hook tapes r4 to r8 with a reel whose hook was not counted.
func hook(t *testing.T) planted {
	p := planted{code: "tape-zero", text: "reel from r4 to r8: every length is 100 mm too long", all: crossed(taped("A", "B", "C")), was: map[int]float64{}}
	for _, m := range []string{"r4", "r5", "r6", "r7", "r8"} {
		for _, peg := range []string{"A", "B", "C"} {
			i := at(t, p.all, peg, m)
			p.was[i] = p.all[i].is
			p.all[i].is += 0.1
			p.all[i].tool = "reel"
		}
	}
	return p
}

// kick moves B by 170 mm from r4 on.
func kick(t *testing.T) planted {
	p := planted{code: "peg-moved", text: "B stood", all: crossed(taped("A", "B", "C")), was: map[int]float64{}}
	b := court["B"]
	b.X, b.Y = b.X+0.15, b.Y+0.08
	for _, m := range []string{"r4", "r5", "r6", "r7", "r8"} {
		i := at(t, p.all, "B", m)
		p.was[i] = p.all[i].is
		p.all[i].is += b.Dist(court[m]) - court["B"].Dist(court[m])
	}
	return p
}

// A mistake in several readings at once is named as one, with the lengths that they were.
func TestGroupedMistakes(t *testing.T) {
	for _, p := range []planted{swap(t), hook(t), kick(t)} {
		r := run(t, written(p.all, courtRim))
		if len(r.Mistakes) != 1 || r.Mistakes[0].Code != p.code || !strings.Contains(r.Mistakes[0].Text, p.text) {
			t.Errorf("%s: mistakes %+v", p.code, r.Mistakes)
			continue
		}
		m := r.Mistakes[0]
		if m.Probability < 0.95 || m.Probability > 1 {
			t.Errorf("%s: probability %g", p.code, m.Probability)
		}
		edits := map[string]float64{}
		for _, e := range m.Edit {
			if e.Value != nil {
				edits[e.N] = *e.Value
			}
		}
		tol := map[string]float64{"columns": 0.0006, "tape-zero": 0.0006, "peg-moved": 0.012}[p.code]
		for i, was := range p.was { // order-free: each reading is judged alone
			x := reading(t, r, number(i))
			if x.State != "suspect" || x.Likely[0].Code != p.code || !slices.Contains(m.Readings, x.N) {
				t.Errorf("%s: reading %s is %s, %+v", p.code, x.N, x.State, x.Likely)
			}
			near(t, p.code+": reading "+x.N, edits[x.N], was, tol)
		}
		if len(m.Readings) != len(p.was) {
			t.Errorf("%s: readings %v, want %d", p.code, m.Readings, len(p.was))
		}
		unmoved(t, r, 0.010)
	}
}

// The figures of readings that a group makes wrong are those of what was read.
func TestGroupedFigures(t *testing.T) {
	for _, p := range []planted{swap(t), hook(t), kick(t)} {
		r := run(t, written(p.all, courtRim))
		for i, was := range p.was { // order-free: each reading is judged alone
			x := reading(t, r, number(i))
			near(t, p.code+": value of "+x.N, x.Value, p.all[i].is, 0.0006)
			near(t, p.code+": residual of "+x.N, *x.Residual, *x.Adjusted-x.Value, 1e-9)
			if x.W == nil && *x.Redundancy < 1e-6 {
				continue // nothing else holds its mark
			}
			e := *x.Residual / *x.Redundancy // predicted less read
			near(t, p.code+": what is wrong with "+x.N, e, was-p.all[i].is, 0.015)
			near(t, p.code+": w of "+x.N, *x.W, e*math.Sqrt(*x.Redundancy)/x.SD, 1e-6*math.Abs(*x.W)+1e-9)
		}
		if r.Shape.State != "unfit" {
			t.Errorf("%s: shape %s %v", p.code, r.Shape.State, r.Shape.Why)
		}
	}
}

// A numbering that slips has one length too many and one too few: the last is left out, nothing
// says what it was.
func TestSlip(t *testing.T) {
	p := slip(t)
	r := run(t, written(p.all, courtRim))
	var m *survey.Mistake
	for i := range r.Mistakes {
		if r.Mistakes[i].Code == p.code {
			m = &r.Mistakes[i]
		}
	}
	if m == nil || !strings.Contains(m.Text, p.text) {
		t.Fatalf("mistakes %+v", r.Mistakes)
	}
	for i, was := range p.was { // order-free: each reading is judged alone
		x := reading(t, r, number(i))
		if x.State != "suspect" {
			t.Errorf("reading %s is %s", x.N, x.State)
		}
		for _, e := range m.Edit {
			if e.N == x.N && e.Value != nil && !math.IsNaN(was) {
				near(t, "reading "+x.N, *e.Value, was, 0.0006)
			}
		}
	}
	unmoved(t, r, 0.010)
}
