package advise_test

import (
	"math"
	"testing"

	"brimline/advise"
)

// Where all marks are known well and nothing is wrong but that the readings disagree more than their
// precision allows, the ties that do so most are proposed again; not where they agree, nor where a
// common factor was put on the precision.
func TestDisagreeingTiesAreReadAgain(t *testing.T) {
	asked := 0
	for seed := range uint64(30) {
		for _, noise := range []float64{0.5, 1.8} {
			s := threePegs(seed, 10, noise, 0.002)
			sol := s.solve(t)
			if noise > 1 && sol.Cost <= sol.ChiHigh {
				continue
			}
			order := s.shape(sol)
			v := advise.Judge(sol, listed(sol), advise.Odd{}, order, 1)
			if v.State != advise.Ready {
				continue
			}
			asked++
			got := advise.Next(sol, listed(sol), advise.Odd{}, []advise.Order{order}, s.options())
			if noise < 1 {
				if len(got) > 0 {
					t.Errorf("seed %d: readings that agree: %v proposed", seed, got[0].Marks)
				}
				continue
			}
			o := s.options()
			o.Factor = 1.1
			if more := advise.Next(sol, listed(sol), advise.Odd{}, []advise.Order{order}, o); len(more) > 0 && more[0].Why.Code == "repeat" && more[0].Gain == got[0].Gain {
				t.Errorf("seed %d: read again though the precision was scaled", seed)
			}
			worst := 0.0
			for i := range sol.Net.Obs {
				o := &sol.Net.Obs[i]
				if base := o.Marks[0] == 0 && o.Marks[1] == 1; !base { // that was read three times
					worst = math.Max(worst, math.Abs(sol.W[sol.First[i]]))
				}
			}
			if len(got) == 0 || got[0].Why.Code != "repeat" {
				t.Fatalf("seed %d: %v", seed, got)
			}
			near(t, "gain", got[0].Gain, math.Erf(worst/math.Sqrt2), 1e-12)
		}
	}
	if asked < 20 {
		t.Errorf("only %d asked", asked)
	}
}
