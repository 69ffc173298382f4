package adjust_test

import (
	"context"
	"math"
	"testing"

	"brimline/adjust"
	"brimline/network"
)

// partly chooses what a test leaves out: one part of an offset, an instrument's point whole, a tie.
func partly(s *adjust.Solution) (out [][]int) {
	seen := map[string]int{}
	for i := range s.Net.Obs {
		name := s.Net.Obs[i].Kind.Name()
		p := s.First[i]
		if !(s.Redund[p] > 0.25) || seen[name] >= 3 {
			continue
		}
		seen[name]++
		switch name {
		case "tie":
			out = append(out, []int{p})
		case "offset":
			out = append(out, []int{p + seen[name]%2})
		case "seen":
			out = append(out, []int{p, p + 1})
		}
	}
	return out
}

// What a part that is left out would have were it alone put back (an instrument's point whole), by
// a solution with it put back. The noise is a thousandth of what is stated, so that both solutions
// are of one linear problem.
func TestPutBackAlone(t *testing.T) {
	kinds := map[string]int{}
	for seed := range uint64(6) {
		m := pool(80+seed, 9, 1e-3, true)
		s := m.solve(t)
		drop := partly(s)
		var all []int
		for _, ps := range drop {
			all = append(all, ps...)
		}
		left := s.Again(context.Background(), adjust.Change{Out: all})
		for k, ps := range drop {
			var others []int
			for l, q := range drop {
				if l != k {
					others = append(others, q...)
				}
			}
			back := s.Again(context.Background(), adjust.Change{Out: others})
			kinds[s.Net.Obs[s.ObsOf(ps[0])].Kind.Name()]++
			for _, p := range ps {
				if !left.Out[p] || back.Out[p] {
					t.Fatalf("part %d: out %v, put back %v", p, left.Out[p], !back.Out[p])
				}
				near(t, "redundancy", left.Redund[p], back.Redund[p], 1e-5)
				if back.Redund[p] < adjust.LeastRed { // nothing else of this group is left to check it
					if !math.IsNaN(left.Detectable[p]) {
						t.Errorf("part %d: nothing checks it, and detectable is %g", p, left.Detectable[p])
					}
					continue
				}
				near(t, "detectable", left.Detectable[p], back.Detectable[p], 1e-5)
				near(t, "residual", left.Residual[p], back.Residual[p], 1e-5*left.SD[p])
				near(t, "adjusted", left.Adjusted[p], back.Adjusted[p], 1e-5*left.SD[p])
				near(t, "w", left.W[p], back.W[p], 2e-5)
				if math.Abs(back.W[p]) < 1e-6 {
					t.Errorf("part %d has no w: the test compares nothing", p)
				}
			}
		}
	}
	if kinds["tie"] < 10 || kinds["offset"] < 5 || kinds["seen"] < 10 {
		t.Errorf("too few of a kind: %v", kinds)
	}
}

// The same for a reading that is struck, with noise as stated: its redundancy is that of the
// solution that holds it to the little that the place differs, and its w by prediction (LS-09 says
// that both are one).
func TestStruckShowsWhatItWouldHave(t *testing.T) {
	for seed := range uint64(4) {
		m := pool(90+seed, 8, 1, true)
		s := m.solve(t)
		for _, i := range []int{4, 7, len(m.n.Obs) - 1} {
			m.n.Obs[i].Use = false
			struck := m.solve(t)
			m.n.Obs[i].Use = true
			for p := s.First[i]; p < s.First[i+1]; p++ {
				near(t, "redundancy", struck.Redund[p], s.Redund[p], 2e-3)
				near(t, "residual", struck.Residual[p], s.Residual[p], 0.03*s.SD[p])
			}
			if struck.Rows != s.Rows-len(m.n.Obs[i].Values) || struck.Redundancy != s.Redundancy-len(m.n.Obs[i].Values) {
				t.Errorf("seed %d: %d rows, redundancy %d, were %d and %d", seed, struck.Rows, struck.Redundancy, s.Rows, s.Redundancy)
			}
		}
	}
}

// The redundancies of the parts that take part sum to the redundancy of the solution; parts left
// out, struck readings and checks that disagree do not count.
func TestRedundanciesSum(t *testing.T) {
	for seed := range uint64(6) {
		m := pool(100+seed, 8, 1, seed%2 == 0)
		m.n.Obs[5].Use = false
		m.read(network.Tie{}, -1, []int{3, 6}, 0.004).Check = true
		bad := m.read(network.Tie{}, -1, []int{4, 8}, 0.004)
		bad.Check, bad.Values[0] = true, bad.Values[0]+2
		s := m.solve(t).Again(context.Background(), adjust.Change{Out: []int{7, 9}})
		own, proven, agreeing := 0.0, 0.0, 0
		for i := range s.Net.Obs {
			for p := s.First[i]; p < s.First[i+1]; p++ {
				if s.In[i] && !s.Out[p] {
					own += s.Own[p]
				}
				if s.In[i] && !s.Out[p] || s.Agrees[i] {
					proven += s.Redund[p]
				}
			}
			if s.Agrees[i] {
				agreeing++
			}
		}
		if agreeing != 1 {
			t.Fatalf("seed %d: %d checks agree", seed, agreeing)
		}
		near(t, "sum of redundancies", own, float64(s.Redundancy), 1e-6)
		near(t, "sum with the check", proven, float64(s.Redundancy+1), 1e-6)
	}
}
