package simulate

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"brimline/plane"
)

// WorstNormal is the largest 95 % uncertainty (1.96 sd) of a mark of the rim across the true
// outline, and that mark: from the true places and the sd that the book states, by a dense
// normal matrix, in the frame that fits all marks of the rim best (A. J. Pope, Transformation of
// covariance matrices due to changes in minimal control, 1971). At a kink the worse of both
// directions counts. NaN where the readings leave something unfixed.
func (c Case) WorstNormal() (mark string, u95 float64) {
	free, ok := c.free()
	if !ok {
		return "", math.NaN()
	}
	for i, name := range c.Order {
		for _, normal := range c.normals(c.Truth[name]) {
			x, y := normal.X, normal.Y
			v := x*x*free.At(2*i, 2*i) + 2*x*y*free.At(2*i, 2*i+1) + y*y*free.At(2*i+1, 2*i+1)
			if u := 1.96 * math.Sqrt(v); u > u95 {
				mark, u95 = name, u
			}
		}
	}
	return mark, u95
}

// WorstPoint is the largest standard deviation of the place of a mark of the rim as a point, the
// root of the trace of its covariance, in the same frame and by the same model as WorstNormal.
func (c Case) WorstPoint() float64 {
	free, ok := c.free()
	if !ok {
		return math.NaN()
	}
	most := 0.0
	for i := range c.Order {
		most = math.Max(most, math.Sqrt(free.At(2*i, 2*i)+free.At(2*i+1, 2*i+1)))
	}
	return most
}

// free is the covariance of the marks of the rim in the frame that fits them all best.
func (c Case) free() (*mat.Dense, bool) {
	d := c.design()
	inverse, ok := d.inverse()
	if !ok {
		return nil, false
	}
	n := len(c.Order)
	cov := mat.NewDense(2*n, 2*n, nil)
	for i, p := range c.Order {
		for k, q := range c.Order {
			for a := range 2 {
				for b := range 2 {
					cov.Set(2*i+a, 2*k+b, inverse.At(d.place[p]+a, d.place[q]+b))
				}
			}
		}
	}
	s := c.freeFrame()
	var half, free mat.Dense
	half.Mul(s, cov)
	free.Mul(&half, s.T())
	return &free, true
}

// freeFrame takes shift and turn of the whole rim out of the moves of its marks: I − G(GᵀG)⁻¹Gᵀ.
func (c Case) freeFrame() *mat.Dense {
	n := len(c.Order)
	var mid plane.Point
	for _, m := range c.Order {
		mid = mid.Add(c.Truth[m].Mul(1 / float64(n)))
	}
	inertia := 0.0
	for _, m := range c.Order {
		arm := c.Truth[m].Sub(mid)
		inertia += arm.Dot(arm)
	}
	s := mat.NewDense(2*n, 2*n, nil)
	for i, p := range c.Order {
		u := c.Truth[p].Sub(mid).Left()
		for k, q := range c.Order {
			v := c.Truth[q].Sub(mid).Left()
			same := -1 / float64(n)
			if i == k {
				same++
			}
			s.Set(2*i, 2*k, same-u.X*v.X/inertia)
			s.Set(2*i, 2*k+1, -u.X*v.Y/inertia)
			s.Set(2*i+1, 2*k, -u.Y*v.X/inertia)
			s.Set(2*i+1, 2*k+1, same-u.Y*v.Y/inertia)
		}
	}
	return s
}

// normals are the directions across the outline on both sides of a point of it.
func (c Case) normals(p plane.Point) []plane.Point {
	var out []plane.Point
	for _, s := range c.Outline.Segs {
		if q, t := s.Nearest(p); q.Dist(p) < 1e-6 {
			out = append(out, s.Tangent(t).Left())
		}
	}
	return out
}
