package plane

import "math"

// Circle has its centre and a radius R ≥ 0.
type Circle struct {
	Centre Point
	R      float64
}

// Circumcircle is the circle through three points; ok is false when they are in line (to
// rounding) or two coincide. R = abc/(4K) follows from the centre found here.
func Circumcircle(a, b, c Point) (Circle, bool) {
	u, v := b.Sub(a), c.Sub(a)
	d := 2 * u.Cross(v)
	if math.Abs(d) <= 1e-14*(u.Dot(u)+v.Dot(v)) {
		return Circle{}, false
	}
	o := u.Left().Mul(v.Dot(v)).Sub(v.Left().Mul(u.Dot(u))).Mul(1 / d)
	return Circle{a.Add(o), o.Len()}, true
}

// AlgebraicCircle is the circle that minimises Σ (|p − c|² − R²)², a linear problem: the
// start for FitCircle, too small on short arcs. ok is false for fewer than three points or
// points in line. Source: I. Kåsa, A circle fitting procedure and its error analysis, IEEE
// Trans. Instrum. Meas. 25 (1976) 8–14.
func AlgebraicCircle(pts []Point) (Circle, bool) {
	if len(pts) < 3 {
		return Circle{}, false
	}
	mean := centroid(pts)
	var xx, xy, yy, xz, yz, z float64
	for _, p := range pts {
		q := p.Sub(mean)
		s := q.Dot(q)
		xx, xy, yy = xx+q.X*q.X, xy+q.X*q.Y, yy+q.Y*q.Y
		xz, yz, z = xz+q.X*s, yz+q.Y*s, z+s
	}
	det := xx*yy - xy*xy
	if det <= 1e-14*(xx+yy)*(xx+yy) {
		return Circle{}, false
	}
	c := Point{(xz*yy - yz*xy) / (2 * det), (yz*xx - xz*xy) / (2 * det)}
	return Circle{c.Add(mean), math.Sqrt(c.Dot(c) + z/float64(len(pts)))}, true
}

func centroid(pts []Point) Point {
	var sum Point
	for _, p := range pts {
		sum = sum.Add(p.Sub(pts[0]))
	}
	return pts[0].Add(sum.Mul(1 / float64(len(pts))))
}
