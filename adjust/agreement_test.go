package adjust_test

import (
	"context"
	"math"
	"testing"

	"brimline/adjust"
	"brimline/network"
)

// checkedPool is a pool with two check tapes and a check offset, true and with noise as stated, and
// the same without them and with them as ordinary readings.
func checkedPool(seed uint64, noise float64) (without, with, holding *maker, from int) {
	build := func(count, check bool) (*maker, int) {
		m := pool(seed, 8, noise, true)
		from := len(m.n.Obs)
		for k, pair := range [][]int{{3, 7}, {5, 9}} {
			if o := m.tie(pair[0], pair[1], 0.003+0.001*float64(k)); count {
				o.Check = check
			}
		}
		if o := m.read(network.Offset{}, -1, []int{6, 0, 2}, 0.006, 0.004); count {
			o.Check = check
		}
		if !count {
			m.n.Obs = m.n.Obs[:from]
		}
		return m, from
	}
	without, from = build(false, false)
	with, _ = build(true, true)
	holding, _ = build(true, false)
	return without, with, holding, from
}

// Checks move nothing: coordinates, sum of squares, w and reference sd are those without them.
func TestChecksMoveNothing(t *testing.T) {
	for seed := range uint64(6) {
		without, with, _, from := checkedPool(120+seed, 1)
		one, two := without.solve(t), with.solve(t)
		for i, v := range one.X {
			near(t, "coordinate", two.X[i], v, 1e-12)
		}
		near(t, "sum of squares", two.Cost, one.Cost, 1e-9)
		if one.Rows != two.Rows || one.Redundancy != two.Redundancy || one.ReferenceSD != two.ReferenceSD && math.Abs(one.ReferenceSD-two.ReferenceSD) > 1e-9 {
			t.Errorf("seed %d: rows %d and %d, redundancy %d and %d", seed, one.Rows, two.Rows, one.Redundancy, two.Redundancy)
		}
		for p := range one.W {
			near(t, "own redundancy", two.Own[p], one.Redund[p], 1e-9)
			if one.Redund[p] > 0.02 {
				near(t, "w", two.W[p], one.W[p], 1e-6)
			}
		}
		for _, q := range []int{3, 5, 8} {
			a, b := one.MarkCov(q), two.MarkCov(q)
			for k := range a {
				near(t, "covariance", b[k], a[k], 1e-12)
			}
		}
		for i := from; i < len(two.Net.Obs); i++ {
			if two.In[i] {
				t.Errorf("seed %d: check %d takes part", seed, i)
			}
		}
	}
}

// Checks that agree raise redundancy, detectable and hidden to what a solution that holds them says,
// though they take no part. Hidden is the move by the solution without them. The noise is a
// thousandth of what is stated: both solutions are then at one place.
func TestChecksProveAsIfHeld(t *testing.T) {
	raised := 0
	for seed := range uint64(6) {
		without, with, holding, from := checkedPool(130+seed, 1e-3)
		plain, s, held := without.solve(t), with.solve(t), holding.solve(t)
		joint := s.Again(context.Background(), adjust.Change{Joint: true})
		for i := range s.Net.Obs {
			if i >= from && !s.Agrees[i] {
				t.Fatalf("seed %d: check %d does not agree", seed, i)
			}
			for p := s.First[i]; p < s.First[i+1]; p++ {
				near(t, "redundancy", s.Redund[p], held.Redund[p], 2e-6)
				near(t, "redundancy jointly", joint.Redund[p], held.Redund[p], 2e-6)
				if held.Redund[p] > 0.02 {
					near(t, "detectable", s.Detectable[p], held.Detectable[p], 1e-4*held.Detectable[p])
				}
				if i < from && s.Redund[p] > plain.Redund[p]+0.05 {
					raised++
				}
			}
		}
		hiddenWith(t, s, plain, held)
	}
	if raised < 20 {
		t.Errorf("the checks raised only %d redundancies", raised)
	}
}

// hiddenWith compares the hidden error of a distance with the largest move that the detectable
// errors of the solution holding the checks cause where these take no part.
func hiddenWith(t *testing.T, s, plain, held *adjust.Solution) {
	t.Helper()
	f := distance(s, 4, 8)
	_, hidden, controlled := s.Ask(f)
	want, seen := 0.0, true
	for p := range plain.W {
		move := plain.Shift(adjust.Pattern{Parts: []int{p}, Size: []float64{1}})
		by := 0.0
		for k, m := range f.Marks {
			by += f.Grad[2*k]*move[2*m] + f.Grad[2*k+1]*move[2*m+1]
		}
		switch {
		case held.Redund[p] < adjust.LeastRed:
			seen = seen && math.Abs(by) <= adjust.Influence
		default:
			want = math.Max(want, math.Abs(by)*held.Detectable[p])
		}
	}
	if controlled != seen {
		t.Errorf("controlled %v, want %v", controlled, seen)
	} else if seen {
		near(t, "hidden", hidden, want, 1e-4*want)
	}
}

// A check agrees up to 3.29 of the sd of the difference, hypot(its own, that of its prediction), and
// disagrees from there on; one that disagrees proves nothing.
func TestChecksAgreeAtTheLimit(t *testing.T) {
	for seed := range uint64(4) {
		without, with, _, from := checkedPool(140+seed, 1)
		plain := without.solve(t)
		o := &with.n.Obs[from]
		sd, _, _ := plain.Ask(distance(plain, o.Marks[0], o.Marks[1]))
		both := math.Hypot(sd, o.SD[0])
		predicted := plain.X.Point(o.Marks[0]).Dist(plain.X.Point(o.Marks[1]))
		with.n.Obs = with.n.Obs[:from+1]
		for _, c := range []struct {
			off    float64
			agrees bool
		}{{-3.30, false}, {-3.28, true}, {0, true}, {3.28, true}, {3.30, false}, {400, false}} {
			o.Values[0] = predicted + c.off*both
			s := with.solve(t)
			near(t, "w of the check", s.W[s.First[from]], -c.off, 1e-4*(1+math.Abs(c.off)))
			near(t, "its prediction", s.Adjusted[s.First[from]], predicted, 1e-9)
			near(t, "its residual", s.Residual[s.First[from]], -c.off*both, 1e-6*(1+math.Abs(c.off)))
			if s.Agrees[from] != c.agrees {
				t.Errorf("seed %d: off by %v sd: agrees %v", seed, c.off, s.Agrees[from])
			}
			grown := false
			for p := range plain.W {
				grown = grown || s.Redund[p] > plain.Redund[p]+1e-3
				if !c.agrees {
					near(t, "redundancy beside a check that disagrees", s.Redund[p], plain.Redund[p], 1e-9)
				}
			}
			if grown != c.agrees {
				t.Errorf("seed %d: off by %v sd: redundancies grown %v", seed, c.off, grown)
			}
		}
	}
}
