package adjust_test

import (
	"math"
	"testing"

	"brimline/adjust"
	"brimline/internal/checks"

	"gonum.org/v1/gonum/stat/distuv"
)

// Ghilani, Adjustment Computations, unweighted and weighted level net (LS-01, LS-02).
func TestPublishedLevelNets(t *testing.T) {
	one := checks.Get(t, "LS-01")
	names := []string{"A", "B", "C"}
	p := levels(one, one.Inputs.Object("fixed_ft"), "observations_ft", names, func(int) float64 { return 1 })
	s, first := p.net(t)
	h, sd := heights(s)
	for k, n := range names {
		one.Compare(n, h[k])
		sd[k] *= s.ReferenceSD
	}
	one.Compare("residuals", s.Residual[first:]...)
	one.Compare("s0", s.ReferenceSD)
	one.Compare("sd", sd...)

	two := checks.Get(t, "LS-02")
	for _, factor := range []float64{1, 1.0 / 12} { // only the reference sd may know the factor
		w := two.Inputs.List("weights")
		p = levels(two, two.Inputs.Object("fixed_ft"), "observations_ft", names, func(i int) float64 { return 1 / math.Sqrt(factor*w[i]) })
		s, _ = p.net(t)
		h, _ = heights(s)
		for k, n := range names {
			two.Compare(n, h[k])
		}
		two.Compare("s0", s.ReferenceSD/math.Sqrt(factor))
	}
}

// A printed adjustment of a level loop with all its statistics (LS-03).
func TestPublishedLevelLoop(t *testing.T) {
	item := checks.Get(t, "LS-03")
	sigma := item.Inputs.Number("sigma_apriori_mm") / 1000
	p := levels(item, item.Inputs.Object("fixed_m"), "observations_m", []string{"4", "3", "2"}, func(int) float64 { return sigma })
	s, first := p.net(t)
	h, sd := heights(s)
	item.Compare("heights_4_3_2", h...)
	item.Compare("dof", float64(s.Redundancy))
	item.Compare("pvv_mm2", s.Cost*sigma*sigma*1e6)
	item.Compare("m0_aposteriori_mm", s.ReferenceSD*sigma*1000)
	for k := range sd {
		sd[k] *= 1000
	}
	item.Compare("sd_mm_from_apriori", sd...)
	worst, at := 0.0, 0
	for k, w := range s.W[first:] {
		if math.Abs(w) > worst {
			worst, at = math.Abs(w), k+1
		}
	}
	item.Compare("max_normalised_residual", worst)
	item.Compare("max_normalised_residual_obs", float64(at))
}

// Baarda's figures on LS-01, then with one blunder (LS-09).
func TestPublishedSnooping(t *testing.T) {
	item, net := checks.Get(t, "LS-09"), checks.Get(t, "LS-01")
	sigma := item.Inputs.Number("sigma_each")
	p := levels(net, net.Inputs.Object("fixed_ft"), "observations_ft", []string{"A", "B", "C"}, func(int) float64 { return sigma })
	s, first := p.net(t)
	item.Compare("redundancy", s.Redund[first:]...)
	sum := 0.0
	for _, r := range s.Redund {
		sum += r
	}
	item.Compare("sum_redundancy", sum)
	item.Compare("w", s.W[first:]...)
	// the item takes the shift in full, the customary one is rounded to 4.13 (LS-08)
	full := distuv.UnitNormal.Quantile(1-item.Inputs.Number("alpha0")/2) + distuv.UnitNormal.Quantile(1-item.Inputs.Number("beta0"))
	var mdb []float64
	for _, d := range s.Detectable[first:] {
		mdb = append(mdb, d*full/adjust.Shift)
	}
	item.Compare("mdb", mdb...)
	wrong := &p.n.Obs[first+2] // the third line: the blunder of LS-09
	wrong.Values[0] += 0.5
	s, _ = p.net(t)
	item.Compare("w_with_blunder", s.W[first:]...)
	wrong.Use = false
	s, _ = p.net(t)
	for k, w := range s.W[first:] {
		if k != 2 && math.Abs(w) > adjust.WLimit {
			t.Errorf("after dropping the blunder line %d still has w %v", k+1, w)
		}
	}
	if math.Abs(s.W[first+2]) < 9 {
		t.Errorf("the dropped line has w %v, want the 9.45 that it had", s.W[first+2])
	}
}

// fit is a curve through points, its two parameters being mark 2.
func fit(x, y []float64, curve func(x float64, b, jac []float64) float64, start ...float64) problem {
	p := newProblem(start...)
	for i := range x {
		p.row(y[i], 1, row{func(v, jac []float64) float64 { return curve(x[i], v, jac) }}, 2)
	}
	return p
}

func straight(x float64, b, jac []float64) float64 {
	jac[0], jac[1] = 1, x
	return b[0] + b[1]*x
}

// Ghilani, Adjustment Computations, line fit (LS-04): residual is adjusted minus read.
func TestPublishedLine(t *testing.T) {
	item := checks.Get(t, "LS-04")
	var x, y []float64
	for _, p := range item.Inputs.Rows("points") {
		x, y = append(x, p[0]), append(y, p[1])
	}
	p := fit(x, y, straight, 0, 0)
	s, _ := solve(t, p.n, p.truth)
	item.Compare("b", s.X[4])
	item.Compare("m", s.X[5])
	item.Compare("residuals", s.Residual[1:]...)
	item.Compare("s0", s.ReferenceSD)
}

// NIST Statistical Reference Datasets, Norris (LS-05).
func TestCertifiedNorris(t *testing.T) {
	item := checks.Get(t, "LS-05")
	p := fit(item.Inputs.List("x"), item.Inputs.List("y"), straight, 0, 0)
	s, _ := solve(t, p.n, p.truth)
	c := s.MarkCov(2)
	item.Compare("b0", s.X[4])
	item.Compare("b1", s.X[5])
	item.Compare("sd_b0", s.ReferenceSD*math.Sqrt(c[0]))
	item.Compare("sd_b1", s.ReferenceSD*math.Sqrt(c[2]))
	item.Compare("residual_sd", s.ReferenceSD)
	item.Compare("dof", float64(s.Redundancy))
}

// NIST Statistical Reference Datasets, Misra1a from both starts (LS-06). b2 is counted in
// thousandths, so that both scalars are of the size of metres.
func TestCertifiedMisra(t *testing.T) {
	item := checks.Get(t, "LS-06")
	for _, key := range []string{"start1", "start2"} {
		start := item.Inputs.List(key)
		p := fit(item.Inputs.List("x"), item.Inputs.List("y"), func(x float64, b, jac []float64) float64 {
			e := math.Exp(-b[1] / 1000 * x)
			jac[0], jac[1] = 1-e, b[0]*x/1000*e
			return b[0] * (1 - e)
		}, start[0], 1000*start[1])
		s, _ := solve(t, p.n, p.truth)
		c := s.MarkCov(2)
		item.Compare("b1", s.X[4])
		item.Compare("b2", s.X[5]/1000)
		item.Compare("sd_b1", s.ReferenceSD*math.Sqrt(c[0]))
		item.Compare("sd_b2", s.ReferenceSD*math.Sqrt(c[2])/1000)
		item.Compare("rss", s.Cost)
		item.Compare("residual_sd", s.ReferenceSD)
		item.Compare("dof", float64(s.Redundancy))
	}
}

// Mikhail and Ackermann, Observations and Least Squares, example 9.1: one point from three pegs
// (LS-07).
func TestPublishedThreePegs(t *testing.T) {
	item := checks.Get(t, "LS-07")
	pegs, lengths, start := item.Inputs.Rows("pegs"), item.Inputs.List("distances"), item.Inputs.List("start")
	build := func() problem {
		p := newProblem(start...)
		for i, at := range pegs {
			p.row(lengths[i], 1, row{func(v, jac []float64) float64 {
				dx, dy := v[0]-at[0], v[1]-at[1]
				d := math.Hypot(dx, dy)
				jac[0], jac[1] = dx/d, dy/d
				return d
			}}, 2)
		}
		return p
	}
	p := build()
	s, _ := solve(t, p.n, p.truth)
	c := s.MarkCov(2)
	item.Compare("x", s.X[4])
	item.Compare("y", s.X[5])
	item.Compare("residuals", s.Residual[1:]...)
	item.Compare("vTv", s.Cost)
	item.Compare("Q", c[0], c[1], c[1], c[2])
	item.Compare("redundancy", s.Redund[1:]...)
	p = build()
	p.hold(2, 5, 1e-5)
	s, _ = solve(t, p.n, p.truth)
	item.Compare("x_if_y_fixed_5", s.X[4])
}
