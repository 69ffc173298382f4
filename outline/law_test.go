package outline_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"brimline/internal/simulate"
	"brimline/outline"
	"brimline/plane"

	"pgregory.net/rapid"
)

// reversed is the scene whose line is named the other way round.
func (s *scene) reversed() *scene {
	out := *s
	out.runs = nil
	n := len(s.runs)
	for i := range s.runs {
		r := s.runs[n-1-i]
		back := outline.SpecRun{Kind: r.Kind, Marks: slices.Clone(r.Marks), Names: slices.Clone(r.Names), Joint: s.runs[(n-i)%n].Joint}
		slices.Reverse(back.Marks)
		slices.Reverse(back.Names)
		out.runs = append(out.runs, back)
	}
	return &out
}

// lawScene is a noisy line of every kind of run.
func lawScene(seed uint64) *scene {
	s := figure(simulate.Kidney(2.4, 1.8, 5, 6.1, 1.5), 3)
	s.runs[1].Kind = "curve"
	if seed%2 == 0 {
		s = open()
	}
	if seed%3 == 0 {
		s = figure(simulate.Rounded(simulate.Box4(8, 4, 0.02), []float64{0.6, 0.8, 0, 0.6}), 2)
	}
	return s.noisy(rand.New(rand.NewPCG(seed, 5)))
}

// same compares the figures of lines that must be alike; turned multiplies sweeps and turns, and
// back says that the runs of b stand the other way round. Lengths agree to a tenth of a micrometre
// or so: at a kink the normal, along which the least sd of 10 µm is added, is that of either side.
func same(t *rapid.T, what string, a, b *outline.Line, turned float64, back bool) {
	check := func(name string, x, y, tol float64) {
		if !(math.Abs(x-y) <= tol) {
			t.Errorf("%s: %s is %.12g, was %.12g", what, name, y, x)
		}
	}
	share := func(name string, x, y float64) { check(name, x, y, 2e-4*math.Abs(x)+1e-12) }
	check("length", a.Length, b.Length, 2e-7)
	check("area", a.Area, b.Area, 1e-6)
	share("sd of length", a.LengthSD, b.LengthSD)
	share("sd of area", a.AreaSD, b.AreaSD)
	for i, r := range a.Runs {
		q := b.Runs[i]
		if back {
			q = b.Runs[len(b.Runs)-1-i]
		}
		check("run", r.Length, q.Length, 2e-7)
		check("radius", r.Radius, q.Radius, 5e-7)
		check("sweep", turned*r.Sweep, q.Sweep, 5e-7)
		share("sd of run", r.LengthSD, q.LengthSD)
		share("sd of radius", r.RadiusSD, q.RadiusSD)
		share("sd of sweep", r.SweepSD, q.SweepSD)
		share("sd of bearing", r.BearingSD, q.BearingSD)
	}
}

// A line does not depend on where the figure lies or how it is turned; in a mirror, and named
// the other way round, it turns to the other hand and nothing else changes.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := lawScene(rapid.Uint64Range(0, 1000).Draw(r, "seed"))
		l, _ := s.fit(t)
		move := plane.Turned(rapid.Float64Range(-math.Pi, math.Pi).Draw(r, "turn"), plane.Point{X: rapid.Float64Range(-30, 30).Draw(r, "x"), Y: rapid.Float64Range(-30, 30).Draw(r, "y")})
		moved, _ := s.moved(move.Apply).fit(t)
		same(r, "moved", l, moved, 1, false)
		mirrored, _ := s.moved(func(p plane.Point) plane.Point { return plane.Point{X: p.X, Y: -p.Y} }).fit(t)
		same(r, "mirrored", l, mirrored, -1, false)
		back, _ := s.reversed().fit(t)
		same(r, "reversed", l, back, -1, true)
		if l.Closed && (mirrored.Clockwise == l.Clockwise || back.Clockwise == l.Clockwise) {
			r.Errorf("clockwise %v, in the mirror %v, reversed %v", l.Clockwise, mirrored.Clockwise, back.Clockwise)
		}
	})
}

// The figures and their sd do not depend on which marks hold the frame: pegs, or marks of the
// line itself. They agree up to the squares of the noise, here 4 mm at arcs of 0.6 m and more.
func TestFrameLaw(t *testing.T) {
	for seed := range uint64(12) {
		s := lawScene(seed)
		l, _ := s.fit(t)
		o := *s
		o.names = slices.Clone(s.names)
		o.names[0], o.names[1] = "p", "q" // no longer the base
		order := append(slices.Clone(o.names[2:]), "p", "q")
		n := scene{closed: s.closed}
		for _, name := range order {
			k := o.number(name)
			n.mark(name, o.at[k], o.sd[k])
		}
		for _, r := range s.runs {
			n.run(r.Kind, r.Joint, r.Names...)
		}
		m, _ := n.fit(t)
		for i, r := range l.Runs {
			near(t, "radius", m.Runs[i].Radius, r.Radius, 0.02*r.RadiusSD)
			near(t, "sd of the radius", m.Runs[i].RadiusSD, r.RadiusSD, 0.02*r.RadiusSD)
			near(t, "sd of a run", m.Runs[i].LengthSD, r.LengthSD, 0.02*r.LengthSD)
		}
		near(t, "length", m.Length, l.Length, 0.02*l.LengthSD)
		near(t, "sd of the length", m.LengthSD, l.LengthSD, 0.02*l.LengthSD)
		near(t, "area", m.Area, l.Area, 0.02*l.AreaSD)
		near(t, "sd of the area", m.AreaSD, l.AreaSD, 0.02*l.AreaSD)
	}
}
