package outline_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// Joints said to be tangent hardly turn although the marks are noisy; those not said so do.
func TestTangentJoints(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	for range 20 {
		s := open().noisy(r)
		l, _ := s.fit(t)
		if !math.IsNaN(l.Runs[0].Turn) {
			t.Errorf("an open line turns by %g where it begins", l.Runs[0].Turn)
		}
		for _, run := range l.Runs[1:] {
			near(t, "turn at a tangent joint", run.Turn, 0, 2e-5)
		}
		for i := range s.runs {
			s.runs[i].Joint = ""
		}
		l, _ = s.fit(t)
		if worst := math.Max(math.Abs(l.Runs[1].Turn), math.Abs(l.Runs[2].Turn)); worst < 1e-4 {
			t.Errorf("joints of which nothing is said turn by %g at most", worst)
		}
	}
}

// A kink keeps its angle.
func TestKink(t *testing.T) {
	s := newScene(false)
	s.points(0, 0, 2, 0, 4, 0, 5, 2)
	s.run("straight", "", "r1", "r2", "r3")
	s.run("straight", "kink", "r3", "r4")
	l, found := s.fit(t)
	near(t, "turn", l.Runs[1].Turn, math.Atan2(2, 1), fine)
	near(t, "length", l.Length, 4+math.Sqrt(5), fine)
	if codes(found) != "" || l.Area != 0 || l.AreaSD != 0 {
		t.Errorf("found %s, area %g of an open line", codes(found), l.Area)
	}
}

// A curve run that leaves one straight and meets another, tangent to both: here it is half of a
// circle, which the fair curve through marks on it is too.
func TestCurveBetweenStraights(t *testing.T) {
	s := newScene(false)
	s.points(0, 0, 2, 0, 4, 0)
	for k := 1; k < 6; k++ {
		s.mark(string(rune('a'-1+k)), plane.Point{X: 4, Y: 1.5}.Add(plane.Point{Y: -1.5}.Turn(float64(k)*math.Pi/6)), usual)
	}
	s.mark("e1", plane.Point{X: 4, Y: 3}, usual)
	s.mark("e2", plane.Point{X: 1, Y: 3}, usual)
	s.run("straight", "", "r1", "r2", "r3")
	s.run("curve", "tangent", "r3", "a", "b", "c", "d", "e", "e1")
	s.run("straight", "tangent", "e1", "e2")
	l, found := s.fit(t)
	if codes(found) != "" || len(l.Runs) != 3 || l.Runs[1].Kind != "curve" || l.Runs[1].First != 1 || l.Runs[2].First != 1+l.Runs[1].Pieces {
		t.Fatalf("found %s, runs %+v", codes(found), l.Runs)
	}
	near(t, "length of the curve", l.Runs[1].Length, 1.5*math.Pi, 1e-5)
	near(t, "length", l.Path.Length(), 7+1.5*math.Pi, 1e-5)
	near(t, "turn into the curve", l.Runs[1].Turn, 0, 1e-9)
	near(t, "turn out of the curve", l.Runs[2].Turn, 0, 1e-9)

	noisy := s.noisy(rand.New(rand.NewPCG(3, 3)))
	l, _ = noisy.fit(t)
	near(t, "turn into the noisy curve", l.Runs[1].Turn, 0, 1e-9)
	noisy.runs[1].Joint, noisy.runs[2].Joint = "", ""
	if l, _ = noisy.fit(t); math.Abs(l.Runs[1].Turn) < 1e-4 || math.Abs(l.Runs[2].Turn) < 1e-4 {
		t.Errorf("a curve of which nothing is said leaves its straights by %g and %g", l.Runs[1].Turn, l.Runs[2].Turn)
	}
}

// What neither straights nor a few arcs explain is drawn as a fair curve. An ellipse of half axes 5 and 2.5 (trade handbook, appendix A:
// perimeter 24.22112054, area 39.26990817) comes back to a millimetre from forty marks.
func TestAnyRun(t *testing.T) {
	s := newScene(true)
	var names []string
	for k := range 40 {
		a := 2 * math.Pi * float64(k) / 40
		names = append(names, "e"+string(rune('A'+k)))
		s.mark(names[k], plane.Point{X: 5 * math.Cos(a), Y: 2.5 * math.Sin(a)}, usual)
	}
	s.run("any", "", append(names, names[0])...)
	l, found := s.fit(t)
	if codes(found) != "" || len(l.Runs) != 1 || l.Runs[0].Kind != "curve" || len(l.Marks) != 40 {
		t.Fatalf("found %s, %d runs, %d marks", codes(found), len(l.Runs), len(l.Marks))
	}
	near(t, "perimeter", l.Path.Length(), 24.22112054, 0.001)
	near(t, "area", l.Area, 39.26990817, 0.003)
	near(t, "length against that of the path", l.Length, l.Path.Length(), 1e-12)
	near(t, "area against that of the path", l.Area, math.Abs(l.Path.Area()), 1e-12)
}

// An arc between its end marks alone is fixed where it leaves the run before as a tangent.
func TestArcHeldByItsTangent(t *testing.T) {
	s := newScene(false)
	s.points(0, 0, 2, 0, 4, 0, 6, 2)
	s.run("straight", "", "r1", "r2", "r3")
	s.run("arc", "tangent", "r3", "r4")
	l, found := s.fit(t)
	if codes(found) != "" || l.Runs[1].Kind != "arc" {
		t.Fatalf("found %s, a %s", codes(found), l.Runs[1].Kind)
	}
	near(t, "radius", l.Runs[1].Radius, 2, fine)
	near(t, "sweep", l.Runs[1].Sweep, math.Pi/2, fine)

	after := newScene(false) // the same arc, held by the run after it
	after.at = append(after.at, s.at[5], s.at[4], s.at[3], s.at[2])
	after.names, after.sd = append(after.names, "r1", "r2", "r3", "r4"), append(after.sd, usual, usual, usual, usual)
	after.run("arc", "kink", "r1", "r2")
	after.run("straight", "tangent", "r2", "r3", "r4")
	l, found = after.fit(t)
	if codes(found) != "" || l.Runs[0].Kind != "arc" {
		t.Fatalf("found %s, a %s", codes(found), l.Runs[0].Kind)
	}
	near(t, "radius", l.Runs[0].Radius, 2, fine)
	near(t, "sweep", l.Runs[0].Sweep, -math.Pi/2, fine)

	both := newScene(false) // one tangent joint holds one arc of two
	both.points(0, 0, 2, 0, 4, 2)
	both.run("arc", "", "r1", "r2")
	both.run("arc", "tangent", "r2", "r3")
	l, found = both.fit(t)
	if codes(found) != "arc-alone r2 r3" && codes(found) != "arc-alone r1 r2" || l.Runs[0].Kind == l.Runs[1].Kind {
		t.Errorf("found %s, a %s and a %s", codes(found), l.Runs[0].Kind, l.Runs[1].Kind)
	}
}

// Normals stand square to the line, to its left: inward of a ring.
func TestNormals(t *testing.T) {
	l, _ := figure(simulate.Stadium(10, 5), 3).fit(t)
	for i, n := range l.Normals {
		p := figure(simulate.Stadium(10, 5), 3).at[l.Marks[i]]
		near(t, "length of a normal", n.Len(), 1, 1e-12)
		if !l.Path.Contains(p.Add(n.Mul(0.1))) || l.Path.Contains(p.Sub(n.Mul(0.1))) {
			t.Errorf("the normal at %s points outward", l.Names[i])
		}
	}
	if len(l.Normals) != len(l.Marks) {
		t.Errorf("%d normals at %d marks", len(l.Normals), len(l.Marks))
	}
}
