package adjust_test

import (
	"context"
	"math"
	"testing"

	"brimline/adjust"
	"brimline/network"
)

// written is the network with other values, parts out (by leaving the reading out whole) and checks
// that take part, written anew instead of varied.
func written(s *adjust.Solution, c adjust.Change) *network.Network {
	n := *s.Net
	n.Obs = append([]network.Obs(nil), n.Obs...)
	for i := range n.Obs {
		n.Obs[i].Values = append([]float64(nil), n.Obs[i].Values...)
		if c.Joint {
			n.Obs[i].Check = false
		}
	}
	for k, p := range c.Parts {
		i := s.ObsOf(p)
		n.Obs[i].Values[p-s.First[i]] = c.Values[k]
		n.Obs[i].Computed = n.Obs[i].Computed || c.Held
	}
	for _, p := range c.Out {
		n.Obs[s.ObsOf(p)].Use = false
	}
	return &n
}

// variations of a pool with two checks: whole readings out, other values, both, checks taking part,
// another beginning.
func variations(s *adjust.Solution) map[string]adjust.Change {
	tie := func(i int) int { return s.First[i] }
	near := append(network.State(nil), s.X...)
	for i := 4; i < len(near); i++ {
		near[i] += 0.02 * float64(i%3-1)
	}
	values := []float64{s.Net.Obs[4].Values[0] + 0.3, s.Net.Obs[9].Values[0] - 0.1}
	return map[string]adjust.Change{
		"nothing":                 {},
		"two out":                 {Out: []int{tie(3), tie(8)}},
		"other values":            {Parts: []int{tie(4), tie(9)}, Values: values},
		"out and other values":    {Out: []int{tie(6)}, Parts: []int{tie(4), tie(9)}, Values: values},
		"checks taking part":      {Joint: true},
		"checks and one out":      {Joint: true, Out: []int{tie(5)}},
		"from elsewhere":          {From: near, Out: []int{tie(5)}},
		"values where none holds": {Held: true, Parts: []int{tie(4), tie(9)}, Values: values},
	}
}

// Try and Again are what solving a network made so from the start gives.
func TestVariationsAgainstWrittenAnew(t *testing.T) {
	for seed := range uint64(3) {
		m := pool(150+seed, 8, 1, seed%2 == 0)
		for _, pair := range [][]int{{3, 7}, {5, 9}} {
			m.tie(pair[0], pair[1], 0.004).Check = true
		}
		s := m.solve(t)
		before := append(network.State(nil), s.X...)
		for name, c := range variations(s) {
			want, _ := solve(t, written(s, c), s.X)
			got := s.Again(context.Background(), c)
			if !got.Converged || got.Rows != want.Rows || got.Unknowns != want.Unknowns || got.Redundancy != want.Redundancy {
				t.Errorf("%s: converged %v, %d rows, %d unknowns; anew %d and %d", name, got.Converged, got.Rows, got.Unknowns, want.Rows, want.Unknowns)
				continue
			}
			near(t, name+": sum of squares", got.Cost, want.Cost, 1e-6*(1+want.Cost))
			for i, v := range want.X {
				near(t, name+": coordinate", got.X[i], v, 2e-8)
			}
			for p := range want.W {
				near(t, name+": redundancy", got.Redund[p], want.Redund[p], 1e-6)
				if want.Own[p] > 0.02 {
					near(t, name+": w", got.W[p], want.W[p], 1e-4*(1+math.Abs(want.W[p])))
				}
			}
			if c.Held {
				continue // Try knows nothing of what is held otherwise
			}
			cost, x, settled := s.Try(context.Background(), c)
			if !settled {
				t.Errorf("%s: not settled", name)
			}
			near(t, name+": sum of squares tried", cost, want.Cost, 1e-6*(1+want.Cost))
			near(t, name+": place tried", x.Point(6).Dist(want.X.Point(6)), 0, 2e-8)
		}
		for i, v := range before {
			if s.X[i] != v {
				t.Fatal("a variation moved the solution")
			}
		}
	}
}

// One part of an offset or a set-up's point out: the other part stays, by full matrices at the place
// of the variation.
func TestOnePartOut(t *testing.T) {
	for seed := range uint64(3) {
		s := pool(160+seed, 9, 1, true).solve(t)
		for i := range s.Net.Obs {
			if _, ok := s.Net.Obs[i].Kind.(network.Offset); !ok {
				continue
			}
			for k := range 2 {
				got := s.Again(context.Background(), adjust.Change{Out: []int{s.First[i] + k}})
				if got.Out[s.First[i]+1-k] || got.Rows != s.Rows-1 || got.Redundancy != s.Redundancy-1 {
					t.Fatalf("reading %d part %d: %d rows of %d", i, k, got.Rows, s.Rows)
				}
				d := modelOf(t, got.Net, got.X, got.Base, taking(got))
				for _, v := range d.step(d.y, len(s.X)) {
					near(t, "the step that is left", v, 0, 1e-8)
				}
				for p, in := range d.member {
					if in {
						near(t, "redundancy", got.Redund[p], d.p.At(d.at[p], d.at[p]), 1e-7)
					}
				}
			}
		}
	}
}

// A variation ends where its context does, and the solution says so.
func TestVariationIsCancelled(t *testing.T) {
	s := pool(1, 6, 1, false).solve(t)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if s.Again(ctx, adjust.Change{Out: []int{4}}) != nil {
		t.Error("Again gives a solution although it was cancelled")
	}
	if _, _, settled := s.Try(ctx, adjust.Change{Out: []int{4}}); settled {
		t.Error("Try says that it settled although it was cancelled")
	}
}
