package advise_test

import (
	"math"
	"testing"

	"brimline/advise"
)

// Leaving with two pegs and no check: the odds are those of the mistakes that spoil the piece, and
// what is bought makes the order ready once it is read.
func TestLeaveNow(t *testing.T) {
	s := twoPegs(9, 18, 1, 0.002)
	sol := s.solve(t)
	l := advise.Leave(sol, listed(sol), advise.Odd{}, []advise.Order{s.shape(sol)}, s.options())[0]
	v := advise.Judge(sol, listed(sol), advise.Odd{}, s.shape(sol), 1)
	if l.State != v.State || l.Order != "shape" {
		t.Errorf("%s, %s", l.State, v.State)
	}
	if want := 1 - math.Exp(-v.Unseen); math.Abs(l.Odds-want) > 0.03 {
		t.Errorf("odds %.3f, want about %.3f", l.Odds, want)
	}
	if len(l.Ways) != 3 || l.Ways[0].Odds < l.Ways[2].Odds || len(l.Ways[0].Obs) == 0 || l.Ways[0].Code == "error" {
		t.Errorf("%+v", l.Ways)
	}
	if !l.Ready || len(l.Buy) < 5 || len(l.Buy) > 20 || math.Abs(l.Minutes-1.5*float64(len(l.Buy))) > 2 {
		t.Errorf("ready %v with %d readings in %.1f minutes", l.Ready, len(l.Buy), l.Minutes)
	}
	for _, b := range l.Buy {
		s.tie(b.Marks[0], b.Marks[1])
	}
	sol = s.solve(t)
	if v = advise.Judge(sol, listed(sol), advise.Odd{}, s.shape(sol), 1); v.Unseen > 0.02 {
		t.Errorf("after it: %s, unseen %.4f", v.State, v.Unseen)
	}
}

// A ready order has nothing to buy; a mark without a place is not to be had by minutes alone.
func TestLeaveReadyAndLeaveOpen(t *testing.T) {
	s := threePegs(4, 16, 0.5, 0.002)
	for i := range 8 {
		s.tie(s.rim[i], s.rim[i+8])
	}
	sol := s.solve(t)
	open := s.shape(sol)
	open.Asks[2].Func.Marks = []int{-1}
	list := advise.Leave(sol, listed(sol), advise.Odd{}, []advise.Order{s.shape(sol), open}, s.options())
	if l := list[0]; l.State != advise.Ready || len(l.Buy) > 0 || l.Minutes != 0 || !l.Ready || l.Odds > 0.01 {
		t.Errorf("%+v", l)
	}
	if l := list[1]; l.State != advise.Unfit || l.Ready || l.Ways[0].Code != "error" || l.Ways[0].Odds != 1 {
		t.Errorf("%+v", l)
	}
}
