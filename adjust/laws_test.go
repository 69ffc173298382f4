package adjust_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/network"
	"brimline/plane"
)

// sameStatistics: the same figures for the same parts, order[i] being the observation of `again` that
// observation i of `one` became; lengths count by scale.
func sameStatistics(t *testing.T, what string, one, again *adjust.Solution, order []int, scale float64) {
	t.Helper()
	near(t, what+": cost", again.Cost, one.Cost, 1e-8*(1+one.Cost))
	if one.Rows != again.Rows || one.Unknowns != again.Unknowns {
		t.Errorf("%s: %d rows and %d unknowns, were %d and %d", what, again.Rows, again.Unknowns, one.Rows, one.Unknowns)
	}
	for i := range one.Net.Obs {
		j := i
		if order != nil {
			j = order[i]
		}
		for k := range one.Net.Obs[i].Values {
			p, q := one.First[i]+k, again.First[j]+k
			near(t, what+": redundancy", again.Redund[q], one.Redund[p], 1e-7)
			if one.Redund[p] > 0.02 {
				near(t, what+": |w|", math.Abs(again.W[q]), math.Abs(one.W[p]), 1e-6)
				near(t, what+": detectable", again.Detectable[q], scale*one.Detectable[p], 1e-7*scale)
			}
		}
	}
	for a := range one.Net.Marks {
		for b := range a {
			near(t, what+": distance", again.X.Point(a).Dist(again.X.Point(b)), scale*one.X.Point(a).Dist(one.X.Point(b)), 1e-8*scale)
		}
		m1, n1, _ := adjust.Axes(spread(one.MarkCov(a)))
		m2, n2, _ := adjust.Axes(spread(again.MarkCov(a)))
		near(t, what+": ellipse", m2, scale*m1, 1e-6*scale*m1+2e-8) // a held mark keeps some 1e-9
		near(t, what+": ellipse", n2, scale*n1, 1e-5*scale*m1+2e-8)
	}
}

func spread(c [3]float64) (a, b, d float64) { return c[0], c[1], c[2] }

// A start shifted and turned as a whole changes nothing, and the result is in the inner datum.
func TestShiftAndTurn(t *testing.T) {
	for seed := range uint64(4) {
		m := pool(seed, 8, 1, seed%2 == 0)
		one := m.solve(t)
		move := plane.Turned(2.1+float64(seed), plane.Point{X: 300, Y: -40})
		start := append(network.State(nil), m.truth...)
		for b := range len(m.n.Offset) - 1 {
			at := m.n.Offset[b]
			p := move.Apply(plane.Point{X: start[at], Y: start[at+1]})
			start[at], start[at+1] = p.X, p.Y
			if m.n.Dim(network.Unknown(b)) > 2 {
				start[at+2] += move.Angle()
			}
		}
		again, _ := solve(t, m.n, start)
		sameStatistics(t, "moved", one, again, nil, 1)
		if still, _ := solve(t, m.n, m.truth); again.Iterations != still.Iterations {
			t.Errorf("%d steps from the moved start, %d from the same unmoved", again.Iterations, still.Iterations)
		}
		for i := range m.n.Marks {
			near(t, "place", again.X.Point(i).Dist(one.X.Point(i)), 0, 1e-8)
		}
		near(t, "origin", again.X.Point(0).Len(), 0, 1e-9)
		near(t, "second on +x", again.X[3], 0, 1e-9)
		if again.X[2] < 0 {
			t.Error("the second base mark lies on −x")
		}
	}
}

// The order of readings says nothing.
func TestShuffle(t *testing.T) {
	for seed := range uint64(4) {
		m := pool(seed, 8, 1, seed%2 == 0)
		one := m.solve(t)
		order := rand.New(rand.NewPCG(seed, 1)).Perm(len(m.n.Obs))
		n := *m.n
		n.Obs = make([]network.Obs, len(order))
		for i, j := range order {
			n.Obs[j] = m.n.Obs[i]
		}
		again, _ := solve(t, &n, m.truth)
		sameStatistics(t, "shuffled", one, again, order, 1)
	}
}

// edited is the network with every observation changed.
func edited(n *network.Network, edit func(o *network.Obs)) *network.Network {
	out := *n
	out.Obs = append([]network.Obs(nil), n.Obs...)
	for i := range out.Obs {
		o := &out.Obs[i]
		o.Values, o.SD = append([]float64(nil), o.Values...), append([]float64(nil), o.SD...)
		edit(o)
	}
	return &out
}

// All lengths and sd in another unit: w and redundancy stay, lengths scale.
func TestScale(t *testing.T) {
	for seed := range uint64(4) {
		m := pool(seed, 8, 1, seed%2 == 0)
		one := m.solve(t)
		for _, f := range []float64{3, 0.2} {
			start := append(network.State(nil), m.truth...)
			for b := range len(m.n.Offset) - 1 {
				start[m.n.Offset[b]] *= f
				start[m.n.Offset[b]+1] *= f
			}
			n := edited(m.n, func(o *network.Obs) {
				for k := range o.Values {
					o.Values[k] *= f
					o.SD[k] *= f
				}
			})
			again, _ := solve(t, n, start)
			sameStatistics(t, "scaled", one, again, nil, f)
		}
	}
}

// The mirrored figure read by mirrored readings: offsets on the other hand, sights with the other
// y, ties as they are.
func TestMirror(t *testing.T) {
	for seed := range uint64(4) {
		m := pool(seed, 8, 1, seed%2 == 0)
		one := m.solve(t)
		start := append(network.State(nil), m.truth...)
		for b := range len(m.n.Offset) - 1 {
			start[m.n.Offset[b]+1] *= -1
			if m.n.Dim(network.Unknown(b)) > 2 {
				start[m.n.Offset[b]+2] *= -1
			}
		}
		n := edited(m.n, func(o *network.Obs) {
			if len(o.Values) == 2 {
				o.Values[1] *= -1
			}
		})
		again, _ := solve(t, n, start)
		sameStatistics(t, "mirrored", one, again, nil, 1)
		for i := range m.n.Marks {
			near(t, "mirrored y", again.X[2*i+1], -one.X[2*i+1], 1e-8)
		}
	}
}

// A sight with y downward is the same reading with the other sign.
func TestFlip(t *testing.T) {
	m := pool(4, 8, 1, true)
	one := m.solve(t)
	n := edited(m.n, func(o *network.Obs) {
		if _, ok := o.Kind.(network.Seen); ok {
			o.Flip = true
			o.Values[1] *= -1
		}
	})
	again, _ := solve(t, n, m.truth)
	sameStatistics(t, "flipped", one, again, nil, 1)
}

// All sd doubled: the same places, a quarter of the cost, every ellipse twice as large.
func TestReweight(t *testing.T) {
	m := pool(6, 8, 1, true)
	one := m.solve(t)
	again, _ := solve(t, edited(m.n, func(o *network.Obs) {
		for k := range o.SD {
			o.SD[k] *= 2
		}
	}), m.truth)
	near(t, "cost", 4*again.Cost, one.Cost, 1e-8*one.Cost)
	for i := range m.n.Marks {
		near(t, "place", again.X.Point(i).Dist(one.X.Point(i)), 0, 1e-8)
		near(t, "variance", again.MarkCov(i)[2], 4*one.MarkCov(i)[2], 1e-7*one.MarkCov(i)[2]+1e-15)
	}
}

// Every reading twice with √2 of its sd is the same solution with twice the rows.
func TestTwice(t *testing.T) {
	m := pool(1, 8, 1, false)
	one := m.solve(t)
	n := edited(m.n, func(o *network.Obs) { o.SD[0] *= math.Sqrt2 })
	n.Obs = append(n.Obs, n.Obs...)
	again, _ := solve(t, n, m.truth)
	if again.Redundancy != one.Redundancy+one.Rows {
		t.Errorf("redundancy %d, want %d", again.Redundancy, one.Redundancy+one.Rows)
	}
	near(t, "cost", again.Cost, one.Cost, 1e-8*one.Cost)
	for i := range m.n.Marks {
		near(t, "place", again.X.Point(i).Dist(one.X.Point(i)), 0, 1e-8)
		near(t, "variance", again.MarkCov(i)[2], one.MarkCov(i)[2], 1e-7*one.MarkCov(i)[2]+1e-15)
	}
}
