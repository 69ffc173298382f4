package adjust

import (
	"math"
	"testing"

	"brimline/internal/checks"

	"gonum.org/v1/gonum/stat/distuv"
)

// The second method is gonum's chi-square distribution.
func TestChiQuantileAgainstGonum(t *testing.T) {
	for _, k := range []float64{1, 2, 3, 4, 7, 13, 20, 55, 200, 3000, 100000} {
		for _, p := range []float64{0.001, 0.025, 0.5, 0.95, 0.975, 0.999} {
			want := distuv.ChiSquared{K: k}.Quantile(p)
			if got := chiQuantile(p, k); math.Abs(got-want) > 1e-7*want+1e-9 {
				t.Errorf("chi-square %g quantile of %g: %.10g, gonum says %.10g", k, p, got, want)
			}
		}
	}
}

// NIST/SEMATECH e-Handbook 1.3.6.7.4 (item LS-10).
func TestChiQuantileAgainstTable(t *testing.T) {
	item := checks.Get(t, "LS-10")
	t.Log(item.Source)
	dof := item.Inputs.List("dof")
	low, high := item.Expected.List("lower_975"), item.Expected.List("upper_025")
	for i, k := range dof {
		if d := math.Abs(chiQuantile(0.025, k) - low[i]); d > item.Tolerance("lower_975") {
			t.Errorf("lower point of %g: off by %g", k, d)
		}
		if d := math.Abs(chiQuantile(0.975, k) - high[i]); d > item.Tolerance("upper_025") {
			t.Errorf("upper point of %g: off by %g", k, d)
		}
	}
}

// Baarda 1968 (item LS-08): the constants of the w-test.
func TestSnoopingConstants(t *testing.T) {
	item := checks.Get(t, "LS-08")
	n := distuv.UnitNormal
	alpha, beta := item.Inputs.Number("alpha0"), item.Inputs.Number("beta0")
	w := n.Quantile(1 - alpha/2)
	shift := w + n.Quantile(1-beta)
	for _, c := range []struct {
		name      string
		got, want float64
	}{{"w_critical", WLimit, w}, {"delta0", Shift, shift}, {"lambda0", Shift * Shift, shift * shift}} {
		if math.Abs(c.got-c.want) > 0.02 || math.Abs(c.want-item.Expected.Number(c.name)) > item.Tolerance(c.name) {
			t.Errorf("%s: constant %g, from the normal distribution %g", c.name, c.got, c.want)
		}
	}
}
