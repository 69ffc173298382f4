package advise

import (
	"brimline/adjust"
	"brimline/network"
	"brimline/plane"
)

// Outline gives, for each mark of a line, its move along its normal (a unit vector) in the datum
// of the line itself: what is left after the best rigid fit on all the line's marks. The gradient
// runs over all of them. A line of fewer than two marks has no moves of its own.
func Outline(s *adjust.Solution, marks []int, normals []plane.Point) []adjust.Functional {
	f := newFit(s.X, marks)
	out := make([]adjust.Functional, len(marks))
	for i, m := range marks {
		grad := make([]float64, 2*len(marks))
		grad[2*i], grad[2*i+1] = normals[i].X, normals[i].Y
		pull := f.pull(s.X.Point(m), normals[i])
		for k, c := range pull {
			for j, r := range f.row[k] {
				grad[j] -= c * r
			}
		}
		out[i] = adjust.Functional{Name: s.Net.Marks[m], Marks: marks, Grad: grad}
	}
	return out
}

// Edges are the same figures as questions of an order, in the short form: one for each mark of
// the line. open holds by mark of the network what stays open about the edge; nil: nothing.
func Edges(s *adjust.Solution, marks []int, normals []plane.Point, open []float64, tolerance float64) []Ask {
	out := make([]Ask, len(marks))
	for i, m := range marks {
		f := adjust.Functional{Name: "edge", Marks: []int{m}, Grad: []float64{normals[i].X, normals[i].Y}, Tolerance: tolerance}
		out[i] = Ask{Name: "edge", At: s.Net.Marks[m], Func: f, Fit: marks, Tolerance: tolerance}
		if open != nil {
			out[i].Open = open[m]
		}
	}
	return out
}

// fit is the rigid fit on marks: shift and turn of the origin as functionals of their moves.
type fit struct {
	marks []int
	row   [3][]float64 // by x and y of marks: shift x, shift y, turn
	z     [3][]float64 // covariance of all marks with them; see ground.addFit
}

// newFit: turn = Σ d×δ / Σ d² about the middle, shift of the origin = mean δ − turn × middle
// (after adjust.Frame). Marks must have places.
func newFit(x network.State, marks []int) *fit {
	f := &fit{marks: marks}
	for k := range f.row {
		f.row[k] = make([]float64, 2*len(marks))
	}
	var c plane.Point
	for _, m := range marks {
		c = c.Add(x.Point(m))
	}
	n := float64(len(marks))
	c = c.Mul(1 / n)
	inertia := 0.0
	for _, m := range marks {
		d := x.Point(m).Sub(c)
		inertia += d.Dot(d)
	}
	for i, m := range marks {
		d := x.Point(m).Sub(c)
		tx, ty := 0.0, 0.0
		if inertia > 0 {
			tx, ty = -d.Y/inertia, d.X/inertia
		}
		f.row[2][2*i], f.row[2][2*i+1] = tx, ty
		f.row[0][2*i], f.row[0][2*i+1] = 1/n+c.Y*tx, c.Y*ty
		f.row[1][2*i], f.row[1][2*i+1] = -c.X*tx, 1/n-c.X*ty
	}
	return f
}

// pull is how much of shift x, shift y and turn shows along a normal at p.
func (f *fit) pull(p, normal plane.Point) [3]float64 {
	return [3]float64{normal.X, normal.Y, normal.Y*p.X - normal.X*p.Y}
}

// of is the shift and turn in the moves of all marks.
func (f *fit) of(move []float64) [3]float64 {
	var p [3]float64
	for i, m := range f.marks {
		for k := range p {
			p[k] += f.row[k][2*i]*move[2*m] + f.row[k][2*i+1]*move[2*m+1]
		}
	}
	return p
}
