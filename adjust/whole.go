package adjust

import "brimline/network"

// Whole is the covariance of x and y of all marks, 2M × 2M row-major, in the inner datum; rows of
// marks without a place are nought. It is made once and kept: memory grows with M².
func (s *Solution) Whole() []float64 {
	if s.whole != nil || s.sys == nil {
		return s.whole
	}
	m := len(s.Net.Marks)
	n := 2 * m
	out := make([]float64, n*n)
	v := make([]float64, s.sys.size)
	for a := range m {
		if !s.Net.Placed(s.X, network.Unknown(a)) {
			continue
		}
		for r := range 2 {
			clear(v)
			v[s.sys.offset[a]+r] = 1
			s.sys.factor.SolveWork(v, s.sys.work)
			for b := range m {
				if s.Net.Placed(s.X, network.Unknown(b)) {
					copy(out[(2*a+r)*n+2*b:(2*a+r)*n+2*b+2], v[s.sys.offset[b]:])
				}
			}
		}
	}
	s.whole = out
	return out
}

// Shift is the linear move of x and y of every mark that an error causes, 2M, in the inner datum.
// Errors in parts that take no part move nothing.
func (s *Solution) Shift(q Pattern) []float64 {
	v := make([]float64, s.sys.size)
	for n, p := range q.Parts {
		i, k := s.partAt(p)
		if !s.In[i] || s.Out[p] {
			continue
		}
		o := &s.Net.Obs[i]
		row := s.jac[s.jat[i]+k*o.Size:]
		at := 0
		for _, b := range o.Blocks {
			for c := range s.Net.Dim(b) {
				v[s.sys.offset[b]+c] += row[at] * q.Size[n] / (s.SD[p] * s.SD[p])
				at++
			}
		}
	}
	s.sys.factor.SolveWork(v, s.sys.work)
	out := make([]float64, 2*len(s.Net.Marks))
	for m := range s.Net.Marks {
		if s.Net.Placed(s.X, network.Unknown(m)) {
			copy(out[2*m:2*m+2], v[s.sys.offset[m]:])
		}
	}
	return out
}
