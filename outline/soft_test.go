package outline_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/plane"
)

// rocks is a 6 × 4 rectangle whose upper side is a row of rocks with an edge known to 30 mm.
func rocks(sigma float64) *scene {
	s := newScene(true)
	s.points(0, 0, 6, 0, 6, 4, 5.2, 4, 4.3, 4, 3.4, 4, 2.5, 4, 1.6, 4, 0.8, 4, 0, 4)
	s.run("straight", "", "r1", "r2")
	s.run("straight", "", "r2", "r3")
	s.run("soft", "", "r3", "r4", "r5", "r6", "r7", "r8", "r9", "r10")
	s.runs[2].Sigma = sigma
	s.run("straight", "", "r10", "r1")
	return s
}

// A soft run passes its marks; its sigma goes into area and length, and the straights beside it are
// what they are without it.
func TestSoft(t *testing.T) {
	l, found := rocks(0.03).fit(t)
	if codes(found) != "" || l.Runs[2].Kind != "soft" || l.Area == 0 {
		t.Fatalf("found %s, runs %s", codes(found), kindsOf(l))
	}
	near(t, "area", l.Area, 24, fine)
	firm := rocks(0)
	firm.runs[2].Kind = "curve"
	m, _ := firm.fit(t)
	for _, i := range []int{0, 1, 3} {
		near(t, "length of a straight", l.Runs[i].Length, m.Runs[i].Length, 1e-9)
		near(t, "its sd", l.Runs[i].LengthSD, m.Runs[i].LengthSD, 1e-9)
	}
	if l.AreaSD < 2*m.AreaSD || l.LengthSD < 1.1*m.LengthSD { // scattered across it is little longer
		t.Errorf("sd of area %.4f, firm %.4f; of length %.4f, firm %.4f", l.AreaSD, m.AreaSD, l.LengthSD, m.LengthSD)
	}
}

// The area of an edge that is scattered by its sigma at each mark lies within 1.96 sd as often as it
// says.
func TestSoftCoverage(t *testing.T) {
	const sigma = 0.03
	r := rand.New(rand.NewPCG(19, 4))
	in, n := 0, draws()
	for range n {
		s := rocks(sigma)
		for i := 5; i < 11; i++ { // r4 to r9; the peg marks come first
			s.at[i] = s.at[i].Add(plane.Point{Y: sigma * r.NormFloat64()})
		}
		l, _ := s.noisy(r).fit(t)
		if math.Abs(l.Area-24) <= 1.96*l.AreaSD {
			in++
		}
	}
	t.Logf("area within 1.96 sd in %d of %d", in, n)
	near(t, "share within 1.96 sd", float64(in)/float64(n), 0.95, 4.5*math.Sqrt(0.95*0.05/float64(n)))
}
