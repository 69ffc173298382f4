package outline_test

import (
	"math"
	"testing"

	"brimline/internal/simulate"
	"brimline/outline"
)

// A line that crosses itself names the two pairs of marks between which it does.
func TestCrossing(t *testing.T) {
	bow := newScene(true)
	bow.points(0, 0, 4, 2, 4, 0, 0, 2)
	bow.run("straight", "", "r1", "r2")
	bow.run("straight", "", "r2", "r3")
	bow.run("straight", "", "r3", "r4")
	bow.run("straight", "", "r4", "r1")

	inner := newScene(false) // the same crossing between inner marks of long runs
	inner.points(0, 0, 1, 0, 2, 0, 5, 0, 5, 2, 3, 2, 3, 1, 3, -1, 3, -2)
	inner.run("straight", "", "r1", "r2", "r3", "r4")
	inner.run("straight", "", "r4", "r5")
	inner.run("straight", "", "r5", "r6")
	inner.run("straight", "", "r6", "r7", "r8", "r9")

	arc := newScene(false) // an arc over its own entry
	arc.points(0, 0, 2, 0, 4, 0)
	arc.mark("a", arc.at[4].Add(arc.at[3].Sub(arc.at[2]).Turn(math.Pi/2).Mul(1)), usual) // (4, 2)
	arc.mark("b", arc.at[3].Add(arc.at[3].Turn(math.Pi/2).Mul(0.5)), usual)              // (2, 1)
	arc.mark("c", arc.at[3].Sub(arc.at[3].Turn(math.Pi/2).Mul(0.5)), usual)              // (2, −1)
	arc.run("straight", "", "r1", "r2", "r3")
	arc.run("straight", "", "r3", "a")
	arc.run("curve", "", "a", "b", "c")

	for _, c := range []struct {
		name, want string
		s          *scene
		x, y       float64
	}{
		{"bow tie", "crossing r1 r2 r3 r4", bow, 2, 1},
		{"between inner marks", "crossing r3 r4 r7 r8", inner, 3, 0},
		{"curve", "crossing r1 r2 b c", arc, math.NaN(), 0},
	} {
		_, found := c.s.fit(t)
		if len(found) == 0 || codes(found[len(found)-1:]) != c.want {
			t.Errorf("%s: found %s, want %s", c.name, codes(found), c.want)
			continue
		}
		f := found[len(found)-1].Figures
		near(t, c.name+": y", f["y"], c.y, fine)
		if !math.IsNaN(c.x) {
			near(t, c.name+": x", f["x"], c.x, fine)
		}
	}
}

// Clockwise lines are said to be so; their area is positive and their sweeps are negative.
func TestClockwise(t *testing.T) {
	l, found := figure(simulate.Stadium(10, 5).Reverse(), 2).fit(t)
	if codes(found) != "clockwise" || !l.Clockwise {
		t.Errorf("found %s, clockwise %v", codes(found), l.Clockwise)
	}
	near(t, "area", l.Area, 44.63495408, fine)
	for _, r := range l.Runs {
		if r.Kind == "arc" {
			near(t, "sweep", r.Sweep, -math.Pi, fine)
		}
	}
}

// An arc with nothing between its ends is drawn straight, and the reading it wants is asked for:
// also where its word "tangent" has nothing to lean on.
func TestArcAlone(t *testing.T) {
	for _, c := range []struct {
		name  string
		first string // kind of the run before, "" none
		joint string
	}{{"kink", "straight", "kink"}, {"nothing said", "straight", ""}, {"tangent to a curve", "curve", "tangent"}, {"tangent at an open beginning", "", "tangent"}} {
		s := newScene(false)
		s.points(0, 0, 2, 0.1, 4, 0, 6, 2)
		if c.first != "" {
			s.run(c.first, "", "r1", "r2", "r3")
		}
		s.run("arc", c.joint, "r3", "r4")
		l, found := s.fit(t)
		var got string
		for _, f := range found {
			if f.Code == "arc-alone" {
				got += codes(append(found[:0:0], f))
			}
		}
		r := l.Runs[len(l.Runs)-1]
		if got != "arc-alone r3 r4" || r.Kind != "straight" {
			t.Errorf("%s: found %q, drawn as %s", c.name, codes(found), r.Kind)
		}
		near(t, c.name+": length", r.Length, math.Sqrt(8), 0.06)
		if !(r.LengthSD > 0 && r.LengthSD < 0.02) {
			t.Errorf("%s: sd of the length %g", c.name, r.LengthSD)
		}
	}
}

// A mark off the straight or the arc said to run through it is named, with how far it lies off.
func TestTightFit(t *testing.T) {
	s := newScene(false)
	s.points(0, 0, 1, 0, 2, 0.05, 3, 0, 4, 0, 5, 0)
	s.run("straight", "", "r1", "r2", "r3", "r4", "r5", "r6")
	_, found := s.fit(t)
	if codes(found) != "tight-fit r3" || found[0].Words["kind"] != "straight" {
		t.Fatalf("found %s %v", codes(found), found)
	}
	// Least squares leaves 1 − 1/n − (x − mean)²/Σ of it: here 1 − 1/6 − 0.25/17.5.
	left := 1 - 1./6 - 0.25/17.5
	near(t, "off", found[0].Figures["off"], 0.05*left, 5e-5)
	near(t, "allowed", found[0].Figures["allowed"], 3.29*usual*math.Sqrt(left), 5e-5)

	s.at[4].Y = 0.010
	if _, found = s.fit(t); codes(found) != "" {
		t.Errorf("10 mm off, at 4 mm: found %s", codes(found))
	}
	s.at[4].Y = 0.020
	edge := make([]float64, len(s.names))
	sol := s.solution(t)
	if _, found = outline.Fit(sol, s.spec(), edge); codes(found) != "tight-fit r3" {
		t.Errorf("20 mm off, at 4 mm: found %s", codes(found))
	}
	edge[4] = 0.010 // what stays open about the edge there explains it
	if _, found = outline.Fit(sol, s.spec(), edge); codes(found) != "" {
		t.Errorf("20 mm off, at an edge known to 10 mm: found %s", codes(found))
	}
}

// A mark without a place is waited for; the line has no path then.
func TestWaits(t *testing.T) {
	s := newScene(true)
	s.points(0, 0, 4, 0)
	s.run("straight", "", "r1", "r2")
	s.run("straight", "", "r2", "x1", "x2")
	s.run("straight", "", "x2", "x3", "r1")
	all := newScene(true)
	all.run("straight", "", "x1", "x2")
	all.run("straight", "", "x2", "x1")
	one := newScene(true)
	one.run("curve", "", "x1", "x2", "x3", "x1")
	for _, c := range []struct {
		s    *scene
		want string
	}{{s, "line-unread x1 x2 x3"}, {all, "line-unread x1 x2"}, {one, "line-unread x1 x2 x3"}} {
		l, found := c.s.fit(t)
		if codes(found) != c.want || len(l.Path.Segs) != 0 || len(l.Runs) != 0 || l.Length != 0 {
			t.Errorf("found %s, want %s; %d segments", codes(found), c.want, len(l.Path.Segs))
		}
	}
}
