package outline

import (
	"math"

	"brimline/plane"
)

// oblong is an ellipse: centre, half axes, direction of the first.
type oblong struct{ x, y, a, b, turn float64 }

// offset is the signed distance of p outward of the ellipse: Newton's
// steps on the foot's eccentric angle, from the angle of p itself.
func (e oblong) offset(p plane.Point) float64 {
	q := p.Sub(plane.Point{X: e.x, Y: e.y}).Turn(-e.turn)
	u := math.Atan2(q.Y*e.a, q.X*e.b)
	var s, c float64
	for range 8 {
		s, c = math.Sincos(u)
		f := (e.a*e.a-e.b*e.b)*s*c - q.X*e.a*s + q.Y*e.b*c
		g := (e.a*e.a-e.b*e.b)*(c*c-s*s) - q.X*e.a*c - q.Y*e.b*s
		if g >= 0 {
			break
		}
		step := f / g
		u -= step
		if math.Abs(step) < 1e-12 {
			break
		}
	}
	s, c = math.Sincos(u)
	n := plane.Point{X: e.b * c, Y: e.a * s}.Unit()
	return q.Sub(plane.Point{X: e.a * c, Y: e.b * s}).Dot(n)
}

func (e *oblong) part(k int) *float64 {
	return []*float64{&e.x, &e.y, &e.a, &e.b, &e.turn}[k]
}

// startEllipse has the moments of the line: of a full ellipse they are a²/4 and b²/4.
func startEllipse(p plane.Path) oblong {
	at := p.Flatten(0.01)
	n := len(at)
	var area float64
	var mean plane.Point
	for i, u := range at {
		v := at[(i+1)%n]
		x := u.Sub(at[0]).Cross(v.Sub(at[0])) / 2
		area += x
		mean = mean.Add(u.Add(v).Add(at[0]).Mul(x / 3))
	}
	mean = mean.Mul(1 / area)
	var xx, xy, yy float64
	for i := range at {
		u, v := at[i].Sub(mean), at[(i+1)%n].Sub(mean)
		w := u.Cross(v) / 12 / area
		xx += w * (u.X*u.X + u.X*v.X + v.X*v.X)
		yy += w * (u.Y*u.Y + u.Y*v.Y + v.Y*v.Y)
		xy += w / 2 * (2*u.X*u.Y + u.X*v.Y + v.X*u.Y + 2*v.X*v.Y)
	}
	half, root := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	return oblong{mean.X, mean.Y, 2 * math.Sqrt(half+root), 2 * math.Sqrt(math.Max(half-root, 1e-6)), math.Atan2(2*xy, xx-yy) / 2}
}

// ellipse fits an ellipse to all marks of the line by their distances, with their full covariance.
// Its figures are length, width and the furthest that a mark lies off; nil for fewer than seven
// marks.
func (c *chain) ellipse(out *Line, edge []float64) *Family {
	n := len(out.Marks)
	if n < 7 {
		return nil
	}
	e := startEllipse(out.Path)
	w := c.acrossWeights(out, edge)
	var cov, g []float64
	chi, off := 0.0, 0.0
	if c.farOff(out, e) {
		return nil
	}
	for range 20 {
		r, j := c.offEllipse(out, e)
		cov, g, chi = normalOf(w, j, r, n, 5)
		cov = invert(cov, 5)
		off = 0
		for _, d := range r {
			off = math.Max(off, math.Abs(d))
		}
		move := 0.0
		for k := range 5 {
			step := 0.0
			for l := range 5 {
				step -= cov[k*5+l] * g[l]
			}
			*e.part(k) += step
			move = math.Max(move, math.Abs(step))
		}
		if move < 1e-7 {
			break
		}
	}
	if !(e.b > 0.2*e.a) || math.IsNaN(chi) {
		return nil
	}
	return &Family{Kind: "ellipse", Test: Test{chi, chiSquare99(n - 5), n - 5}, Figures: []Figure{
		{"length", 2 * e.a, 2 * math.Sqrt(cov[2*5+2])}, {"width", 2 * e.b, 2 * math.Sqrt(cov[3*5+3])}, {Name: "off", Value: off}}}
}

// offEllipse gives the distances of the marks from an ellipse with their slopes.
func (c *chain) offEllipse(out *Line, e oblong) (r, j []float64) {
	const h = 1e-6
	r, j = make([]float64, len(out.Marks)), make([]float64, 5*len(out.Marks))
	for i, m := range out.Marks {
		p := c.block.point(m)
		r[i] = e.offset(p)
		for k := range 5 {
			up, down := e, e
			*up.part(k) += h
			*down.part(k) -= h
			j[i*5+k] = (up.offset(p) - down.offset(p)) / (2 * h)
		}
	}
	return r, j
}

// farOff says that a mark lies off the ellipse by more than a sixth of its lesser half axis: no
// ellipse at all.
func (c *chain) farOff(out *Line, e oblong) bool {
	for _, m := range out.Marks {
		if d := e.offset(c.block.point(m)); !(math.Abs(d) < e.b/6) {
			return true
		}
	}
	return false
}

// acrossWeights is the inverse covariance of the marks across the line.
func (c *chain) acrossWeights(out *Line, edge []float64) []float64 {
	n := len(out.Marks)
	v := make([]float64, n*n)
	own := c.block.some(c.block.own, out.Marks)
	for i, m := range out.Marks {
		a := out.Normals[i]
		for k := range out.Marks {
			b, x, y := out.Normals[k], own[2*i*2*n+2*k:], own[(2*i+1)*2*n+2*k:]
			v[i*n+k] = a.X*(x[0]*b.X+x[1]*b.Y) + a.Y*(y[0]*b.X+y[1]*b.Y)
		}
		v[i*n+i] += edge[m]*edge[m] + leastSD*leastSD
	}
	return invert(v, n)
}

// normalOf gives jᵀ·w·j, jᵀ·w·r and rᵀ·w·r of m rows and n unknowns.
func normalOf(w, j, r []float64, m, n int) (normal, g []float64, sum float64) {
	normal, g = make([]float64, n*n), make([]float64, n)
	wj := make([]float64, n)
	for a := range m {
		for k := range wj {
			wj[k] = 0
		}
		wr := 0.0
		for b := range m {
			v := w[a*m+b]
			wr += v * r[b]
			for k := range n {
				wj[k] += v * j[b*n+k]
			}
		}
		sum += r[a] * wr
		for k := range n {
			g[k] += j[a*n+k] * wr
			for l := range n {
				normal[k*n+l] += j[a*n+k] * wj[l]
			}
		}
	}
	return normal, g, sum
}
