package outline

import (
	"math"

	"brimline/plane"
)

// primitive is a straight or a circle fitted to marks from..to of a trail, each with its own
// covariance: a place on it, the direction of travel there and the curvature, positive to the
// left. cov is that of (shift to the left, turn, curvature) at that place.
type primitive struct {
	kind     string
	from, to int
	at, dir  plane.Point
	k        float64
	cov      [3][3]float64
	chi      float64
}

// left is the signed distance of p to the left: with F = n·q − ½κ|q|² the root of F = d − ½κd².
func (f *primitive) left(p plane.Point) float64 {
	q := p.Sub(f.at)
	v := f.dir.Left().Dot(q) - f.k/2*q.Dot(q)
	return 2 * v / (1 + math.Sqrt(math.Max(0, 1-2*f.k*v)))
}

// along is the direction of travel at the foot of p.
func (f *primitive) along(p plane.Point) plane.Point {
	n := f.dir.Left().Sub(p.Sub(f.at).Mul(f.k)).Unit()
	return plane.Point{X: n.Y, Y: -n.X}
}

// shifts is how the curve moves to the left at the foot of p as its three figures grow.
func (f *primitive) shifts(p plane.Point) [3]float64 {
	q := p.Sub(f.at)
	d := f.left(p)
	m := math.Max(1-f.k*d, 1e-9)
	return [3]float64{(1 - f.k*f.dir.Left().Dot(q)) / m, f.dir.Dot(q) / m, (q.Dot(q) - d*d) / 2 / m}
}

// turns is the same of the direction there.
func (f *primitive) turns(p plane.Point) [3]float64 {
	s := f.dir.Dot(p.Sub(f.at))
	if turn := plane.Between(f.dir, f.along(p)); math.Abs(turn) > 1e-3 {
		s = turn / f.k
	}
	return [3]float64{0, 1, s}
}

// spread is aᵀ·cov·b.
func (f *primitive) spread(a, b [3]float64) float64 {
	v := 0.0
	for i := range 3 {
		for j := range 3 {
			v += a[i] * f.cov[i][j] * b[j]
		}
	}
	return v
}

// fitStraight and fitArc fit marks from..to orthogonally (Gauss–Newton); ok is false where the
// marks do not follow one another along the result.
func fitStraight(t *trail, from, to int) (primitive, bool) {
	a, b := t.point(from), t.point(to)
	f := primitive{kind: "straight", from: from, to: to, at: plane.Lerp(a, b, 0.5), dir: b.Sub(a).Unit()}
	f.settle(t, 2, 2)
	for i := from; i < to; i++ {
		if t.point(i+1).Sub(t.point(i)).Dot(f.dir) <= 0 {
			return f, false
		}
	}
	return f, true
}

// Most turn between neighbouring marks of one arc, and over all of it: common practice, no source.
const (
	mostStepTurn = 1.35
	mostSweep    = 5.9
)

func fitArc(t *trail, from, to int) (primitive, bool) {
	mid := (from + to) / 2
	s := plane.ArcThrough(t.point(from), t.point(mid), t.point(to))
	share := 0.5
	if s.Sweep() != 0 {
		_, share = s.Nearest(t.point(mid))
	}
	f := primitive{kind: "arc", from: from, to: to, at: t.point(mid), dir: s.Tangent(share), k: s.Curvature()}
	if math.Abs(f.k)*t.gap(mid) > 2*mostStepTurn || !f.at.Finite() {
		return f, false
	}
	f.settle(t, 3, 6)
	sum := 0.0
	for i := from; i < to; i++ {
		turn := plane.Between(f.along(t.point(i)), f.along(t.point(i+1)))
		if math.Abs(turn) > mostStepTurn || t.point(i+1).Sub(t.point(i)).Dot(f.along(t.point(i))) <= 0 {
			return f, false
		}
		sum += turn
	}
	return f, math.Abs(sum) <= mostSweep
}

// settle takes so many steps over the first n figures, and then the sum of squares.
func (f *primitive) settle(t *trail, n, steps int) {
	size := math.Max(t.point(f.from).Dist(t.point(f.to)), t.gap(f.from)) / 2
	scale := [3]float64{1, 1 / size, 1 / (size * size)}
	for range steps {
		var a [3][3]float64
		var b [3]float64
		for i := n; i < 3; i++ {
			a[i][i] = 1
		}
		for i := f.from; i <= f.to; i++ {
			p := t.point(i)
			w := 1 / t.variance(i, f.along(p).Left())
			r, d := f.shifts(p), f.left(p)
			for k := range n {
				for l := range n {
					a[k][l] += w * r[k] * scale[k] * r[l] * scale[l]
				}
				b[k] += w * r[k] * scale[k] * d
			}
		}
		inv := invert3(a)
		var x [3]float64
		for k := range n {
			for l := range n {
				f.cov[k][l] = inv[k][l] * scale[k] * scale[l]
				x[k] += inv[k][l] * b[l] * scale[k]
			}
		}
		f.at = f.at.Add(f.dir.Left().Mul(x[0]))
		f.dir = f.dir.Turn(x[1])
		f.k += x[2]
		if math.Abs(x[0]) < 1e-7 && math.Abs(x[1])*size < 1e-7 && math.Abs(x[2])*size*size < 1e-7 {
			break
		}
	}
	f.chi = 0
	for i := f.from; i <= f.to; i++ {
		p := t.point(i)
		d := f.left(p)
		f.chi += d * d / t.variance(i, f.along(p).Left())
	}
}

// invert3 is the inverse of a symmetric positive definite matrix by cofactors, its diagonal
// lifted by rounding's share.
func invert3(m [3][3]float64) [3][3]float64 {
	for i := range 3 {
		m[i][i] *= 1 + 1e-12
	}
	var c [3][3]float64
	for i := range 3 {
		for j := range 3 {
			a, b, p, q := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
			c[j][i] = m[a][p]*m[b][q] - m[a][q]*m[b][p]
		}
	}
	det := m[0][0]*c[0][0] + m[0][1]*c[1][0] + m[0][2]*c[2][0]
	for i := range 3 {
		for j := range 3 {
			c[i][j] /= det
		}
	}
	return c
}
