package main

import (
	"gonum.org/v1/gonum/mat"

	"brimline/adjust"
	"brimline/plane"
)

// dense is the linear model of a solution in full matrices, with the base mark held and the
// second mark held in its direction from it: a second method beside the sparse one.
type dense struct {
	s       *adjust.Solution
	rows    *mat.Dense // whitened, by part; nought where the part takes no part
	chol    mat.Cholesky
	at      []int // of each scalar of the state: its unknown, −1 for none
	along   plane.Point
	slide   int // the unknown by which the second mark moves along
	unknown int
}

func newDense(s *adjust.Solution) *dense {
	d := &dense{s: s, at: make([]int, len(s.X))}
	second := s.Base[1]
	d.along = s.X.Point(second).Sub(s.X.Point(s.Base[0])).Unit()
	for i := range d.at {
		d.at[i] = -1
		if mark := i / 2; mark == s.Base[0] || mark == second {
			continue
		}
		d.at[i] = d.unknown
		d.unknown++
	}
	d.slide = d.unknown
	d.unknown++
	d.rows = mat.NewDense(s.First[len(s.In)], d.unknown, nil)
	for i := range s.In {
		if s.In[i] {
			d.fill(i)
		}
	}
	var normal mat.SymDense
	normal.SymOuterK(1, d.rows.T())
	if !d.chol.Factorize(&normal) {
		panic("proof: a solved pool has a normal matrix without an inverse")
	}
	return d
}

// fill writes the rows of an observation.
func (d *dense) fill(i int) {
	o := &d.s.Net.Obs[i]
	value, jac := make([]float64, len(o.Values)), make([]float64, len(o.Values)*o.Size)
	o.Kind.Predict(d.s.X, o, value, jac)
	for k := range o.Values {
		part := d.s.First[i] + k
		if d.s.Out[part] {
			continue
		}
		col := 0
		for _, b := range o.Blocks {
			for c := range d.s.Net.Dim(b) {
				d.put(part, d.s.Net.Offset[b]+c, jac[k*o.Size+col]/d.s.SD[part])
				col++
			}
		}
	}
}

func (d *dense) put(part, scalar int, v float64) {
	switch mark := scalar / 2; {
	case mark == d.s.Base[0]:
		return
	case mark == d.s.Base[1] && scalar%2 == 0:
		v, scalar = v*d.along.X, -1
	case mark == d.s.Base[1]:
		v, scalar = v*d.along.Y, -1
	}
	col := d.slide
	if scalar >= 0 {
		col = d.at[scalar]
	}
	d.rows.Set(part, col, d.rows.At(part, col)+v)
}

// step is the move of x and y of every mark by one linear step from the solution, the value of a
// part made larger by size.
func (d *dense) step(part int, size float64) []float64 {
	right, x := mat.NewVecDense(d.unknown, nil), mat.NewVecDense(d.unknown, nil)
	for col := range d.unknown {
		right.SetVec(col, d.rows.At(part, col)*size/d.s.SD[part])
	}
	if err := d.chol.SolveVecTo(x, right); err != nil {
		panic("proof: " + err.Error())
	}
	out := make([]float64, 2*len(d.s.Net.Marks))
	for i := range out {
		if d.at[i] >= 0 {
			out[i] = x.AtVec(d.at[i])
		}
	}
	slide := d.along.Mul(x.AtVec(d.slide))
	out[2*d.s.Base[1]], out[2*d.s.Base[1]+1] = slide.X, slide.Y
	return out
}
