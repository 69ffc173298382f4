package outline_test

import (
	"math"
	"testing"

	"brimline/internal/simulate"
	"brimline/outline"
	"brimline/plane"
)

const fine = 1e-6 // metres, square metres, radians

// rect is a rectangle about the origin.
func rect(length, width float64) simulate.Figure {
	return simulate.Rounded(simulate.Box4(length, width, 0), []float64{0, 0, 0, 0})
}

// bend is an L: 8 × 3 with a leg of 3 × 2 upon its left end. Area and perimeter by hand.
func bend() simulate.Figure {
	return simulate.Rounded([]plane.Point{{}, {X: 8}, {X: 8, Y: 3}, {X: 3, Y: 3}, {X: 3, Y: 5}, {Y: 5}}, make([]float64, 6))
}

// octagon is regular, with the side given.
func octagon(side float64) simulate.Figure {
	var c []plane.Point
	for k := range 8 {
		c = append(c, plane.Point{X: side / 2 / math.Sin(math.Pi/8)}.Turn(float64(k)*math.Pi/4))
	}
	return simulate.Rounded(c, make([]float64, 8))
}

// Exact marks give exact figures. Lengths and areas but those of rectangle and L are those printed in the
// trade handbook, appendix A, computed there from closed formulas with other code; the roman
// pool adds its body of 6 × 4 and four shoulders of 0.3 to the end printed there.
func TestKnownFigures(t *testing.T) {
	for _, c := range []struct {
		name         string
		f            simulate.Figure
		length, area float64
	}{
		{"rectangle", rect(8, 4), 24, 32},
		{"L", bend(), 26, 30},
		{"octagon", octagon(0.92), 7.36, 4.08678072},
		{"rounded rectangle", simulate.Rounded(simulate.Box4(8, 4, 0), []float64{0.6, 0.6, 0.6, 0.6}), 22.96991118, 31.69097336},
		{"stadium", simulate.Stadium(10, 5), 25.70796327, 44.63495408},
		{"four-centre oval", simulate.Oval(9.6, 5.1, 2.2), 24.34819685, 40.79616353},
		{"four-arc kidney", simulate.Kidney(2.4, 1.8, 5, 6.1, 1.5), 24.17693144, 36.73126037},
		{"roman ends", simulate.Roman(6, 4, 0.3, 1.25, 1.25), 12 + 4*0.3 + 2*4.51677785, 24 + 2*3.11949068},
	} {
		for _, inner := range []int{1, 2, 4} {
			l, found := figure(c.f, inner).fit(t)
			if codes(found) != "" {
				t.Errorf("%s: found %s", c.name, codes(found))
			}
			near(t, c.name+": length", l.Length, c.length, fine)
			near(t, c.name+": area", l.Area, c.area, fine)
			runsOf(t, c.name, l, c.f)
			if err := l.Path.Validate(); err != nil || l.Clockwise {
				t.Errorf("%s: %v, clockwise %v", c.name, err, l.Clockwise)
			}
		}
	}
}

// runsOf compares every run with the piece it was marked on.
func runsOf(t *testing.T, name string, l *outline.Line, f simulate.Figure) {
	t.Helper()
	if len(l.Runs) != len(f) {
		t.Fatalf("%s: %d runs of %d", name, len(l.Runs), len(f))
	}
	for i, r := range l.Runs {
		s := f[i].Segs[0]
		if r.Kind != f[i].Kind || r.First != i || r.Pieces != 1 {
			t.Errorf("%s: run %d is %s, piece %d of %d", name, i, r.Kind, r.First, r.Pieces)
		}
		near(t, name+": length of run", r.Length, s.Length(), fine)
		if r.Kind == "straight" {
			near(t, name+": bearing", math.Remainder(r.Bearing-plane.Bearing(s.B.Sub(s.A)), 2*math.Pi), 0, fine)
			continue
		}
		near(t, name+": radius", r.Radius, math.Abs(s.Radius()), fine)
		near(t, name+": sweep", r.Sweep, s.Sweep(), fine)
		near(t, name+": centre", r.Centre.Dist(s.Centre()), 0, fine)
	}
	turn := 0.0
	for i, r := range l.Runs {
		turn += r.Turn + r.Sweep
		if f[i].Tangent {
			near(t, name+": turn at a tangent joint", r.Turn, 0, fine)
		}
	}
	near(t, name+": turn and sweep once round", turn, 2*math.Pi, 10*fine)
}

// The figures printed for single pieces: oval side, roman end.
func TestKnownArcs(t *testing.T) {
	oval, _ := figure(simulate.Oval(9.6, 5.1, 2.2), 3).fit(t)
	near(t, "side radius", oval.Runs[0].Radius, 12.03214286, fine)
	near(t, "half sweep of the side", oval.Runs[0].Sweep/2, 15.333609*deg, fine)
	near(t, "end radius", oval.Runs[1].Radius, 2.2, fine)
	roman, _ := figure(simulate.Roman(6, 4, 0.3, 1.25, 1.25), 3).fit(t)
	arcs := 0
	for _, r := range roman.Runs {
		if r.Kind == "arc" {
			arcs++
			near(t, "roman radius", r.Radius, 1.781, fine)
			near(t, "roman sweep", r.Sweep, 145.307303*deg, fine)
			near(t, "roman arc", r.Length, 4.51677785, fine)
		}
	}
	if arcs != 2 {
		t.Errorf("%d arcs of 2", arcs)
	}
}

// A circle is one closed run, drawn as two arcs of one radius with no turn between.
func TestCircleAsOneRun(t *testing.T) {
	for _, marks := range []int{3, 4, 5, 8} {
		s := newScene(true)
		var names []string
		for k := range marks {
			p := plane.Point{X: 2.5}.Turn(2 * math.Pi * float64(k) / float64(marks)).Add(plane.Point{X: 4, Y: 3})
			n := string(rune('a' + k))
			s.mark(n, p, usual)
			names = append(names, n)
		}
		s.run("arc", "", append(names, "a")...)
		l, found := s.fit(t)
		if codes(found) != "" || len(l.Runs) != 2 || len(l.Marks) != marks {
			t.Errorf("%d marks: %s, %d runs, marks %v", marks, codes(found), len(l.Runs), l.Names)
		}
		near(t, "length", l.Length, 5*math.Pi, fine)
		near(t, "area", l.Area, 6.25*math.Pi, fine)
		for _, r := range l.Runs {
			near(t, "radius", r.Radius, 2.5, fine)
			near(t, "centre", r.Centre.Dist(plane.Point{X: 4, Y: 3}), 0, fine)
			near(t, "turn", r.Turn, 0, fine)
		}
		near(t, "sweep", l.Runs[0].Sweep+l.Runs[1].Sweep, 2*math.Pi, fine)
	}
}
