package adjust

import (
	"context"
	"errors"
	"math"

	"brimline/finding"
	"brimline/network"
)

// ErrNothing is returned by the context's cancellation wrapped, or when no reading can be used.
var ErrNothing = errors.New("no reading can be used")

// Solve adjusts the network from start. It first tries plain least squares; where the readings
// then disagree it starts again with weights that ignore gross errors, so that one wrong reading
// does not lead it to a wrong place, and ends with plain least squares. Observations whose marks
// have no place are left out and reported. The context only cancels: the solution is then nil.
func Solve(ctx context.Context, n *network.Network, start network.State, o Options) (*Solution, []finding.Finding) {
	s := newSolution(n, start)
	if s.Rows == 0 {
		return s, nil
	}
	if o.MaxSteps == 0 {
		o.MaxSteps = 60
	}
	from := network.State(nil)
	if o.Fallback != nil {
		copy(s.X, o.Fallback)
		s.align()
		from = append(from, s.X...)
		copy(s.X, start)
	}
	s.align()
	s.sys = newSystem(n, s.pattern(), s.Out, s.Base, s.X)
	if from == nil {
		from = append(from, s.X...)
	}
	s.Converged = s.iterate(ctx, nil, o.MaxSteps)
	if !o.NoRobust && s.disagrees() {
		s.restart(ctx, from, o.MaxSteps)
	}
	if ctx.Err() != nil {
		return nil, nil
	}
	s.finish()
	s.holdTools(ctx, o.MaxSteps)
	s.dropComputed(ctx, o.MaxSteps)
	if ctx.Err() != nil {
		return nil, nil
	}
	s.reliability()
	return s, s.findings()
}

func newSolution(n *network.Network, start network.State) *Solution {
	s := &Solution{Net: n, X: append(network.State(nil), start...), In: make([]bool, len(n.Obs)), Agrees: make([]bool, len(n.Obs)), First: make([]int, len(n.Obs)+1)}
	n.Begin(s.X)
	for i := range n.Obs {
		o := &n.Obs[i]
		s.In[i] = o.Use && !o.Check && n.Ready(s.X, o)
		s.First[i+1] = s.First[i] + len(o.Values)
	}
	s.Out = make([]bool, s.First[len(n.Obs)])
	s.Base = s.pickBase()
	s.count()
	return s
}

// count gives the rows and the unknowns of the parts that take part. A block that no reading in the
// pattern touches has no place and no unknowns.
func (s *Solution) count() {
	n := s.Net
	s.Rows, s.Unknowns = 0, 0
	for i := range n.Obs {
		if !s.In[i] {
			continue
		}
		for p := s.First[i]; p < s.First[i+1]; p++ {
			if !s.Out[p] {
				s.Rows++
			}
		}
	}
	for b := range len(n.Offset) - 1 {
		if n.Placed(s.X, network.Unknown(b)) {
			s.Unknowns += n.Dim(network.Unknown(b))
		}
	}
	if s.Rows == 0 {
		s.Unknowns = 0
		return
	}
	if s.Base[0] >= 0 { // the datum takes a shift and, with a second mark, the turn
		s.Unknowns -= 2
	}
	if s.Base[1] >= 0 {
		s.Unknowns--
	}
	if s.sys != nil {
		s.Unknowns -= len(s.sys.held)
	} else {
		s.Unknowns -= len(heldHeight(n, s.X))
	}
	s.Redundancy = s.Rows - s.Unknowns
}

// pattern is the observations that have a place in the equations: those that take part, and the
// checks, which prove but do not move.
func (s *Solution) pattern() []bool {
	has := make([]bool, len(s.In))
	for i := range s.In {
		o := &s.Net.Obs[i]
		has[i] = s.In[i] || o.Check && o.Use && s.Net.Ready(s.X, o)
		if has[i] && !s.In[i] {
			for p := s.First[i]; p < s.First[i+1]; p++ {
				s.Out[p] = true
			}
		}
	}
	return has
}

// pickBase takes the network's base, else the first two marks that have places.
func (s *Solution) pickBase() [2]int {
	a, b := s.Net.Base[0], s.Net.Base[1]
	if a >= 0 && b >= 0 && s.Net.Placed(s.X, network.Unknown(a)) && s.Net.Placed(s.X, network.Unknown(b)) {
		return s.Net.Base
	}
	out := [2]int{-1, -1}
	for m := range s.Net.Marks {
		if !s.Net.Placed(s.X, network.Unknown(m)) {
			continue
		}
		if out[0] < 0 {
			out[0] = m
		} else if out[1] < 0 {
			out[1] = m
			break
		}
	}
	return out
}

// align moves the start into the inner frame: the base mark at the origin, the second on +x.
func (s *Solution) align() {
	defer s.Net.Begin(s.X)
	a, b := s.Base[0], s.Base[1]
	if a < 0 || b < 0 {
		return
	}
	o := s.X.Point(a)
	d := s.X.Point(b).Sub(o)
	l := d.Len()
	if l == 0 {
		return
	}
	c, sn := d.X/l, d.Y/l
	turn := math.Atan2(d.Y, d.X)
	n := s.Net
	for blk := range len(n.Marks) + len(n.Setups) {
		at := n.Offset[blk]
		x, y := s.X[at]-o.X, s.X[at+1]-o.Y
		s.X[at], s.X[at+1] = c*x+sn*y, -sn*x+c*y
		if n.Dim(network.Unknown(blk)) > 2 {
			s.X[at+2] -= turn
		}
	}
	s.X[2*b+1] = 0
}

// newtonBelow: second-order terms are used once a step is smaller than this (metres).
const newtonBelow = 0.3

// iterate is Levenberg's damped Gauss–Newton; near the end with second-order terms (K. Levenberg
// 1944; J. Dennis, R. Schnabel, Numerical Methods, 1983, chapter 10). True when it settled.
func (s *Solution) iterate(ctx context.Context, weight []float64, most int) bool {
	sys := s.sys
	damp, last := 0.0, math.Inf(1)
	old := make(network.State, len(s.X))
	second := false
	cost := sys.assemble(s.X, weight, s.First, second)
	for range most {
		if ctx.Err() != nil {
			return false
		}
		s.Iterations++
		if sys.direction(damp); second && sys.factor.Negative > 0 {
			sys.assemble(s.X, weight, s.First, false)
			sys.direction(damp)
		}
		copy(old, s.X)
		move := s.advance()
		second = move < newtonBelow
		now := sys.assemble(s.X, weight, s.First, second)
		if now > cost*(1+1e-9)+1e-9 && move > 1e-6 {
			copy(s.X, old)
			damp = math.Max(8*damp, 1e-3)
			if damp > 1e9 {
				return false
			}
			second = false
			cost = sys.assemble(s.X, weight, s.First, false)
			continue
		}
		cost = now
		if damp /= 8; damp < 1e-5 {
			damp = 0
		}
		if move < convergeAt || (move < 1e-7 && move >= last/2) {
			return true
		}
		last = move
	}
	return false
}

// direction solves for the step; weak blocks get a hold of their own and are remembered.
func (s *system) direction(damp float64) {
	if damp > 0 {
		for b := range s.diag {
			for c := range int32(s.offset[b+1] - s.offset[b]) {
				s.m.Values[s.diag[b].Base+c*(s.diag[b].RowStep+s.diag[b].ColStep)] *= 1 + damp
			}
		}
	}
	s.factor.Compute(s.m, 1e-12)
	for _, b := range s.factor.Weak {
		s.weak[b] = true
	}
	copy(s.step, s.rhs)
	s.factor.SolveWork(s.step, s.work)
}

// advance adds the step, at most 10 m in any coordinate, and returns its largest coordinate.
func (s *Solution) advance() float64 {
	n, sys := s.Net, s.sys
	largest := 0.0
	for _, v := range sys.step {
		largest = math.Max(largest, math.Abs(v))
	}
	f := 1.0
	if largest > 10 {
		f = 10 / largest
	}
	for b := range len(n.Offset) - 1 {
		for c := range sys.offset[b+1] - sys.offset[b] {
			s.X[n.Offset[b]+c] += f * sys.step[sys.offset[b]+c]
		}
	}
	return f * largest
}

// disagrees says whether the plain solution shows readings far outside their precision.
func (s *Solution) disagrees() bool {
	if !s.Converged {
		return true
	}
	return s.Redundancy > 0 && s.cost(s.X) > 2*chiQuantile(0.999, float64(s.Redundancy))
}

func (s *Solution) cost(x network.State) float64 {
	sum := 0.0
	s.each(x, func(_ int, u float64) { sum += u * u })
	return sum
}

// each visits every part that takes part with its whitened residual (adjusted − read).
func (s *Solution) each(x network.State, visit func(part int, u float64)) {
	for i := range s.Net.Obs {
		if !s.In[i] {
			continue
		}
		o := &s.Net.Obs[i]
		o.Kind.Predict(x, o, s.sys.value[:len(o.Values)], s.sys.jac[:len(o.Values)*o.Size])
		for k := range o.Values {
			if !s.Out[s.First[i]+k] {
				r := s.sys.value[k] - o.Values[k]
				visit(s.First[i]+k, r/sdAt(o, k, r))
			}
		}
	}
}
