package adjust

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// Frame expresses moves and covariances in another datum than the inner one: that in which the
// small shift and turn given by the condition marks vanish (W. Baarda, S-transformations and
// criterion matrices, 1973). The figure itself does not change.
type Frame struct {
	s   *Solution
	row [3][]float64 // shift x, shift y, turn as functionals of the reduced unknowns
	z   [3][]float64 // covariance of all unknowns with them
	pp  [3][3]float64
	own bool // the inner datum itself
}

// InnerFrame is the datum of the solution: base mark held, direction to the second held.
func (s *Solution) InnerFrame() *Frame { return &Frame{s: s, own: true} }

// FitFrame is the datum of a rigid fit on marks: their moves, as a whole, have neither shift nor
// turn. With one mark the inner datum's direction is kept.
func (s *Solution) FitFrame(marks []int) *Frame {
	if len(marks) < 2 {
		return s.HoldFrame(marks[0], -1)
	}
	f := &Frame{s: s}
	var c plane.Point
	for _, m := range marks {
		c = c.Add(s.X.Point(m))
	}
	n := float64(len(marks))
	c = c.Mul(1 / n)
	inertia := 0.0
	for _, m := range marks {
		d := s.X.Point(m).Sub(c)
		inertia += d.Dot(d)
	}
	f.rows()
	for _, m := range marks { // turn = Σ d×δ / Σ d², shift of the origin = mean δ − turn × c
		d := s.X.Point(m).Sub(c)
		at := s.sys.offset[m]
		tx, ty := -d.Y/inertia, d.X/inertia
		f.row[2][at] += tx
		f.row[2][at+1] += ty
		f.row[0][at] += 1/n + c.Y*tx
		f.row[0][at+1] += c.Y * ty
		f.row[1][at] += -c.X * tx
		f.row[1][at+1] += 1/n - c.X*ty
	}
	f.solve()
	return f
}

// HoldFrame is the datum that holds mark a and the direction from a to b (b −1: the inner
// datum's direction).
func (s *Solution) HoldFrame(a, b int) *Frame {
	f := &Frame{s: s}
	f.rows()
	p := s.X.Point(a)
	pa := s.sys.offset[a]
	if b >= 0 {
		d := s.X.Point(b).Sub(p)
		l2 := d.Dot(d)
		pb := s.sys.offset[b]
		f.row[2][pb] += -d.Y / l2
		f.row[2][pb+1] += d.X / l2
		f.row[2][pa] += d.Y / l2
		f.row[2][pa+1] += -d.X / l2
	}
	for i, t := range f.row[2] {
		f.row[0][i] += p.Y * t
		f.row[1][i] += -p.X * t
	}
	f.row[0][pa]++
	f.row[1][pa+1]++
	f.solve()
	return f
}

func (f *Frame) rows() {
	for k := range f.row {
		f.row[k] = make([]float64, f.s.sys.size)
	}
}

func (f *Frame) solve() {
	for k := range f.row {
		f.z[k] = append([]float64(nil), f.row[k]...)
		f.s.sys.factor.SolveWork(f.z[k], f.s.sys.work)
	}
	for a := range f.row {
		for b := range f.row {
			for i, v := range f.row[a] {
				f.pp[a][b] += v * f.z[b][i]
			}
		}
	}
}

// lever is the derivative of a place by shift and turn.
func lever(p plane.Point) [2][3]float64 {
	return [2][3]float64{{1, 0, -p.Y}, {0, 1, p.X}}
}

// MarkCov gives cxx, cxy, cyy of a mark in this datum.
func (f *Frame) MarkCov(m int) [3]float64 {
	c := f.s.MarkCov(m)
	if f.own || math.IsNaN(c[0]) {
		return c
	}
	g := lever(f.s.X.Point(m))
	at := f.s.sys.offset[m]
	entry := func(r, q int, base float64) float64 {
		v := base
		for k := range 3 {
			v -= f.z[k][at+r]*g[q][k] + f.z[k][at+q]*g[r][k]
			for l := range 3 {
				v += g[r][k] * f.pp[k][l] * g[q][l]
			}
		}
		return v
	}
	return [3]float64{entry(0, 0, c[0]), entry(0, 1, c[1]), entry(1, 1, c[2])}
}

// turnOff takes the datum's shift and turn out of a vector of moves.
func (f *Frame) turnOff(v []float64) {
	if f.own {
		return
	}
	var p [3]float64
	for k := range p {
		for i, r := range f.row[k] {
			p[k] += r * v[i]
		}
	}
	for m := range f.s.Net.Marks {
		if !f.s.Net.Placed(f.s.X, network.Unknown(m)) {
			continue
		}
		g := lever(f.s.X.Point(m))
		at := f.s.sys.offset[m]
		for r := range 2 {
			v[at+r] -= g[r][0]*p[0] + g[r][1]*p[1] + g[r][2]*p[2]
		}
	}
}

// Hidden is what one undetected error could do to each mark.
type Hidden struct {
	Move       []float64 // by mark: the largest move by an error of the size Detectable; NaN where uncontrolled
	Controlled []bool
	By         []int // observation that causes it, -1 none
}

// Hidden puts an error of the size Detectable into each part in turn and keeps, for each mark,
// the largest move in this datum. Linear: the moves are C·jᵀ·e/sd².
func (f *Frame) Hidden() Hidden {
	s := f.s
	n := len(s.Net.Marks)
	h := Hidden{Move: make([]float64, n), Controlled: make([]bool, n), By: make([]int, n)}
	for m := range n {
		h.Controlled[m] = s.Net.Placed(s.X, network.Unknown(m))
		h.By[m] = -1
	}
	v := make([]float64, s.sys.size)
	for i := range s.Net.Obs {
		if !s.In[i] {
			continue
		}
		o := &s.Net.Obs[i]
		for k := range o.Values {
			if s.Out[s.First[i]+k] {
				continue
			}
			s.moves(i, k, v)
			f.turnOff(v)
			f.keep(&h, i, s.First[i]+k, v)
		}
	}
	for m := range n {
		if !h.Controlled[m] {
			h.Move[m] = math.NaN()
		}
	}
	return h
}

// moves fills v with the moves of all unknowns by one metre of error in part k.
func (s *Solution) moves(i, k int, v []float64) {
	o := &s.Net.Obs[i]
	clear(v)
	j := s.jac[s.jat[i]+k*o.Size:]
	sd := s.SD[s.First[i]+k]
	at := 0
	for _, b := range o.Blocks {
		for c := range s.Net.Dim(b) {
			v[s.sys.offset[b]+c] += j[at] / (sd * sd)
			at++
		}
	}
	s.sys.factor.SolveWork(v, s.sys.work)
}

func (f *Frame) keep(h *Hidden, i, p int, v []float64) {
	s := f.s
	blind := s.Redund[p] < LeastRed
	for m := range s.Net.Marks {
		if !h.Controlled[m] {
			continue
		}
		at := s.sys.offset[m]
		move := math.Hypot(v[at], v[at+1])
		switch {
		case blind && move > Influence:
			h.Controlled[m] = false
			h.By[m] = i
		case !blind && move*s.Detectable[p] > h.Move[m]:
			h.Move[m] = move * s.Detectable[p]
			h.By[m] = i
		}
	}
}
