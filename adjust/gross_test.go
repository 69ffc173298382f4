package adjust_test

import (
	"context"
	"testing"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/locate"
	"brimline/network"
)

// simulated is the network of a simulated visit and its truth as a state of marks; set-ups get
// the poses of the case.
func simulated(t *testing.T, c simulate.Case) (*network.Network, network.State) {
	t.Helper()
	b, err := fieldbook.Parse("case.yaml", c.Book)
	if err != nil {
		t.Fatal(err)
	}
	n, _ := network.Build(&b, nil)
	x := n.NewState()
	for i, name := range n.Marks {
		x.SetPoint(i, c.Truth[name])
	}
	for _, s := range c.Setups {
		at := n.Offset[n.SetupBlock(n.SetupAt[s.Name])]
		x[at], x[at+1], x[at+2] = s.Pose.T.X, s.Pose.T.Y, s.Pose.Angle()
	}
	return n, x
}

// checked is the first reading from some place on that others check: without that, an error of a
// metre shows nowhere and may turn a mark to its mirror image.
func checked(t *testing.T, n *network.Network, truth network.State, from int) int {
	t.Helper()
	s, _ := solve(t, n, truth)
	for k := range n.Obs {
		i := (from + k) % len(n.Obs)
		if s.Redund[s.First[i]] > 0.05 {
			return i
		}
	}
	t.Fatal("no reading is checked by others")
	return -1
}

// One checked reading is wrong by a metre: the solution from nothing ends where that from the true
// places ends, for every shape and way of measuring.
func TestOneMetreFromNothing(t *testing.T) {
	tried := 0
	for _, shape := range simulate.Shapes {
		for _, method := range simulate.Methods {
			for seed := range uint64(6) {
				c := simulate.Pool(40+seed, shape, method, simulate.Options{})
				n, truth := simulated(t, c)
				wrong := checked(t, n, truth, int(seed)*7+5)
				n.Obs[wrong].Values[0]++
				best, _ := adjust.Solve(context.Background(), n, truth, adjust.Options{})
				start := locate.Find(n)
				got, found := adjust.Solve(context.Background(), n, start.X, adjust.Options{Fallback: start.X})
				tried++
				if !got.Converged || got.Rows != best.Rows {
					t.Errorf("%s, %s, seed %d: converged %v, %d rows of %d: %v", shape.Name(), method.Name(), seed, got.Converged, got.Rows, best.Rows, found)
					continue
				}
				worst := 0.0
				for m := range n.Marks {
					worst = max(worst, got.X.Point(m).Dist(best.X.Point(m)))
				}
				if worst > 1e-6 {
					t.Errorf("%s, %s, seed %d: reading %d wrong by 1 m: marks up to %.3f m apart, cost %.1f from nothing, %.1f from the truth", shape.Name(), method.Name(), seed, wrong+1, worst, got.Cost, best.Cost)
				}
			}
		}
	}
	if tried < 150 {
		t.Errorf("only %d networks tried", tried)
	}
}
