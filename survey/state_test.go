package survey_test

import (
	"math"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/survey"
)

// A reading that is struck or replaced stays listed, says why, shows the residual that it would
// have, and moves nothing.
func TestStruckReadings(t *testing.T) {
	again := "- {tie: r2 r4, is: 4.996, tool: tape}\n"
	without := run(t, small("", ties()+diagonals()+again, rim))
	r := run(t, small("", ties()+diagonals()+
		"- {tie: r1 r3, is: 5.2, tool: tape, id: bad}\n- {strike: bad, why: wrong corner}\n"+
		"- {tie: r2 r4, is: 5.9, tool: tape}\n- {replaces: 14, tie: r2 r4, is: 4.996, tool: tape, why: read again}\n", rim))
	if len(r.Readings) != 14 {
		t.Fatalf("%d readings are listed", len(r.Readings))
	}
	bad := reading(t, r, "12")
	if bad.State != "struck" || bad.Why != "wrong corner" || bad.ID != "bad" {
		t.Errorf("state %q, why %q", bad.State, bad.Why)
	}
	// As if it were put back: r = sd²/(sd² + q), residual = r·(predicted − read), w = (predicted −
	// read)/√(sd² + q).
	d := place(t, r, "r1").Dist(place(t, r, "r3")) - 5.2
	near(t, "residual", *bad.Residual, *bad.Redundancy*d, 1e-9)
	near(t, "w", *bad.W, d*math.Sqrt(*bad.Redundancy)/bad.SD, 1e-6)
	near(t, "adjusted", *bad.Adjusted, 5.2+*bad.Residual, 1e-12)
	back := run(t, small("", ties()+diagonals()+"- {tie: r1 r3, is: 5.2, tool: tape, id: bad}\n", rim))
	put := reading(t, back, "12")
	near(t, "redundancy when put back", *put.Redundancy, *bad.Redundancy, 0.01)
	if math.Abs(*put.W) < 10 || put.State != "suspect" {
		t.Errorf("put back: w %g, state %s", *put.W, put.State)
	}
	if old := reading(t, r, "14"); old.State != "struck" || old.Why == "" || reading(t, r, "15").State != "good" {
		t.Errorf("replaced: state %q, why %q", old.State, old.Why)
	}
	for _, n := range without.MarkOrder {
		near(t, n, place(t, r, n).Dist(place(t, without, n)), 0, 1e-9)
	}
	if r.Statistics.Readings != 12 || r.Statistics.Redundancy != without.Statistics.Redundancy {
		t.Errorf("%d readings count, redundancy %d", r.Statistics.Readings, r.Statistics.Redundancy)
	}
}

// An owner's word and a drawing are shown and never used.
func TestUnusedClasses(t *testing.T) {
	without := run(t, small("", ties()+diagonals(), rim))
	for _, c := range []struct{ class, code string }{{"owner", "owner-word"}, {"drawing", "sketch"}} {
		r := run(t, small("", ties()+diagonals()+"- {tie: r1 r3, is: 5.2, class: "+c.class+"}\n", rim))
		x := reading(t, r, "12")
		if x.State != "struck" || !strings.Contains(x.Why, c.class) || x.Residual == nil {
			t.Errorf("%s: state %q, why %q, residual %v", c.class, x.State, x.Why, x.Residual)
		}
		if f := found(r, c.code); f == nil || len(f.Readings) != 1 || f.Readings[0] != "12" {
			t.Errorf("%s: found %s", c.class, codes(r))
		}
		for _, n := range without.MarkOrder {
			near(t, n, place(t, r, n).Dist(place(t, without, n)), 0, 1e-9)
		}
		if r.Statistics.Readings != 11 {
			t.Errorf("%s: %d readings count", c.class, r.Statistics.Readings)
		}
	}
}

// A mark that only a drawing shows has no place in the result, and a line through it waits.
func TestMarkOnlyDrawn(t *testing.T) {
	drawn := "- {tie: r1 r9, is: 1.5, class: drawing}\n- {tie: r2 r9, is: 1.5, class: drawing}\n- {tie: r3 r9, is: 4.27, class: drawing}\n"
	r := run(t, small("", ties()+diagonals()+drawn, strings.Replace(rim, "[r1, r2]", "[r1, r9, r2]", 1)))
	if m := r.Marks["r9"]; m.X != nil || m.SX != nil || m.Controlled {
		t.Errorf("r9 stands in the result, controlled %v", m.Controlled)
	}
	if l := r.Lines["rim"]; l.Area != nil || found(r, "line-unread") == nil {
		t.Errorf("the line through it has an area; found %s", codes(r))
	}
}

// A reading that nothing checks is lone; its redundancy is nought and no error in it would show.
func TestLoneReadings(t *testing.T) {
	r := run(t, small("", ties(), rim))
	for _, x := range r.Readings {
		if x.State != "lone" || x.Detectable != nil || *x.Redundancy > 1e-9 {
			t.Errorf("reading %s is %s, redundancy %g, detectable %v", x.N, x.State, *x.Redundancy, x.Detectable)
		}
	}
	for _, n := range []string{"r1", "r2", "r3", "r4"} {
		if m := r.Marks[n]; m.Controlled || m.Hidden != nil {
			t.Errorf("%s: controlled %v, hidden %v", n, m.Controlled, m.Hidden)
		}
	}
	if r.Statistics.ReferenceSD != nil || r.Statistics.ChiSquare.Low != nil || !r.Statistics.ChiSquare.Pass || found(r, "no-check") == nil {
		t.Errorf("statistics %+v, found %s", r.Statistics, codes(r))
	}
}

// noise gives a simulated pool with its errors multiplied.
func noise(t *testing.T, c simulate.Case, by float64) *survey.Result {
	t.Helper()
	b := parse(t, string(c.Book))
	for i, x := range c.Readings {
		for k := range x.True {
			b.Readings[i].Values[k].Metres = x.True[k] + by*(x.Typed[k]-x.True[k])
		}
	}
	return solve(t, b)
}

// Only a test that fails high on twenty redundant readings and more widens the sd of places and
// lines; what belongs to readings stays as stated beforehand, and nothing ever shrinks.
func TestScaledStatistics(t *testing.T) {
	c := simulate.Pool(3, simulate.Shapes[1], simulate.Methods[1], simulate.Options{Checks: 2})
	plain, loud, still := noise(t, c, 1), noise(t, c, 3), noise(t, c, 0.1)
	if k := plain.Statistics.Redundancy; k < 20 || plain.Statistics.Scaled || !plain.Statistics.ChiSquare.Pass {
		t.Fatalf("statistics %+v", plain.Statistics)
	}
	if s := loud.Statistics; !s.Scaled || s.ChiSquare.Pass || found(loud, "chi-high") == nil || loud.Shape.State != "unfit" {
		t.Fatalf("statistics %+v, shape %+v", s, loud.Shape)
	}
	if s := still.Statistics; s.Scaled || s.ChiSquare.Pass || found(still, "chi-low") == nil {
		t.Fatalf("statistics %+v", s)
	}
	f := *loud.Statistics.ReferenceSD
	near(t, "reference sd", f, 3**plain.Statistics.ReferenceSD, 0.1)
	for _, n := range plain.MarkOrder {
		a, b, d := plain.Marks[n], loud.Marks[n], still.Marks[n]
		near(t, n+": sx", *b.SX, f**a.SX, 0.05*f**a.SX)
		near(t, n+": sy", *b.SY, f**a.SY, 0.05*f**a.SY)
		if a.Ellipse95 != nil {
			near(t, n+": major", b.Ellipse95.Major, f*a.Ellipse95.Major, 0.05*f*a.Ellipse95.Major)
		}
		near(t, n+": sx of the still one", *d.SX, *a.SX, 0.05**a.SX)
		near(t, n+": hidden", *b.Hidden, *a.Hidden, 0.05**a.Hidden)
	}
	l, m := plain.Lines["rim"], loud.Lines["rim"]
	near(t, "sd of the area", *m.AreaSD, f**l.AreaSD, 0.1*f**l.AreaSD)
	near(t, "sd of the length", *m.LengthSD, f**l.LengthSD, 0.1*f**l.LengthSD)
	near(t, "worst of the shape", *loud.Shape.Worst, f**plain.Shape.Worst, 0.05*f**plain.Shape.Worst)
	for _, x := range loud.Readings {
		if x.Detectable != nil && len(x.Parts) == 0 {
			near(t, "detectable", *x.Detectable, 4.13*x.SD/math.Sqrt(*x.Redundancy), 1e-9)
		}
	}

	few := run(t, small("", ties()+tie("r1", "r3", 0.011)+tie("r2", "r4", -0.011), rim))
	if s := few.Statistics; s.Scaled || s.ChiSquare.Pass || found(few, "chi-high") == nil || s.Redundancy != 2 {
		t.Errorf("few readings: %+v", s)
	}
}

// The shape is unfit when the edge is not known well enough or a reading that is wrong would move
// it, unproven while a listed mistake could pass unseen, else ready.
func TestShape(t *testing.T) {
	coarse := strings.Replace(small("", ties()+diagonals(), rim), "sigma: 4 mm", "sigma: 30 mm", 1)
	lines := strings.Replace(rim, "[r1, r2]", "[r1, r9, r2]", 1)
	for _, c := range []struct{ name, text, state, at, why string }{
		{"good", small("", ties()+diagonals(), rim), "ready", "r", ""},
		{"coarse", coarse, "unfit", "r", "is asked"},
		{"disagreeing", small("", ties()+tie("r1", "r3", 0.5)+diagonals(), rim), "unfit", "r", "suspect"},
		{"without a line", small("", ties()+diagonals(), ""), "unproven", "", "no line"},
		{"with a mark unread", small("", ties()+diagonals(), lines), "unproven", "", "no line has all"},
		{"without a check", small("", ties(), rim), "unproven", "r", "unseen"},
	} {
		s := run(t, c.text).Shape
		if s.State != c.state || !strings.Contains(strings.Join(s.Why, "; "), c.why) || !strings.HasPrefix(s.At, c.at) || (s.Worst == nil) != (c.at == "") {
			t.Errorf("%s: %+v", c.name, s)
		}
		near(t, "tolerance", s.Tolerance, 0.025, 0)
	}
	// Equal tapes of 4 mm: U95 grows with the stated sd.
	a, b := run(t, small("", ties()+diagonals(), rim)).Shape, run(t, coarse).Shape
	near(t, "worst", *b.Worst, 7.5**a.Worst, 0.02**b.Worst)
	// What stays open about the edge at a mark is added in squares across the line there.
	edge := run(t, small("r2: {edge: 20 mm}", ties()+diagonals(), rim)).Shape
	if edge.State != "unfit" || edge.At != "r2" || *edge.Worst < 1.96*0.020 || *edge.Worst > 1.96*0.022 {
		t.Errorf("edge known to 20 mm: %+v", edge)
	}
}
