package outline_test

import (
	"math"
	"testing"

	"brimline/outline"
	"brimline/plane"
)

// bay is a rectangle of 8 × 4, its right end an arc of two marks with the rise read there.
// Counter-clockwise: r1 r2 at the bottom, r2 r3 the end.
func bay(toward string, sd float64) *scene {
	s := newScene(true)
	s.points(0, 0, 8, 0, 8, 4, 0, 4)
	s.run("straight", "", "r1", "r2")
	s.run("arc", "", "r2", "r3")
	s.run("straight", "", "r3", "r4")
	s.run("straight", "", "r4", "r1")
	s.bow("r3", "r2", 0.5, sd, toward)
	return s
}

// turnedRound is the scene with its line said the other way round.
func (s *scene) turnedRound() *scene {
	out := *s
	out.runs = nil
	for i := len(s.runs) - 1; i >= 0; i-- {
		r := outline.SpecRun{Kind: s.runs[i].Kind, Joint: s.runs[i].Joint}
		for k := len(s.runs[i].Names) - 1; k >= 0; k-- {
			r.Names, r.Marks = append(r.Names, s.runs[i].Names[k]), append(r.Marks, s.runs[i].Marks[k])
		}
		out.runs = append(out.runs, r)
	}
	return &out
}

// capOf is a segment of chord 4 and rise h by closed formulas: radius, length of its arc, area.
func capOf(h float64) (radius, length, area float64) {
	radius = (4 + h*h) / (2 * h)
	half := math.Asin(2 / radius)
	return radius, 2 * half * radius, radius*radius*half - 2*(radius-h)
}

// An arc of two marks takes its rise from the bow, towards the deck or the water, whichever way
// round the line is said.
func TestArcTakesRiseFromBow(t *testing.T) {
	radius, length, area := capOf(0.5)
	for _, c := range []struct {
		toward, found string
		sign          float64
	}{{"deck", "", 1}, {"water", "", -1}, {"", "bow-side r2 r3", 1}} {
		for _, round := range []bool{false, true} {
			s, found := bay(c.toward, 0.002), c.found
			at := 1
			if round {
				s, at = s.turnedRound(), 2
				if found == "" {
					found = "clockwise"
				} else {
					found = "bow-side r3 r2; clockwise"
				}
			}
			l, fs := s.fit(t)
			if codes(fs) != found {
				t.Errorf("toward %q, round %v: found %s, want %s", c.toward, round, codes(fs), found)
			}
			r := l.Runs[at]
			near(t, "radius", r.Radius, radius, fine)
			near(t, "arc", r.Length, length, fine)
			near(t, "length", l.Length, 20+length, fine)
			near(t, "area", l.Area, 32+c.sign*area, fine)
			middle := plane.Point{X: 8 + c.sign*0.5, Y: 2}
			sol := s.solution(t)
			a, b := sol.X.Point(2), sol.X.Point(3) // r1 and r2 give the frame
			frame := plane.Turned(plane.Angle(b.Sub(a)), a)
			if d := distance(l.Path, frame.Apply(middle)); d > fine {
				t.Errorf("toward %q, round %v: the arc passes %.6f m beside its middle", c.toward, round, d)
			}
		}
	}
}

// The standard deviations of radius, length and area contain that of the rise: with sharp marks
// they are its own, carried through the closed formulas.
func TestRiseCarriesItsTrust(t *testing.T) {
	const sd, step = 0.003, 1e-6
	s := bay("deck", sd)
	for i := range s.sd {
		s.sd[i] = sharp
	}
	l, _ := s.fit(t)
	r1, l1, a1 := capOf(0.5 + step)
	r0, l0, a0 := capOf(0.5 - step)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"radius", l.Runs[1].RadiusSD, (r0 - r1) / (2 * step) * sd}, {"arc", l.Runs[1].LengthSD, (l1 - l0) / (2 * step) * sd},
		{"length", l.LengthSD, (l1 - l0) / (2 * step) * sd}, {"area", l.AreaSD, (a1 - a0) / (2 * step) * sd},
	} {
		near(t, c.name+" sd", c.got, c.want, 0.01*c.want)
	}
}

// Two bows of one chord are two readings of one rise.
func TestTwoBowsOfOneChord(t *testing.T) {
	s := bay("deck", 0.003)
	s.bow("r2", "r3", 0.506, 0.003, "")
	for i := range s.sd {
		s.sd[i] = sharp
	}
	l, found := s.fit(t)
	radius, _, _ := capOf(0.503)
	near(t, "radius", l.Runs[1].Radius, radius, fine)
	one := bay("deck", 0.003)
	copy(one.sd, s.sd)
	alone, _ := one.fit(t)
	near(t, "radius sd against one bow", alone.Runs[1].RadiusSD/l.Runs[1].RadiusSD, math.Sqrt2, 0.03)
	if codes(found) != "" {
		t.Errorf("found %s", codes(found))
	}
}

// Only a bow in the solution gives a rise; an open line has no deck side unless it goes round.
func TestRiseOrNone(t *testing.T) {
	check := bay("deck", 0.003)
	check.bows[0].Check = true
	if l, found := check.fit(t); codes(found) != "arc-alone r2 r3" || l.Runs[1].Kind != "straight" {
		t.Errorf("a check gives no rise: found %s", codes(found))
	}
	other := bay("deck", 0.003)
	other.bows[0].Marks = []string{"r1", "r2"}
	if _, found := other.fit(t); codes(found) != "arc-alone r2 r3" {
		t.Errorf("the bow of another chord: found %s", codes(found))
	}
	open := newScene(false)
	open.points(0, 0, 4, 0)
	open.run("arc", "", "r1", "r2")
	open.bow("r1", "r2", 0.5, 0.002, "deck")
	l, found := open.fit(t)
	if codes(found) != "bow-side r1 r2" || found[0].Words["hand"] != "left" || l.Path.Segs[0].Bulge >= 0 {
		t.Errorf("an open arc: %s, bulge %v", codes(found), l.Path.Segs[0].Bulge)
	}
	round := bay("deck", 0.002)
	round.closed, round.runs = false, round.runs[:3]
	if l, found := round.fit(t); codes(found) != "" || l.Path.Segs[1].Bulge <= 0 {
		t.Errorf("an open line that goes round: %s", codes(found))
	}
}

// A bow over an arc that has marks of its own is one more reading of it: the marks on the arc
// give the line its shape.
func TestBowOverArcWithMarks(t *testing.T) {
	s := newScene(true)
	s.points(0, 0, 8, 0, 8.5, 2, 8, 4, 0, 4)
	s.run("straight", "", "r1", "r2")
	s.run("arc", "", "r2", "r3", "r4")
	s.run("straight", "", "r4", "r5")
	s.run("straight", "", "r5", "r1")
	s.bow("r2", "r4", 0.5, 0.002, "deck")
	l, found := s.fit(t)
	radius, _, _ := capOf(0.5)
	near(t, "radius", l.Runs[1].Radius, radius, fine)
	if codes(found) != "" {
		t.Errorf("found %s", codes(found))
	}
}

func distance(p plane.Path, at plane.Point) float64 {
	_, _, foot := p.Nearest(at)
	return foot.Dist(at)
}
