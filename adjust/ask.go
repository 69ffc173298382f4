package adjust

import (
	"math"

	"brimline/network"
)

// Functional is a figure that depends on the places of marks: Grad holds its derivatives by x
// and y of each of Marks. Tolerance and Cost belong to the order that asks.
type Functional struct {
	Name            string
	Marks           []int
	Grad            []float64
	Tolerance, Cost float64
}

// MarkCov gives cxx, cxy, cyy of a mark in the inner datum.
func (s *Solution) MarkCov(m int) [3]float64 {
	if !s.Net.Placed(s.X, network.Unknown(m)) {
		return [3]float64{math.NaN(), math.NaN(), math.NaN()}
	}
	var b [64]float64
	s.sys.inv.Block(m, m, b[:])
	return [3]float64{b[0], b[1], b[3]}
}

// BlockSD is the standard deviation of one scalar of a block.
func (s *Solution) BlockSD(block, scalar int) float64 {
	d := s.Net.Dim(network.Unknown(block))
	var b [64]float64
	s.sys.inv.Block(block, block, b[:])
	return math.Sqrt(math.Max(b[scalar*d+scalar], 0))
}

// Cov is the covariance of the coordinates of the marks, 2k × 2k row-major, in the inner datum:
// from the selected inverse where it holds all blocks, else by solving with the kept factor.
// Blocks past the marks are set-ups, with their own sizes.
func (s *Solution) Cov(marks ...int) []float64 { return s.blocksCov(marks) }

func (s *Solution) blocksCov(blocks []int) []float64 {
	at := make([]int, len(blocks)+1)
	for i, b := range blocks {
		at[i+1] = at[i] + s.Net.Dim(network.Unknown(b))
	}
	n := at[len(blocks)]
	out := make([]float64, n*n)
	var blk [64]float64
	for i, a := range blocks {
		for j, b := range blocks {
			if !s.sys.inv.Block(a, b, blk[:]) {
				s.covBySolving(blocks, at, out)
				return out
			}
			db := at[j+1] - at[j]
			for r := range at[i+1] - at[i] {
				copy(out[(at[i]+r)*n+at[j]:(at[i]+r)*n+at[j+1]], blk[r*db:(r+1)*db])
			}
		}
	}
	return out
}

func (s *Solution) covBySolving(blocks, at []int, out []float64) {
	n := at[len(blocks)]
	v := make([]float64, s.sys.size)
	for i, a := range blocks {
		for r := range at[i+1] - at[i] {
			clear(v)
			v[s.sys.offset[a]+r] = 1
			s.sys.factor.SolveWork(v, s.sys.work)
			for j, b := range blocks {
				copy(out[(at[i]+r)*n+at[j]:(at[i]+r)*n+at[j+1]], v[s.sys.offset[b]:])
			}
		}
	}
}

// response solves for the covariance of all unknowns with a functional.
func (s *Solution) response(f Functional) []float64 {
	v := make([]float64, s.sys.size)
	for k, m := range f.Marks {
		v[s.sys.offset[m]] += f.Grad[2*k]
		v[s.sys.offset[m]+1] += f.Grad[2*k+1]
	}
	s.sys.factor.SolveWork(v, s.sys.work)
	return v
}

// Ask gives the standard deviation of a functional; the largest change of it that an error of
// the size Detectable in one reading causes; and whether every reading that moves it by more
// than Influence of its own error would show a mistake. hidden is NaN where it would not.
func (s *Solution) Ask(f Functional) (sd, hidden float64, controlled bool) {
	v := s.response(f)
	variance := 0.0
	for k, m := range f.Marks {
		variance += f.Grad[2*k]*v[s.sys.offset[m]] + f.Grad[2*k+1]*v[s.sys.offset[m]+1]
	}
	sd = math.Sqrt(math.Max(variance, 0))
	controlled = true
	for i := range s.Net.Obs {
		if !s.In[i] {
			continue
		}
		o := &s.Net.Obs[i]
		for k := range o.Values {
			p := s.First[i] + k
			if s.Out[p] {
				continue
			}
			move := math.Abs(s.along(i, k, v)) / (s.SD[p] * s.SD[p]) // per metre of error
			switch {
			case s.Redund[p] < LeastRed:
				if move > Influence {
					controlled = false
				}
			case move*s.Detectable[p] > hidden:
				hidden = move * s.Detectable[p]
			}
		}
	}
	if !controlled {
		hidden = math.NaN()
	}
	return sd, hidden, controlled
}

// along is j·v for part k of observation i and a vector of the reduced unknowns.
func (s *Solution) along(i, k int, v []float64) float64 {
	o := &s.Net.Obs[i]
	j := s.jac[s.jat[i]+k*o.Size:]
	sum, at := 0.0, 0
	for _, b := range o.Blocks {
		for c := range s.Net.Dim(b) {
			sum += j[at] * v[s.sys.offset[b]+c]
			at++
		}
	}
	return sum
}
