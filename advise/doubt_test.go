package advise_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"brimline/adjust"
	"brimline/advise"
	"brimline/mistake"
	"brimline/network"
)

// leave takes a reading out of a scene's solution, and shift says what the figure of the first
// mark asked does between two solutions, in the datum of the line.
func shift(s *scene, from, to *adjust.Solution, ask int) float64 {
	f := advise.Outline(from, s.rim, s.normals())[ask]
	sum := 0.0
	for k, m := range f.Marks {
		d := to.X.Point(m).Sub(from.X.Point(m))
		sum += f.Grad[2*k]*d.X + f.Grad[2*k+1]*d.Y
	}
	return sum
}

func without(t *testing.T, s *scene, obs int) *adjust.Solution {
	t.Helper()
	n := *s.net
	n.Obs = append([]network.Obs(nil), s.net.Obs...)
	n.Obs[obs].Use = false
	sol, _ := adjust.Solve(context.Background(), &n, append(network.State(nil), s.truth...), adjust.Options{NoRobust: true})
	return sol
}

// With a suspect reading left out, the move by its inclusion is what a solution with it shows.
func TestSuspectMovesTheEdge(t *testing.T) {
	s := threePegs(11, 12, 0, 0.003)
	const bad = 5 // a tie to a mark of the rim
	s.net.Obs[bad].Values[0] += 0.04
	sol, all := without(t, s, bad), s.solve(t)
	v := advise.Judge(sol, nil, advise.Odd{Suspect: []int{bad}}, s.shape(sol), 1)
	if v.State != advise.Unfit || v.Why[0].Code != "suspect" || v.Why[0].Obs[0] != bad {
		t.Fatalf("%s %+v", v.State, v.Why)
	}
	most := 0.0
	for i := range s.rim {
		most = math.Max(most, math.Abs(shift(s, sol, all, i)))
	}
	near(t, "move", v.Why[0].From, most, 0.01*most) // linear against a full solution
	if v = advise.Judge(sol, nil, advise.Odd{}, s.shape(sol), 1); v.State != advise.Ready {
		t.Errorf("without the doubt: %s %+v", v.State, v.Why)
	}
}

// Of a doubtful group the other member is left out instead: the move is that between the two
// solutions.
func TestDoubtfulGroupMovesTheEdge(t *testing.T) {
	s := threePegs(11, 12, 0, 0.003)
	const out, other = 5, 6
	s.net.Obs[out].Values[0] += 0.03
	sol, swapped := without(t, s, out), without(t, s, other)
	odd := advise.Odd{Doubtful: []mistake.Group{{Number: 1, Obs: []int{out, other}, Chance: []float64{0.7, 0.3}}}}
	v := advise.Judge(sol, nil, odd, s.shape(sol), 1)
	if v.State != advise.Unfit || v.Why[0].Code != "doubtful" {
		t.Fatalf("%s %+v", v.State, v.Why)
	}
	most := 0.0
	for i := range s.rim {
		most = math.Max(most, math.Abs(shift(s, sol, swapped, i)))
	}
	near(t, "move", v.Why[0].From, most, 0.02*most)
}

// Where a mark hangs on the doubtful reading nothing bounds the move; it has to be read again.
func TestDoubtWithoutBound(t *testing.T) {
	s := twoPegs(5, 8, 0, 0.002)
	extra := len(s.net.Obs)
	s.tie(s.rim[1], s.rim[5])
	s.net.Obs[extra].Values[0] += 0.3
	sol := without(t, s, extra)
	alone := 2 + 2*6 // from B to the seventh mark, which the extra tie does not touch
	odd := advise.Odd{Doubtful: []mistake.Group{{Number: 1, Obs: []int{extra, alone}, Chance: []float64{0.5, 0.5}}}}
	v := advise.Judge(sol, nil, odd, s.shape(sol), 1)
	if v.State != advise.Unfit || v.Why[0].Code != "doubtful" || !math.IsInf(v.Why[0].From, 1) {
		t.Errorf("%s %+v", v.State, v.Why)
	}
	p := advise.Next(sol, nil, odd, []advise.Order{s.shape(sol)}, s.options())
	if len(p) == 0 || p[0].Why.Code != "tells" || !slices.Equal(p[0].Marks, s.net.Obs[alone].Marks) {
		t.Errorf("%+v", p)
	}
}

// A suspect reading that takes part with a value that nobody read keeps what hangs on it unfit.
func TestSuspectThatHoldsAMark(t *testing.T) {
	s := twoPegs(5, 8, 0, 0.002)
	sol := s.solve(t)
	v := advise.Judge(sol, nil, advise.Odd{Suspect: []int{4}}, s.shape(sol), 1)
	if v.State != advise.Unfit || v.Why[0].Code != "suspect" || !math.IsInf(v.Why[0].From, 1) || v.Why[0].Obs[0] != 4 {
		t.Errorf("%s %+v", v.State, v.Why)
	}
}

// A suspect point of an instrument moves its marks through the set-up.
func TestSuspectSeenPoint(t *testing.T) {
	s := threePegs(3, 10, 0, 0.004)
	at := len(s.truth)
	s.net.Setups, s.net.SetupAt["T"] = []string{"T"}, 0
	s.truth = append(s.truth, 1, -2, 0.3)
	s.net.Offset = append(s.net.Offset, len(s.truth))
	first := len(s.net.Obs)
	for _, m := range []int{0, 1, 5, 8} {
		o := network.Obs{Kind: network.Seen{}, Reading: len(s.net.Obs), Marks: []int{m}, Setup: len(s.net.Marks), Scale: 1, Free: -1, Use: true, SD: []float64{0.003, 0.003}, Values: make([]float64, 2)}
		o.Blocks = o.Kind.Touches(&o)
		o.At, o.Size = []int{2 * m, at}, 5
		o.Kind.Predict(s.truth, &o, o.Values, make([]float64, 10))
		s.net.Obs = append(s.net.Obs, o)
	}
	bad := first + 3
	s.net.Obs[bad].Values[0] += 0.05
	sol, all := without(t, s, bad), s.solve(t)
	most := 0.0
	for i := range s.rim {
		most = math.Max(most, math.Abs(shift(s, sol, all, i)))
	}
	v := advise.Judge(sol, nil, advise.Odd{Suspect: []int{bad}}, s.shape(sol), 1)
	if len(v.Why) == 0 || v.Why[0].Code != "suspect" {
		t.Fatalf("%s %+v, a move of %.4f", v.State, v.Why, most)
	}
	near(t, "move", v.Why[0].From, most, 0.02*most)
}
