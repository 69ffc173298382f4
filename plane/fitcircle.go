package plane

import "math"

// FitCircle is the circle with the least sum of squared distances to the points (geometric
// fit), and rms their root mean square distance from it. ok is false for fewer than three
// distinct points, and where the radius exceeds 10⁴ times the extent of the points (the
// diagonal of their box): there is no telling such an arc from a straight. The circle found is
// returned even then; a perfect straight gives R = +Inf and Centre the mean of the points.
//
// Gauss–Newton, damped (Levenberg, Marquardt), from AlgebraicCircle. The unknowns are shift,
// turn and curvature of the circle at its point nearest to the data, which stay well posed as
// the arc flattens. Problem and test values: W. Gander, G. H. Golub, R. Strebel,
// Least-squares fitting of circles and ellipses, BIT 34 (1994) 558–578.
func FitCircle(pts []Point) (c Circle, rms float64, ok bool) {
	if threeDistinct := len(firstThree(pts)) == 3; !threeDistinct {
		return Circle{}, 0, false
	}
	f := startCurve(pts)
	sum := sumSquares(f, pts)
	damp := 1e-6
	for range 500 {
		n := newNormal(f, pts)
		next := n.step(f, damp)
		after := sumSquares(next, pts)
		if !(after <= sum) {
			if damp *= 8; damp > 1e12 {
				break
			}
			continue
		}
		done := sum-after <= 1e-15*sum && n.still(f, next)
		f, sum, damp = next, after, damp/8
		if done {
			break
		}
	}
	return circleOf(f, pts), math.Sqrt(sum / float64(len(pts))), withinReach(f, pts)
}

// firstThree are the first three points that differ from each other.
func firstThree(pts []Point) []Point {
	var out []Point
	for _, p := range pts {
		fresh := true
		for _, o := range out {
			fresh = fresh && o != p
		}
		if fresh {
			if out = append(out, p); len(out) == 3 {
				break
			}
		}
	}
	return out
}

// startCurve is the algebraic circle, or the line of least squares where there is none,
// described from its point nearest to the mean of the points.
func startCurve(pts []Point) curve {
	mean := centroid(pts)
	if c, ok := AlgebraicCircle(pts); ok {
		out := mean.Sub(c.Centre).Unit()
		if out == (Point{}) {
			out = Point{X: 1}
		}
		return curve{1 / c.R, out, c.Centre.Add(out.Mul(c.R))}
	}
	var xx, xy, yy float64
	for _, p := range pts {
		q := p.Sub(mean)
		xx, xy, yy = xx+q.X*q.X, xy+q.X*q.Y, yy+q.Y*q.Y
	}
	return curve{0, Point{X: 1}.Turn(math.Atan2(2*xy, xx-yy) / 2).Left(), mean}
}

func sumSquares(f curve, pts []Point) float64 {
	sum := 0.0
	for _, p := range pts {
		d := f.distance(p)
		sum += d * d
	}
	return sum
}

// normal are the normal equations for (shift along g, turn, curvature), each scaled by the
// extent of the data so that the three are of one size.
type normal struct {
	a     [3][3]float64
	b     [3]float64
	scale [3]float64
}

// newNormal uses (1 + κd)·dd = dF − ½d²·dκ, from F = d + κd²/2.
func newNormal(f curve, pts []Point) normal {
	size := extent(pts)
	n := normal{scale: [3]float64{1, 1 / size, 1 / (size * size)}}
	side := f.g.Left()
	for _, p := range pts {
		q, d := p.Sub(f.a), f.distance(p)
		m := math.Max(1+f.k*d, 1e-9) // 0 only at the centre
		row := [3]float64{
			-(1 + f.k*f.g.Dot(q)) / m,
			side.Dot(q) / m * n.scale[1],
			(q.Dot(q) - d*d) / 2 / m * n.scale[2],
		}
		for i := range row {
			for j := range row {
				n.a[i][j] += row[i] * row[j]
			}
			n.b[i] -= row[i] * d
		}
	}
	return n
}

// step is the curve after one damped step.
func (n normal) step(f curve, damp float64) curve {
	a := n.a
	for i := range a {
		a[i][i] += damp*n.a[i][i] + 1e-300
	}
	x := solve3(a, n.b)
	g := f.g.Turn(x[1] * n.scale[1])
	return curve{f.k + x[2]*n.scale[2], g, f.a.Add(f.g.Mul(x[0]))}
}

// still says that from f to g no point of the data's size moves by a figure that counts.
func (n normal) still(f, g curve) bool {
	size := 1 / n.scale[1]
	move := f.a.Dist(g.a) + size*f.g.Dist(g.g) + size*size*math.Abs(f.k-g.k)
	return move <= 1e-13*size
}

// solve3 is Cramer's rule; zeros where the matrix is singular.
func solve3(a [3][3]float64, b [3]float64) (x [3]float64) {
	det := det3(a)
	if det == 0 || math.IsNaN(det) {
		return x
	}
	for j := range x {
		m := a
		for i := range m {
			m[i][j] = b[i]
		}
		x[j] = det3(m) / det
	}
	return x
}

func det3(m [3][3]float64) float64 {
	return m[0][0]*(m[1][1]*m[2][2]-m[1][2]*m[2][1]) -
		m[0][1]*(m[1][0]*m[2][2]-m[1][2]*m[2][0]) +
		m[0][2]*(m[1][0]*m[2][1]-m[1][1]*m[2][0])
}

func extent(pts []Point) float64 { return BoundsOf(pts...).Diagonal() }

func circleOf(f curve, pts []Point) Circle {
	if f.k == 0 {
		return Circle{centroid(pts), math.Inf(1)}
	}
	return Circle{f.a.Sub(f.g.Mul(1 / f.k)), 1 / math.Abs(f.k)}
}

func withinReach(f curve, pts []Point) bool {
	return math.Abs(f.k)*extent(pts)*1e4 >= 1
}
