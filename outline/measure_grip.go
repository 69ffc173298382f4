package outline

import (
	"math"

	"brimline/adjust"
	"brimline/plane"
)

// grip is how the unknowns q of a fitted line follow what it was fitted to. With conditions r(q, m),
// their derivatives J by q, the weights W and the normal matrix N = JᵀWJ of the last step, small
// moves dm of the marks and errors e of the conditions themselves move it by
//
//	dq = N⁻¹JᵀW(L·dm + e),   L = −∂r/∂m
//
// (the implicit function theorem, without the terms in the misfits that Gauss and Newton leave out).
// e is what stays open however well the marks are known: the edge at each, tangency as stated, the
// rise of a bow.
type grip struct {
	c     *chain
	marks []int
	row   map[int]int // place of a mark in marks
	loads [][2]float64
	own   []float64 // covariance of e
	w, j  []float64 // nil where each unknown hangs on its own mark alone: dq = L·dm + e
	inv   []float64 // N⁻¹
}

func newGrip(c *chain, edge []float64) grip {
	g := grip{c: c}
	g.marks, g.row = c.markList()
	g.loads = c.loads(g.row, c.normals(g.marks))
	alone := *c
	alone.frame = make([]float64, len(c.frame))
	g.own = alone.misfitCov(edge)
	g.loose()
	if !c.free() { // the line was found in its own frame
		alone.frame = c.block.own
		g.w, g.j = invert(alone.misfitCov(edge), len(c.rows)), alone.jacobian()
		n, _ := alone.equations(alone.whiten(edge))
		g.inv = invert(n, c.n)
	}
	return g
}

// pull is how a figure whose derivatives by q are given answers to each condition.
func (g *grip) pull(byLine []float64) []float64 {
	if g.w == nil {
		return byLine
	}
	c, m := g.c, len(g.c.rows)
	u := make([]float64, c.n)
	for a := range u {
		for b, v := range byLine {
			u[a] += g.inv[a*c.n+b] * v
		}
	}
	ju, out := make([]float64, m), make([]float64, m)
	for i := range ju {
		for a, v := range g.j[i*c.n : (i+1)*c.n] {
			ju[i] += v * u[a]
		}
	}
	for i := range out {
		for k, v := range ju {
			out[i] += g.w[i*m+k] * v
		}
	}
	return out
}

// onMarks adds a pull to derivatives by the coordinates of all marks of the network.
func (g *grip) onMarks(pull, to []float64) {
	for i, r := range g.c.rows {
		if !r.marked() {
			continue
		}
		by := plane.Point{X: g.loads[i][0] * pull[i], Y: g.loads[i][1] * pull[i]}
		if n := len(g.c.s.Net.Marks); r.mark >= n {
			g.c.block.corner[r.mark-n].onMarks(by, to)
			continue
		}
		to[2*r.mark] += by.X
		to[2*r.mark+1] += by.Y
	}
}

// onMarks hands the pull on an unreached corner to its four marks.
func (c *corner) onMarks(by plane.Point, to []float64) {
	for k, m := range c.marks() {
		to[2*m] += c.slope[0][2*k]*by.X + c.slope[1][2*k]*by.Y
		to[2*m+1] += c.slope[0][2*k+1]*by.X + c.slope[1][2*k+1]*by.Y
	}
}

// loose adds to the errors of the conditions the own sigma of unreached corners.
func (g *grip) loose() {
	n := len(g.c.s.Net.Marks)
	for i, r := range g.c.rows {
		for j, q := range g.c.rows {
			if r.marked() && q.marked() && r.mark == q.mark && r.mark >= n {
				s := g.c.block.corner[r.mark-n].Sigma
				g.own[i*len(g.c.rows)+j] += s * s * (g.loads[i][0]*g.loads[j][0] + g.loads[i][1]*g.loads[j][1])
			}
		}
	}
}

// variance of a pull by the errors of the conditions themselves.
func (g *grip) variance(pull []float64) float64 {
	sum, m := 0.0, len(pull)
	for i, a := range pull {
		for j, b := range pull {
			sum += a * g.own[i*m+j] * b
		}
	}
	return math.Max(sum, 0)
}

// rises gives what a mistake in a bow could do by a pull: the largest move by an error just below
// detection, and false where nothing would show one.
func (g *grip) rises(pull []float64) (hidden float64, controlled bool) {
	s := g.c.s
	controlled = true
	for i, r := range g.c.rows {
		if r.axis != 4 {
			continue
		}
		f := g.c.bow(g.c.vertex[g.c.pieces[r.piece].from].mark, g.c.vertex[g.c.pieces[r.piece].to].mark)
		for o := range s.Net.Obs {
			if s.Net.Obs[o].Kind.Name() != "bow" || s.Net.Obs[o].Free != f || !s.In[o] {
				continue
			}
			p := s.First[o]
			if s.Redund[p] >= adjust.LeastRed {
				hidden = math.Max(hidden, math.Abs(pull[i])*s.Detectable[p])
			} else if math.Abs(pull[i]) > adjust.Influence {
				controlled = false
			}
		}
	}
	return hidden, controlled
}
