package outline_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/internal/simulate"
	"brimline/outline"
	"brimline/plane"
)

// anyOf is a figure marked as by figure whose kind nobody states.
func anyOf(f simulate.Figure, inner int) *scene {
	s := figure(f, inner)
	var names []string
	for _, r := range s.runs {
		names = append(names, r.Names[:len(r.Names)-1]...)
	}
	s.runs = nil
	s.run("any", "", append(names, names[0])...)
	return s
}

func kindsOf(l *outline.Line) string {
	out := ""
	for _, r := range l.Runs {
		out += r.Kind[:1]
	}
	return out
}

// same kinds in the same order round about, wherever they begin.
func roundAbout(a, b string) bool {
	for i := range a {
		if a[i:]+a[:i] == b {
			return true
		}
	}
	return false
}

// The fewest straights and arcs are found again from noisy marks, with the figures of the outline
// within what their sd allow.
func TestAnyFindsPieces(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for _, c := range []struct {
		name, kinds string
		f           simulate.Figure
		inner       int
	}{
		{"rectangle", "ssss", rect(8, 4), 3},
		{"L", "ssssss", bend(), 1},
		{"octagon", "ssssssss", octagon(3), 2},
		{"rounded rectangle", "sasasasa", simulate.Rounded(simulate.Box4(8, 4, 0.01), []float64{0.8, 0.8, 0.8, 0.8}), 3},
		{"stadium", "sasa", simulate.Stadium(10, 5), 5},
		{"four-centre oval", "aaaa", simulate.Oval(9.6, 5.1, 2.2), 5},
		{"kidney", "aaaa", simulate.Kidney(2.4, 1.8, 5, 6.1, 1.5), 6},
		{"roman ends", "ssasssas", simulate.Roman(7, 5, 0.8, 1.25, 1.25), 3},
	} {
		for range 5 {
			l, found := anyOf(c.f, c.inner).noisy(r).fit(t)
			if codes(found) != "" && found[0].Code != "tight-fit" || !roundAbout(kindsOf(l), c.kinds) {
				t.Errorf("%s: found %s, runs %s, want %s", c.name, codes(found), kindsOf(l), c.kinds)
				continue
			}
			near(t, c.name+": area in sd", (l.Area-c.f.Path().Area())/l.AreaSD, 0, 4)
			near(t, c.name+": length in sd", (l.Length-c.f.Path().Length())/l.LengthSD, 0, 4)
			for _, run := range l.Runs {
				if !run.Found {
					t.Errorf("%s: a run from %s is not said to be found", c.name, run.From)
				}
			}
		}
	}
}

// Joints of arcs that run smoothly into their neighbours are tangent; corners are kinks at marks.
func TestAnyJoints(t *testing.T) {
	l, _ := anyOf(simulate.Stadium(10, 5), 5).fit(t)
	for _, r := range l.Runs {
		if r.Joint != "tangent" {
			t.Errorf("%s from %s begins with a %q joint", r.Kind, r.From, r.Joint)
		}
		near(t, "turn", r.Turn, 0, 1e-6)
	}
	l, _ = anyOf(rect(8, 4), 2).fit(t)
	for _, r := range l.Runs {
		if r.Joint != "kink" {
			t.Errorf("%s from %s begins with a %q joint", r.Kind, r.From, r.Joint)
		}
		near(t, "turn", r.Turn, math.Pi/2, 1e-6)
	}
}

// Joints need no marks: an outline marked at even steps that miss every joint, and its corners.
func TestAnyJointsBetweenMarks(t *testing.T) {
	for _, c := range []struct {
		kinds string
		f     simulate.Figure
	}{{"ssss", rect(8, 4)}, {"sasa", simulate.Stadium(10, 5)}, {"aaaa", simulate.Kidney(2.4, 1.8, 5, 6.1, 1.5)}} {
		s := newScene(true)
		path := c.f.Path()
		n := int(path.Length() / 0.55)
		var names []string
		for k := range n {
			names = append(names, "e"+string(rune('0'+k/10))+string(rune('0'+k%10)))
			s.mark(names[k], along(path, (float64(k)+0.37)*path.Length()/float64(n)), usual)
		}
		s.run("any", "", append(names, names[0])...)
		l, _ := s.noisy(rand.New(rand.NewPCG(8, 1))).fit(t)
		if !roundAbout(kindsOf(l), c.kinds) {
			t.Errorf("runs %s, want %s", kindsOf(l), c.kinds)
			continue
		}
		near(t, "area in sd", (l.Area-path.Area())/l.AreaSD, 0, 3)
	}
}

// along is the point of a path at a length from its start.
func along(p plane.Path, at float64) plane.Point {
	for _, s := range p.Segs {
		if at <= s.Length() {
			return s.At(at / s.Length())
		}
		at -= s.Length()
	}
	return p.Segs[0].A
}

// A stretch said to be any between stated runs, of two marks, and one that goes round as a circle.
func TestAnyBetweenStatedRuns(t *testing.T) {
	s := open()
	s.runs[1].Kind, s.runs[1].Joint = "any", ""
	l, _ := s.fit(t)
	if kindsOf(l) != "sas" || l.Runs[0].Found || !l.Runs[1].Found {
		t.Errorf("runs %s", kindsOf(l))
	}
	near(t, "radius", l.Runs[1].Radius, 2, 1e-4)

	two := newScene(false)
	two.points(0, 0, 3, 4)
	two.run("any", "", "r1", "r2")
	l, _ = two.fit(t)
	if kindsOf(l) != "s" {
		t.Errorf("two marks: runs %s", kindsOf(l))
	}
	near(t, "length", l.Length, 5, fine)

	ring := newScene(true)
	var names []string
	for k := range 12 {
		names = append(names, "c"+string(rune('A'+k)))
		ring.mark(names[k], plane.Point{X: 2}.Turn(float64(k)*math.Pi/6), usual)
	}
	ring.run("any", "", append(names, names[0])...)
	l, _ = ring.noisy(rand.New(rand.NewPCG(1, 9))).fit(t)
	if kindsOf(l) != "aa" {
		t.Fatalf("circle: runs %s", kindsOf(l))
	}
	near(t, "radius of both halves", l.Runs[0].Radius, l.Runs[1].Radius, 1e-3)
	near(t, "radius", l.Runs[0].Radius, 2, 0.01)
}

// Seven marks of 5 mm on a half circle between straights give its radius at least as well as a
// circle through them alone would (trade handbook, 2.6: 3 mm), and the sd quoted is the scatter.
func TestAnySemicircleEnd(t *testing.T) {
	s := newScene(false)
	const radius, sd = 2.4, 0.005
	place := func(name string, p plane.Point) { s.mark(name, p, sd) }
	var names []string
	for k := range 3 {
		names = append(names, "a"+string(rune('1'+k)))
		place(names[k], plane.Point{X: float64(k)*1.5 - 4.5, Y: -radius})
	}
	for k := range 7 {
		names = append(names, "b"+string(rune('1'+k)))
		place(names[3+k], plane.Point{Y: -radius}.Turn(float64(k)*math.Pi/6))
	}
	for k := range 3 {
		names = append(names, "c"+string(rune('1'+k)))
		place(names[10+k], plane.Point{X: -float64(k+1) * 1.5, Y: radius})
	}
	s.run("any", "", names...)
	theory := scatter(7, math.Pi, sd)
	const seed = 31
	r := rand.New(rand.NewPCG(seed, 7))
	sum, quoted, in, n := 0.0, 0.0, 0, draws()/2
	for range n {
		l, _ := s.noisy(r).fit(t)
		if kindsOf(l) != "sas" {
			continue
		}
		in++
		sum += math.Pow(l.Runs[1].Radius-radius, 2)
		quoted += l.Runs[1].RadiusSD * l.Runs[1].RadiusSD
	}
	got := math.Sqrt(sum / float64(in))
	t.Logf("radius to %.2f mm, quoted %.2f, circle alone %.2f; found in %d of %d, seed %d", 1e3*got, 1e3*math.Sqrt(quoted/float64(in)), 1e3*theory, in, n, seed)
	if in < n*97/100 || got > theory {
		t.Errorf("found in %d of %d, radius to %.2f mm, a circle alone gives %.2f", in, n, 1e3*got, 1e3*theory)
	}
	near(t, "quoted variance over scatter", quoted/sum, 1, 5*math.Sqrt(2/float64(in)))
}
