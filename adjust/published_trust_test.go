package adjust_test

import (
	"context"
	"math"
	"testing"

	"brimline/adjust"
	"brimline/internal/checks"

	"gonum.org/v1/gonum/stat/distuv"
)

// snooped is the level net of LS-01 (Ghilani, Adjustment Computations; source status memory) with
// the standard deviation and the blunder of LS-09 (definitions after Baarda 1968; source status
// definition), before and after the blunder.
func snooped(t *testing.T) (item checks.Item, clean, wrong *adjust.Solution, first, line int) {
	t.Helper()
	item, net := checks.Get(t, "LS-09"), checks.Get(t, "LS-01")
	blunder := item.Inputs.Object("blunder")
	line = int(blunder["observation"]) - 1
	build := func(by float64) *adjust.Solution {
		p := levels(net, net.Inputs.Object("fixed_ft"), "observations_ft", []string{"A", "B", "C"}, func(int) float64 { return item.Inputs.Number("sigma_each") })
		first = len(p.n.Marks) - 1
		p.n.Obs[first+line].Values[0] += by
		s, _ := p.net(t)
		return s
	}
	return item, build(0), build(blunder["change"]), first, line
}

// The residual space of LS-09 says what the item says, at any place: the net is linear. Its w is
// read minus adjusted, the item's the other way round.
func TestPublishedResidualSpace(t *testing.T) {
	item, clean, wrong, first, line := snooped(t)
	full := distuv.UnitNormal.Quantile(1-item.Inputs.Number("alpha0")/2) + distuv.UnitNormal.Quantile(1-item.Inputs.Number("beta0"))
	for _, lift := range []float64{0, 3} {
		x := append([]float64(nil), clean.X...)
		for m := 2; m < len(clean.Net.Marks); m++ {
			x[2*m] += lift
		}
		sp := clean.Space(x, adjust.Change{}, taking(clean))
		var r, w, mdb []float64
		for p := first; p < len(sp.R); p++ {
			_, sd := sp.Estimate(p)
			r, w, mdb = append(r, sp.R[p]), append(w, -sp.W(p)), append(mdb, full*sd)
		}
		item.Compare("redundancy", r...)
		item.Compare("w", w...)
		item.Compare("mdb", mdb...)
	}
	var w []float64
	worst, at := 0.0, 0
	for p, v := range wrong.W[first:] {
		if w = append(w, v); math.Abs(v) > worst {
			worst, at = math.Abs(v), p+1
		}
	}
	item.Compare("w_with_blunder", w...)
	item.Compare("largest_w_observation", float64(at))
	if at != line+1 {
		t.Errorf("the largest w is that of line %d, the blunder in %d", at, line+1)
	}
}

// After dropping the blunder of LS-09 by a variation no w exceeds the limit, and the size that the
// others say it has is the one planted, within 3 of its own sd.
func TestPublishedBlunderDropped(t *testing.T) {
	item, clean, wrong, first, line := snooped(t)
	after := wrong.Again(context.Background(), adjust.Change{Out: []int{first + line}})
	for p, w := range after.W[first:] {
		if p != line && math.Abs(w) > adjust.WLimit {
			t.Errorf("line %d has w %g without the blunder", p+1, w)
		}
	}
	near(t, "w of the line put back", after.W[first+line], item.Expected.List("w_with_blunder")[line], item.Tolerance("w_with_blunder"))
	e, sd := wrong.Space(wrong.X, adjust.Change{}, taking(wrong)).Estimate(first + line)
	was, _ := clean.Space(clean.X, adjust.Change{}, taking(clean)).Estimate(first + line)
	near(t, "size of the blunder", e-was, item.Inputs.Object("blunder")["change"], 1e-9)
	near(t, "its sd", sd, item.Inputs.Number("sigma_each")/math.Sqrt(item.Expected.List("redundancy")[line]), 1e-5)
}

// Elementary Surveying, 14th edition, problem 5.12: a level loop with its misclosure shared equally by
// the set-ups (L-02; source status inputs-found, the answers computed for the collection). Least
// squares with equal weights from the bench mark back to it does the same.
func TestPublishedLoopOfSetups(t *testing.T) {
	item := checks.Get(t, "L-02")
	start, back, fore := item.Inputs.Number("start"), item.Inputs.List("backsights"), item.Inputs.List("foresights")
	n := len(back)
	from := make([]float64, 2*(n-1))
	for i := range from {
		from[i] = start * float64(1-i%2)
	}
	p := newProblem(from...)
	for m := 2; m < n+1; m++ {
		p.hold(m, 0, 1)
	}
	raw, h := []float64{}, start
	for k := range n {
		h += back[k] - fore[k]
		raw = append(raw, h)
		known, marks, signs := 0.0, []int{}, []float64{}
		for side, at := range []int{k - 1, k} { // marks 2 … are the points between
			sign := float64(2*side - 1)
			if at < 0 || at == n-1 {
				known += sign * start
			} else {
				marks, signs = append(marks, 2+at), append(signs, sign)
			}
		}
		p.row(back[k]-fore[k], 0.002, row{func(v, jac []float64) float64 {
			sum := known
			for i, s := range signs {
				jac[2*i], jac[2*i+1] = s, 0
				sum += s * v[2*i]
			}
			return sum
		}}, marks...)
	}
	s, _ := p.net(t)
	adjusted, _ := heights(s)
	item.Compare("raw", raw...)
	item.Compare("misclosure_m", raw[n-1]-start)
	item.Compare("adjusted", append(adjusted, start)...)
	if s.Redundancy != 1 {
		t.Errorf("redundancy %d of a loop", s.Redundancy)
	}
}
