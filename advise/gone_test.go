package advise_test

import (
	"math"
	"slices"
	"testing"

	"brimline/advise"
	"brimline/plane"
)

// Nothing is proposed to where a peg was before it was moved: here a third one that nothing has read
// but the two others, so that ties from it help most.
func TestNothingIsTapedToAMovedPeg(t *testing.T) {
	s := newScene(2, 1, 0.004, []plane.Point{{X: -3.2, Y: -5}, {X: 3.4, Y: -4.8}, {X: 0.4, Y: 5.2}}, oval(2, 14))
	for _, m := range append([]int{1, 2}, s.rim...) {
		s.tie(0, m)
		if m != 1 {
			s.tie(1, m)
		}
	}
	const third = 2
	to := func() (any, exposes bool) {
		sol := s.solve(t)
		list := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Alone = 30, true })
		for _, w := range advise.Weakest(sol, []advise.Order{s.shape(sol)}, s.options(), 6) {
			exposes = exposes || w.Expose != nil && slices.Contains(w.Expose.Marks, third)
		}
		return slices.ContainsFunc(list, func(p advise.Proposal) bool { return slices.Contains(p.Marks, third) }), exposes
	}
	if any, exposes := to(); !any || !exposes {
		t.Fatalf("C is not proposed while it stands: %v, %v", any, exposes)
	}
	s.net.Gone = make([]bool, len(s.net.Marks))
	s.net.Gone[third] = true
	if any, exposes := to(); any || exposes {
		t.Errorf("a tape to where C was: proposed %v, to expose an error %v", any, exposes)
	}
}

// A mark whose only pegs are gone is fixed from other marks.
func TestMarksFixWhatPegsCannot(t *testing.T) {
	s := twoPegs(2, 14, 1, 0.004)
	last := s.rim[len(s.rim)-1]
	s.net.Obs = s.net.Obs[:len(s.net.Obs)-2] // both ties of the last mark
	s.net.Gone = make([]bool, len(s.net.Marks))
	s.net.Gone[1] = true
	s.truth.SetPoint(last, plane.Point{X: math.NaN(), Y: math.NaN()})
	fixes := 0
	for _, p := range next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Waiting = 30, []int{last} }) {
		if p.Why.Code != "fixes" {
			continue
		}
		fixes++
		if slices.Contains(p.Marks, 1) || !slices.Contains(p.Marks, last) {
			t.Errorf("%v would fix the last mark", p.Marks)
		}
	}
	if fixes != 2 {
		t.Errorf("%d ties fix a mark, 2 are needed", fixes)
	}
}

// A tie is said to control what the readings do not control, and to show smaller mistakes where they
// control both its ends.
func TestControlledMarksAreNotControlledAgain(t *testing.T) {
	codes := map[string]int{}
	for _, s := range []*scene{twoPegs(4, 16, 0.5, 0.002), threePegs(4, 16, 0.5, 0.006)} {
		sol := s.solve(t)
		firm := sol.InnerFrame().Hidden().Controlled
		order := s.shape(sol)
		order.Unseen = 1e-12 // never ready
		o := s.options()
		o.Count = 12
		for _, p := range advise.Next(sol, listed(sol), advise.Odd{}, []advise.Order{order}, o) {
			codes[p.Why.Code]++
			for _, m := range p.Why.Marks {
				if p.Why.Code == "control" && firm[m] {
					t.Errorf("%v would control %d, which is controlled", p.Marks, m)
				}
			}
		}
	}
	if codes["control"] < 3 || codes["smaller"] < 3 {
		t.Errorf("reasons: %v", codes)
	}
}
