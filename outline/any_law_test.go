package outline_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/internal/simulate"
	"brimline/outline"
	"brimline/plane"
)

// sceneOfAny is a noisy outline of one of the families, or a free one.
func sceneOfAny(seed uint64) *scene {
	s, _ := staked(simulate.Stake(seed, simulate.Shapes[seed%uint64(len(simulate.Shapes))]), "any")
	return s.noisy(rand.New(rand.NewPCG(seed, 6)))
}

// alike says that two lines were found to be the same, to a tolerance that noise far below the
// marks' explains.
func alike(t *testing.T, what string, seed uint64, a, b *outline.Line, length float64) {
	if kindsOf(a) != kindsOf(b) && !roundAbout(kindsOf(a), kindsOf(b)) {
		t.Errorf("%s, seed %d: runs %s, were %s", what, seed, kindsOf(b), kindsOf(a))
		return
	}
	near(t, what+": length", b.Length, a.Length, length)
	near(t, what+": area", b.Area, a.Area, 10*length)
	near(t, what+": sd of length", b.LengthSD, a.LengthSD, 1e-3*a.LengthSD)
	near(t, what+": sd of area", b.AreaSD, a.AreaSD, 1e-3*a.AreaSD)
	near(t, what+": inferred", b.Inferred, a.Inferred, 1e-4)
	if len(a.Gaps) != len(b.Gaps) {
		t.Errorf("%s, seed %d: %d gaps, were %d", what, seed, len(b.Gaps), len(a.Gaps))
	}
}

// What is found does not hang on rounding: coordinates that differ by a nanometre give the same
// line, as do exact ones of a symmetric figure, where descriptions tie.
func TestAnyIsSteady(t *testing.T) {
	for seed := range uint64(42) {
		s := sceneOfAny(seed)
		l, _ := s.fit(t)
		r := rand.New(rand.NewPCG(seed, 12))
		m, _ := s.moved(func(p plane.Point) plane.Point {
			return plane.Point{X: p.X + 1e-9*r.NormFloat64(), Y: p.Y + 1e-9*r.NormFloat64()}
		}).fit(t)
		alike(t, "a nanometre", seed, l, m, 2e-7)
	}
	for _, f := range []simulate.Figure{simulate.Stadium(10, 5), rect(8, 4), simulate.Oval(9.6, 5.1, 2.2)} {
		s := anyOf(f, 4)
		l, _ := s.fit(t)
		for seed := range uint64(5) {
			r := rand.New(rand.NewPCG(seed, 13))
			m, _ := s.moved(func(p plane.Point) plane.Point {
				return plane.Point{X: p.X + 1e-9*r.NormFloat64(), Y: p.Y + 1e-9*r.NormFloat64()}
			}).fit(t)
			alike(t, "symmetric", seed, l, m, 2e-7)
		}
	}
}

// Turned, shifted, mirrored, named the other way round or from another mark on, a line is found to
// be the same.
func TestAnyLaws(t *testing.T) {
	for seed := range uint64(21) {
		s := sceneOfAny(seed)
		l, _ := s.fit(t)
		move := plane.Turned(1+float64(seed), plane.Point{X: 20, Y: -7})
		m, _ := s.moved(move.Apply).fit(t)
		alike(t, "moved", seed, l, m, 1e-6)
		m, _ = s.moved(func(p plane.Point) plane.Point { return plane.Point{X: p.X, Y: -p.Y} }).fit(t)
		alike(t, "mirrored", seed, l, m, 1e-6)
		if m.Clockwise == l.Clockwise {
			t.Errorf("seed %d: not turned over in the mirror", seed)
		}
	}
}

// The evidence does not depend on which marks hold the frame.
func TestAnyFrame(t *testing.T) {
	for seed := range uint64(14) {
		s := sceneOfAny(seed)
		l, _ := s.fit(t)
		n := scene{closed: true, names: s.names[2:], at: s.at[2:], sd: s.sd[2:]}
		n.run("any", "", s.runs[0].Names...)
		m, _ := n.fit(t)
		if !roundAbout(kindsOf(l), kindsOf(m)) {
			t.Errorf("seed %d: runs %s with pegs, %s without", seed, kindsOf(l), kindsOf(m))
			continue
		}
		near(t, "length", m.Length, l.Length, 0.02*l.LengthSD)
		near(t, "sd of length", m.LengthSD, l.LengthSD, 0.02*l.LengthSD)
		near(t, "sd of area", m.AreaSD, l.AreaSD, 0.02*l.AreaSD)
		if math.IsNaN(m.Area) {
			t.Error("no area")
		}
	}
}
