package adjust

import (
	"math"

	"brimline/network"
)

// Pattern is an error in some parts: Size is added to what is true, metres or radians.
type Pattern struct {
	Parts []int
	Size  []float64
}

// Space is the linear model of a choice of readings at a place: with whitened misclosures
// y = (value − predicted)/sd, derivatives A and the projector R = I − A(AᵀA)⁻¹Aᵀ it answers what
// any error would do to the residuals R·y, without solving again (Teunissen 2006, chapter 4).
type Space struct {
	X      network.State
	Member []bool    // by part
	SD     []float64 // by part
	Y, U   []float64 // by part: y; for a member (R·y), else its misfit with the members' solution
	R      []float64 // by part: for a member its redundancy, else what it would have were it put in
	Cost   float64   // uᵀu of the members

	s    *Solution
	net  *network.Network // with the values of the change
	sys  *system
	jac  []float64
	cols [][]float64 // of R, made when asked for
}

// Space makes the model of the parts that member chooses (observation, part) among those that have
// a place, at x, with the other values of a change; what the change leaves out is member's affair.
func (s *Solution) Space(x network.State, c Change, member func(obs, part int) bool) *Space {
	n := s.First[len(s.In)]
	sp := &Space{X: x, s: s, net: s.changed(c, false), Member: make([]bool, n), SD: make([]float64, n), Y: make([]float64, n), U: make([]float64, n),
		R: make([]float64, n), jac: make([]float64, len(s.jac)), cols: make([][]float64, n)}
	out := make([]bool, n)
	for p := range out {
		out[p] = true
	}
	for i := range s.Net.Obs {
		for p := s.First[i]; p < s.First[i+1]; p++ {
			sp.Member[p] = s.sys.has[i] && member(i, p)
			out[p] = !sp.Member[p]
		}
	}
	sp.sys = s.sys.another(sp.net, out)
	sp.sys.assemble(x, nil, s.First, false)
	sp.sys.factor.Compute(sp.sys.m, 1e-12)
	if len(sp.sys.factor.Weak) > 0 {
		for _, b := range sp.sys.factor.Weak {
			sp.sys.weak[b] = true
		}
		sp.sys.assemble(x, nil, s.First, false)
		sp.sys.factor.Compute(sp.sys.m, 1e-14)
	}
	sp.sys.inv = sp.sys.factor.SelectedInverse()
	sp.fill()
	return sp
}

func (sp *Space) fill() {
	s := sp.s
	step := append([]float64(nil), sp.sys.rhs...)
	sp.sys.factor.SolveWork(step, sp.sys.work)
	cov := make([]float64, len(sp.sys.hess))
	for i := range sp.net.Obs {
		o := &sp.net.Obs[i]
		at := s.First[i]
		for k := range o.Values {
			sp.SD[at+k], sp.Y[at+k], sp.U[at+k], sp.R[at+k] = o.SD[k], math.NaN(), math.NaN(), math.NaN()
		}
		if !s.sys.has[i] {
			continue
		}
		j := sp.jac[s.jat[i]:s.jat[i+1]]
		o.Kind.Predict(sp.X, o, sp.sys.value[:len(o.Values)], j)
		s.covFrom(sp.sys, o, cov[:o.Size*o.Size])
		for k := range o.Values {
			p := at + k
			r := sp.sys.value[k] - o.Values[k]
			sd := sdAt(o, k, r)
			row := j[k*o.Size : (k+1)*o.Size]
			q := quadratic(cov[:o.Size*o.Size], row) / (sd * sd)
			sp.SD[p], sp.Y[p] = sd, -r/sd
			sp.U[p] = sp.Y[p] - s.dot(o, row, step)/sd
			if sp.Member[p] {
				sp.R[p] = math.Min(math.Max(1-q, 0), 1)
				sp.Cost += sp.U[p] * sp.U[p]
			} else {
				sp.R[p] = 1 / (1 + q)
			}
		}
	}
}

// dot is the row of one part times a vector of the reduced unknowns.
func (s *Solution) dot(o *network.Obs, row, v []float64) float64 {
	sum, at := 0.0, 0
	for _, b := range o.Blocks {
		off := s.sys.offset[b]
		for c := range s.Net.Dim(b) {
			sum += row[at] * v[off+c]
			at++
		}
	}
	return sum
}

// Estimate is what the model says of an error in one part alone: its size ê and standard deviation
// s, metres or radians.
func (sp *Space) Estimate(p int) (e, s float64) {
	if sp.Member[p] {
		return sp.U[p] / sp.R[p] * sp.SD[p], sp.SD[p] / math.Sqrt(sp.R[p])
	}
	return sp.U[p] * sp.SD[p], sp.SD[p] / math.Sqrt(sp.R[p])
}

// W is the test statistic of part p, value − predicted over its own sd.
func (sp *Space) W(p int) float64 {
	if sp.Member[p] {
		return sp.U[p] / math.Sqrt(sp.R[p])
	}
	return sp.U[p] * math.Sqrt(sp.R[p])
}

// Apply gives R·c of a whitened pattern of member parts, by part (0 where a part is no member).
func (sp *Space) Apply(parts []int, c []float64) []float64 {
	s := sp.s
	v := make([]float64, sp.sys.size)
	out := make([]float64, len(sp.Y))
	for n, p := range parts {
		if !sp.Member[p] {
			continue
		}
		i, k := s.partAt(p)
		o := &s.Net.Obs[i]
		row := sp.jac[s.jat[i]+k*o.Size:]
		at := 0
		for _, b := range o.Blocks {
			for d := range s.Net.Dim(b) {
				v[sp.sys.offset[b]+d] += row[at] / sp.SD[p] * c[n]
				at++
			}
		}
		out[p] += c[n]
	}
	sp.sys.factor.SolveWork(v, sp.sys.work)
	for i := range s.Net.Obs {
		if !s.sys.has[i] {
			continue
		}
		o := &s.Net.Obs[i]
		for k := range o.Values {
			p := s.First[i] + k
			if sp.Member[p] {
				row := sp.jac[s.jat[i]+k*o.Size : s.jat[i]+(k+1)*o.Size]
				out[p] -= s.dot(o, row, v) / sp.SD[p]
			}
		}
	}
	return out
}

// Spare is the redundancy of the members together, and how many they are.
func (sp *Space) Spare() (redundancy float64, members int) {
	for p, in := range sp.Member {
		if in {
			redundancy += sp.R[p]
			members++
		}
	}
	return redundancy, members
}

// Column is R's column of a member part, kept for the next time.
func (sp *Space) Column(p int) []float64 {
	if sp.cols[p] == nil {
		sp.cols[p] = sp.Apply([]int{p}, []float64{1})
	}
	return sp.cols[p]
}

// Effect is the logarithm of the likelihood ratio of exactly this error against none, as lin −
// quad/2: lin = cᵀR·y and quad = cᵀR·c with the whitened pattern c.
func (sp *Space) Effect(q Pattern) (lin, quad float64) {
	if len(q.Parts) == 1 {
		p := q.Parts[0]
		if !sp.Member[p] {
			return 0, 0
		}
		c := q.Size[0] / sp.SD[p]
		return c * sp.U[p], c * c * sp.R[p]
	}
	c := make([]float64, len(q.Parts))
	for n, p := range q.Parts {
		if sp.Member[p] {
			c[n] = q.Size[n] / sp.SD[p]
			lin += c[n] * sp.U[p]
		}
	}
	rc := sp.Apply(q.Parts, c)
	for n, p := range q.Parts {
		quad += c[n] * rc[p]
	}
	return lin, quad
}

// partAt is the observation and the place in it of a part.
func (s *Solution) partAt(p int) (obs, k int) {
	lo, hi := 0, len(s.In)
	for hi-lo > 1 {
		mid := (lo + hi) / 2
		if s.First[mid] <= p {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo, p - s.First[lo]
}

// ObsOf is the observation that a part belongs to.
func (s *Solution) ObsOf(p int) int {
	i, _ := s.partAt(p)
	return i
}
