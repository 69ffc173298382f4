package adjust

import "math"

// reliability counts the checks that agree: they would show a mistake in another reading, though
// they move no mark. A check agrees where it lies within WLimit of its own sd and that of its
// prediction together.
func (s *Solution) reliability() {
	s.proof = nil
	any := false
	for i := range s.Net.Obs {
		s.Agrees[i] = s.agrees(i)
		any = any || s.Agrees[i]
	}
	if !any {
		return
	}
	sp := s.Proof()
	for i := range s.Net.Obs {
		for p := s.First[i]; p < s.First[i+1]; p++ {
			if sp.Member[p] {
				s.Redund[p] = math.Min(math.Max(sp.R[p], 0), 1)
				s.Detectable[p] = detectable(s.SD[p], s.Redund[p])
			}
		}
	}
}

func (s *Solution) agrees(i int) bool {
	if !s.Net.Obs[i].Check || !s.sys.has[i] {
		return false
	}
	for p := s.First[i]; p < s.First[i+1]; p++ {
		if !(math.Abs(s.W[p]) <= WLimit) {
			return false
		}
	}
	return true
}

// Proof is the residual space of what speaks for the solution: its readings and the checks that
// agree, at its own place.
func (s *Solution) Proof() *Space {
	if s.proof == nil {
		s.proof = s.Space(s.X, Change{}, func(i, p int) bool {
			return s.In[i] && !s.Out[p] || s.Agrees[i]
		})
	}
	return s.proof
}
