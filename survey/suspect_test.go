package survey_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/survey"
)

// One reading of a well-checked book is wrong: it alone is suspect, the first explanation is what
// was done, with the length that it was, and the mistake is offered as an edit.
func TestSuspect(t *testing.T) {
	for _, c := range []struct {
		a, b  string
		is    func(was float64) float64
		code  string
		value bool
		marks []string // the edit's, of a tie to another peg
	}{
		{"B", "r5", func(v float64) float64 { return v + 1 }, "metre", true, nil},
		{"A", "r7", func(v float64) float64 { return v - 1 }, "metre", true, nil},
		{"A", "r2", func(v float64) float64 { return v + 0.3048 }, "foot", true, nil},
		{"r3", "r7", func(v float64) float64 { return v - 0.1 }, "tenth", true, nil},
		{"A", "r5", func(float64) float64 { return 10.043 }, "digits", true, nil}, // 10.403
		{"C", "r8", func(float64) float64 { return 1.432 }, "lookalike", true, nil},
		{"B", "r5", func(float64) float64 { return court["C"].Dist(court["r5"]) }, "wrong-peg", false, []string{"C", "r5"}},
		{"A", "r5", func(v float64) float64 { return v - 0.467 }, "unknown", false, nil},
	} {
		all := crossed(taped("A", "B", "C"))
		i := at(t, all, c.a, c.b)
		was := all[i].is
		all[i].is = c.is(was)
		r := run(t, written(all, courtRim))
		name := c.code + " in " + c.a + " " + c.b
		x := reading(t, r, number(i))
		if got := states(r, "suspect"); !slices.Equal(got, []string{x.N}) || len(states(r, "doubtful")) > 0 || x.Group != nil {
			t.Errorf("%s: suspect %v, doubtful %v, want %s", name, got, states(r, "doubtful"), x.N)
			continue
		}
		l := x.Likely[0]
		if l.Code != c.code || l.Cause == "" || (l.Value != nil) != c.value {
			t.Errorf("%s: likely %+v", name, l)
		}
		if c.value {
			near(t, name+": value", *l.Value, was, 0.0015)
		}
		sum := 0.0
		for k, e := range x.Likely {
			sum += e.Probability
			if k > 0 && e.Probability > x.Likely[k-1].Probability {
				t.Errorf("%s: explanations out of order: %+v", name, x.Likely)
			}
		}
		if sum < 0.95 || sum > 1+1e-9 {
			t.Errorf("%s: probabilities add up to %g", name, sum)
		}
		offered(t, name, r, x, c.code, c.value, c.marks)
		unmoved(t, r, 0.008)
	}
}

// offered wants one mistake, in one reading, with its edit.
func offered(t *testing.T, name string, r *survey.Result, x survey.Reading, code string, value bool, marks []string) {
	t.Helper()
	if len(r.Mistakes) != 1 {
		t.Errorf("%s: %d mistakes", name, len(r.Mistakes))
		return
	}
	m := r.Mistakes[0]
	if m.Code != code || !slices.Equal(m.Readings, []string{x.N}) || !strings.Contains(m.Text, "reading "+x.N) || m.Probability != x.Likely[0].Probability {
		t.Errorf("%s: mistake %+v", name, m)
	}
	want := 0
	if value || marks != nil {
		want = 1
	}
	if len(m.Edit) != want {
		t.Errorf("%s: edits %+v", name, m.Edit)
		return
	}
	if want == 0 {
		return
	}
	e := m.Edit[0]
	if e.N != x.N || (e.Value != nil) != value || !slices.Equal(e.Marks, marks) || value && *e.Value != *x.Likely[0].Value {
		t.Errorf("%s: edit %+v", name, e)
	}
}

// A suspect reading is left out of the solution and shows what it would have if it alone were put
// back; the sums count the readings in the solution only.
func TestSuspectIsLeftOut(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	i := at(t, all, "B", "r5")
	without := append(slices.Clone(all[:i]), all[i+1:]...)
	all[i].is += 1
	r, o := run(t, written(all, courtRim)), run(t, written(without, courtRim))
	if r.Statistics.Readings != o.Statistics.Readings || r.Statistics.Redundancy != o.Statistics.Redundancy || r.Statistics.ChiSquare.Value > 1.000001*o.Statistics.ChiSquare.Value {
		t.Errorf("statistics %+v, without the reading %+v", r.Statistics, o.Statistics)
	}
	for name := range court { // order-free: each mark is compared alone
		near(t, name, place(t, r, name).Dist(place(t, o, name)), 0, 1e-7)
	}
	x := reading(t, r, number(i))
	d := place(t, r, "B").Dist(place(t, r, "r5")) - x.Value
	near(t, "residual", *x.Residual, *x.Redundancy*d, 1e-7)
	near(t, "adjusted", *x.Adjusted, x.Value+*x.Residual, 1e-12)
	near(t, "w", *x.W, d*math.Sqrt(*x.Redundancy)/x.SD, 1e-3)
	near(t, "detectable", *x.Detectable, 4.13*x.SD/math.Sqrt(*x.Redundancy), 1e-12)
	sum := 0.0
	for _, y := range r.Readings {
		if y.State != "suspect" {
			sum += *y.Redundancy
		}
	}
	near(t, "sum of redundancies", sum, float64(r.Statistics.Redundancy), 1e-6)
	if r.Shape.State != "unfit" || !strings.Contains(strings.Join(r.Shape.Why, "; "), "reading "+x.N+" is suspect") {
		t.Errorf("shape %s: %v", r.Shape.State, r.Shape.Why)
	}
}

// Nothing is found where nothing is wrong.
func TestNothingWrong(t *testing.T) {
	for _, all := range [][]tape{crossed(taped("A", "B", "C")), taped("A", "B", "C"), crossed(taped("A", "B")), taped("A", "B")} {
		r := run(t, written(all, courtRim))
		if len(r.Mistakes) > 0 || len(states(r, "suspect"))+len(states(r, "doubtful")) > 0 {
			t.Errorf("%d tapes: mistakes %+v", len(all), r.Mistakes)
		}
		for _, x := range r.Readings {
			if len(x.Likely) > 0 || x.Group != nil {
				t.Errorf("%d tapes: reading %s has %+v, group %v", len(all), x.N, x.Likely, x.Group)
			}
		}
	}
}
