package adjust

import (
	"math"

	"brimline/finding"
	"brimline/network"
	"brimline/plane"
)

// looseFrom is the 95 % semi-axis from which a mark is named as free to move, metres: common
// practice, no source.
const looseFrom = 0.25

// LeastForLow is the redundancy from which a chi-square below its lower limit is said. With few
// readings to spare that limit is next to nothing (0.001 for one, 0.22 for three, 0.83 for five),
// and repeats that are equal to the last figure written fall below it without being better than
// stated: common practice, no source.
const LeastForLow = 5

// finish computes everything that is said of the solution, from the Gauss–Newton normal matrix
// at the last place.
func (s *Solution) finish() {
	sys := s.sys
	clear(sys.weak) // counted afresh, without the holds that the steps needed
	s.count()
	s.Cost = sys.assemble(s.X, nil, s.First, false)
	sys.factor.Compute(sys.m, 1e-12)
	lost := sys.factor.Lost
	if lost > 0 {
		for _, b := range sys.factor.Weak {
			sys.weak[b] = true
		}
		sys.assemble(s.X, nil, s.First, false)
		sys.factor.Compute(sys.m, 1e-14)
	}
	s.Unknowns -= lost
	s.Redundancy = s.Rows - s.Unknowns
	sys.inv = sys.factor.SelectedInverse()
	s.parts()
	if s.Redundancy > 0 {
		k := float64(s.Redundancy)
		s.ReferenceSD = math.Sqrt(s.Cost / k)
		s.ChiLow, s.ChiHigh = chiQuantile(0.025, k), chiQuantile(0.975, k)
	}
	s.findLoose()
}

// parts fills the per-part figures. With read value l, predicted value p and the row j of
// derivatives: residual p − l, its variance sd² − j·C·jᵀ, redundancy 1 − j·C·jᵀ/sd² (Teunissen
// 2006, chapters 4 and 5).
func (s *Solution) parts() {
	n := s.First[len(s.In)]
	nan := func() []float64 {
		v := make([]float64, n)
		for i := range v {
			v[i] = math.NaN()
		}
		return v
	}
	s.SD, s.Adjusted, s.Residual, s.W, s.Redund, s.Detectable = nan(), nan(), nan(), nan(), nan(), nan()
	s.jat = make([]int, len(s.In)+1)
	for i := range s.Net.Obs {
		s.jat[i+1] = s.jat[i] + len(s.Net.Obs[i].Values)*s.Net.Obs[i].Size
	}
	s.jac = make([]float64, s.jat[len(s.In)])
	cov := make([]float64, len(s.sys.hess))
	for i := range s.Net.Obs {
		o := &s.Net.Obs[i]
		copy(s.SD[s.First[i]:], o.SD)
		if !s.Net.Ready(s.X, o) {
			continue
		}
		j := s.jac[s.jat[i]:s.jat[i+1]]
		at := s.First[i]
		o.Kind.Predict(s.X, o, s.Adjusted[at:at+len(o.Values)], j)
		for k := range o.Values {
			s.Residual[at+k] = s.Adjusted[at+k] - o.Values[k]
			s.SD[at+k] = sdAt(o, k, s.Residual[at+k])
		}
		if s.In[i] {
			s.obsCov(o, cov[:o.Size*o.Size])
			for k := range o.Values {
				if !s.Out[at+k] {
					s.judge(at+k, quadratic(cov[:o.Size*o.Size], j[k*o.Size:(k+1)*o.Size]))
				}
			}
		}
		s.outside(i, o)
	}
	s.Own = append([]float64(nil), s.Redund...)
}

// judge fills w, redundancy and detectable size of one part in the solution; q = j·C·jᵀ.
func (s *Solution) judge(p int, q float64) {
	sd := s.SD[p]
	r := 1 - q/(sd*sd)
	r = math.Min(math.Max(r, 0), 1)
	s.Redund[p] = r
	if r >= 1e-6 {
		s.W[p] = s.Residual[p] / (sd * math.Sqrt(r))
	}
	s.Detectable[p] = detectable(sd, r)
}

// detectable is the smallest error that the w-test finds: NaN where a mistake shows nowhere.
func detectable(sd, r float64) float64 {
	if r < LeastRed {
		return math.NaN()
	}
	return Shift * sd / math.Sqrt(r)
}

// outside gives the parts of a reading that are left out what they would have were they alone put
// back. With S = diag(sd²) + J·C·Jᵀ of these parts and K = diag(sd²)·S⁻¹, the residuals are K
// times the misfits and the redundancies the diagonal of K. A check stays out: it keeps its
// misfit and its predicted value.
func (s *Solution) outside(i int, o *network.Obs) {
	var ks []int
	for k := range o.Values {
		if !s.In[i] || s.Out[s.First[i]+k] {
			ks = append(ks, k)
		}
	}
	if len(ks) == 0 {
		return
	}
	c := s.blocksCov(blocksOf(o))
	n := len(ks)
	row := func(k int) []float64 { return s.jac[s.jat[i]+k*o.Size : s.jat[i]+(k+1)*o.Size] }
	sum, misfit := make([]float64, n*n), make([]float64, n)
	for a, k := range ks {
		for b, l := range ks {
			sum[a*n+b] = bilinear(c, row(k), row(l))
		}
		sd := s.SD[s.First[i]+k]
		sum[a*n+a] += sd * sd
		misfit[a] = s.Residual[s.First[i]+k]
	}
	for a, k := range ks {
		p := s.First[i] + k
		sd := s.SD[p]
		w := solveSmall(sum, unitVector(n, a), n) // row a of S⁻¹
		r := sd * sd * w[a]
		s.Redund[p], s.Detectable[p] = r, detectable(sd, r)
		if o.Check {
			s.W[p] = misfit[a] / math.Sqrt(sum[a*n+a])
			continue
		}
		s.Residual[p] = 0
		for b, m := range misfit {
			s.Residual[p] += sd * sd * w[b] * m
		}
		s.Adjusted[p] = o.Values[k] + s.Residual[p]
		s.W[p] = s.Residual[p] / (sd * math.Sqrt(r))
	}
}

func blocksOf(o *network.Obs) []int {
	blocks := make([]int, len(o.Blocks))
	for k, b := range o.Blocks {
		blocks[k] = int(b)
	}
	return blocks
}

func unitVector(n, k int) []float64 {
	v := make([]float64, n)
	v[k] = 1
	return v
}

// solveSmall solves a·x = b, a symmetric positive definite n × n, by elimination.
func solveSmall(a, b []float64, n int) []float64 {
	m, x := append([]float64(nil), a...), append([]float64(nil), b...)
	for k := range n {
		for i := k + 1; i < n; i++ {
			f := m[i*n+k] / m[k*n+k]
			for j := k; j < n; j++ {
				m[i*n+j] -= f * m[k*n+j]
			}
			x[i] -= f * x[k]
		}
	}
	for k := n - 1; k >= 0; k-- {
		for j := k + 1; j < n; j++ {
			x[k] -= m[k*n+j] * x[j]
		}
		x[k] /= m[k*n+k]
	}
	return x
}

func quadratic(c, j []float64) float64 { return bilinear(c, j, j) }

// bilinear is i·C·jᵀ.
func bilinear(c, i, j []float64) float64 {
	n := len(j)
	sum := 0.0
	for a := range n {
		row := c[a*n : a*n+n]
		t := 0.0
		for b := range n {
			t += row[b] * j[b]
		}
		sum += i[a] * t
	}
	return sum
}

// obsCov fills the covariance of the unknowns of one observation from the selected inverse.
func (s *Solution) obsCov(o *network.Obs, out []float64) { s.covFrom(s.sys, o, out) }

func (s *Solution) covFrom(sys *system, o *network.Obs, out []float64) {
	blk := sys.block[:]
	n := o.Size
	ra := 0
	for a, x := range o.Blocks {
		da := s.Net.Dim(x)
		cb := ra
		for _, y := range o.Blocks[a:] {
			db := s.Net.Dim(y)
			sys.inv.Block(int(x), int(y), blk)
			for r := range da {
				for c := range db {
					v := blk[r*db+c]
					out[(ra+r)*n+cb+c] = v
					out[(cb+c)*n+ra+r] = v
				}
			}
			cb += db
		}
		ra += da
	}
}

// span is the diagonal of the box that holds the marks: an ellipse beyond it tells nothing, since
// the readings are no longer linear over it.
func (s *Solution) span() float64 {
	var placed []plane.Point
	for m := range s.Net.Marks {
		if p := s.X.Point(m); p.Finite() {
			placed = append(placed, p)
		}
	}
	return plane.BoundsOf(placed...).Diagonal()
}

func (s *Solution) findLoose() {
	s.Loose = nil
	span := s.span()
	for m := range s.Net.Marks {
		if !s.Net.Placed(s.X, network.Unknown(m)) {
			continue
		}
		c := s.MarkCov(m)
		major, _, bearing := Axes(c[0], c[1], c[2])
		if s.sys.weak[m] || Radius95*major > span {
			s.Loose = append(s.Loose, Loose{Mark: m, Move: math.Inf(1), Bearing: bearing})
		} else if Radius95*major > looseFrom {
			s.Loose = append(s.Loose, Loose{Mark: m, Move: Radius95 * major, Bearing: bearing})
		}
	}
}

// Axes gives the standard semi-axes of a plan covariance and the bearing of the major one,
// clockwise from +y in [0, π).
func Axes(cxx, cxy, cyy float64) (major, minor, bearing float64) {
	h, d := (cxx+cyy)/2, (cxx-cyy)/2
	r := math.Hypot(d, cxy)
	major, minor = math.Sqrt(math.Max(h+r, 0)), math.Sqrt(math.Max(h-r, 0))
	angle := math.Atan2(cxy, d) / 2 // from +x; atan2(2cxy, cxx − cyy)/2
	bearing = math.Mod(math.Pi/2-angle+2*math.Pi, math.Pi)
	return major, minor, bearing
}

func (s *Solution) findings() []finding.Finding {
	if s.Rows == 0 {
		return nil
	}
	out := s.heldFindings()
	if !s.Converged {
		out = append(out, finding.Finding{Code: "not-converged", Figures: map[string]float64{"n": float64(s.Iterations)}})
	}
	switch {
	case s.Redundancy <= 0:
		out = append(out, finding.Finding{Code: "no-check", Figures: map[string]float64{"readings": float64(s.Rows), "unknowns": float64(s.Unknowns)}})
	case s.Cost > s.ChiHigh:
		out = append(out, finding.Finding{Code: "chi-high", Figures: map[string]float64{"value": s.Cost, "high": s.ChiHigh}})
	case s.Cost < s.ChiLow && s.Redundancy >= LeastForLow:
		out = append(out, finding.Finding{Code: "chi-low", Figures: map[string]float64{"value": s.Cost, "low": s.ChiLow}})
	}
	for _, l := range s.Loose {
		out = append(out, s.looseFinding(l))
	}
	return out
}

// looseFinding says by how much a mark can move, or that nothing holds it.
func (s *Solution) looseFinding(l Loose) finding.Finding {
	marks, words := []string{s.Net.Marks[l.Mark]}, map[string]string{"direction": Compass(l.Bearing)}
	if math.IsInf(l.Move, 1) {
		return finding.Finding{Code: "unheld", Marks: marks, Figures: map[string]float64{"bearing": l.Bearing}, Words: words}
	}
	return finding.Finding{Code: "loose", Marks: marks, Figures: map[string]float64{"bearing": l.Bearing, "move": l.Move}, Words: words}
}

// Compass says a direction of the plan in words, from its bearing in radians; +y is up on the
// sheet.
func Compass(bearing float64) string {
	names := []string{"up and down the plan", "the plan's upper right and lower left", "left and right on the plan", "the plan's lower right and upper left"}
	return names[int(math.Round(bearing/(math.Pi/4)))%4]
}
