package advise_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/advise"
	"brimline/plane"
)

// A mark that waits although it has ties from both pegs, which contradict each other: the peg read
// least often is read again, and a peg read thrice no more.
func TestContradictingTiesAreReadAgain(t *testing.T) {
	s := newScene(1, 1, 0.002, []plane.Point{{X: -3.2, Y: -5}, {X: 3.4, Y: -4.8}}, oval(1, 8))
	s.tie(0, 1)
	for _, m := range s.rim {
		s.tie(0, m)
		s.tie(1, m)
	}
	m := s.rim[7]
	s.rim = s.rim[:7]
	for i, want := range [][]int{{0, m}, {1, m}, {0, m}, {1, m}, nil} {
		at := s.truth.Point(m)
		s.truth.SetPoint(m, plane.Point{X: math.NaN(), Y: math.NaN()})
		p := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Waiting = []int{m} })
		s.truth.SetPoint(m, at)
		if want == nil {
			if len(p) == 0 || p[0].Why.Code == "fixes" {
				t.Errorf("after %d: %v", i, codes(p))
			}
			break
		}
		if p[0].Why.Code != "fixes" || !slices.Equal(p[0].Marks, want) || p[1].Why.Code == "fixes" {
			t.Fatalf("after %d: %+v", i, p[0])
		}
		s.tie(want[0], want[1])
	}
}

// A suspect reading is proposed once: where it was read again, the list goes on to what else helps,
// and the verdict says that it is to be struck.
func TestSuspectReadAgain(t *testing.T) {
	s := twoPegs(1, 10, 1, 0.002)
	s.net.Obs[7].Values[0] += 0.3
	s.net.Obs[7].Use = false
	s.tie(s.net.Obs[7].Marks[1], s.rim[0])
	odd := advise.Odd{Suspect: []int{7}}
	if p := next(t, s, odd, nil); p[0].Why.Code != "again" {
		t.Fatalf("%v", codes(p))
	}
	sol := s.solve(t)
	v := advise.Judge(sol, listed(sol), odd, s.shape(sol), 1)
	if v.State != advise.Unfit || v.Why[0].Code != "suspect" || v.Why[0].Again || strings.Contains(v.Why[0].Text(names()), "strike") {
		t.Errorf("before: %s %+v", v.State, v.Why)
	}
	s.tie(s.net.Obs[7].Marks[1], s.net.Obs[7].Marks[0]) // the other way round
	p := next(t, s, odd, func(o *advise.Options) { o.Count = 20 })
	if len(p) < 3 || slices.Contains(codes(p), "again") {
		t.Errorf("%v", codes(p))
	}
	for _, q := range p {
		s.tie(q.Marks[0], q.Marks[1])
	}
	sol = s.solve(t)
	v = advise.Judge(sol, listed(sol), odd, s.shape(sol), 1)
	if v.State != advise.Unfit || !v.Why[0].Again || !strings.Contains(v.Why[0].Text(names()), "reading 8 is suspect and was read again: strike it") {
		t.Errorf("after: %s %+v", v.State, v.Why)
	}
	if v = advise.Judge(sol, listed(sol), advise.Odd{}, s.shape(sol), 1); v.State != advise.Ready {
		t.Errorf("struck: %s %+v", v.State, v.Why)
	}
}
