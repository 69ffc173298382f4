package outline

import (
	"math"

	"brimline/plane"
)

// describe fills the line from the fitted chain.
func (c *chain) describe(out *Line) {
	path, count := c.path(c.q)
	out.Path = path
	out.Length = path.Length()
	out.LengthSD = c.sdOf(func(q []float64) float64 { p, _ := c.path(q); return p.Length() })
	if out.Closed {
		a := path.Area()
		out.Clockwise = a < 0
		out.Area = math.Abs(a)
		out.AreaSD = c.sdOf(func(q []float64) float64 { p, _ := c.path(q); return p.Area() })
	}
	for _, n := range c.normals(out.Marks) {
		out.Normals = append(out.Normals, plane.Point{X: n[0], Y: n[1]})
	}
	first := 0
	for i := range c.pieces {
		out.Runs = append(out.Runs, c.describeRun(i, first, count[i]))
		first += count[i]
	}
	c.turns(out)
}

func (c *chain) describeRun(i, first, count int) Run {
	p := &c.pieces[i]
	r := Run{Kind: p.kind, From: p.names[0], To: p.names[1], Joint: p.joint, First: first, Pieces: count, Turn: math.NaN()}
	if p.kind == "curve" {
		r.Length = c.curve(c.q, i).Length()
		r.LengthSD = c.sdOf(func(q []float64) float64 { return c.curve(q, i).Length() })
		return r
	}
	s := c.segment(c.q, p)
	r.Length = s.Length()
	r.LengthSD = c.sdOf(func(q []float64) float64 { return c.segment(q, p).Length() })
	if p.kind == "straight" {
		r.Bearing = plane.Bearing(s.B.Sub(s.A))
		r.BearingSD = c.sdOf(func(q []float64) float64 {
			d := c.segment(q, p).B.Sub(c.segment(q, p).A)
			return math.Remainder(plane.Bearing(d)-r.Bearing, 2*math.Pi)
		})
		return r
	}
	r.Radius, r.Centre, r.Sweep = math.Abs(s.Radius()), s.Centre(), s.Sweep()
	r.RadiusSD = c.sdOf(func(q []float64) float64 { return math.Abs(c.segment(q, p).Radius()) })
	r.SweepSD = c.sdOf(func(q []float64) float64 { return c.segment(q, p).Sweep() })
	return r
}

// turns fills the turn at the start of every run against the run before.
func (c *chain) turns(out *Line) {
	for i := range out.Runs {
		if i == 0 && !out.Closed {
			continue
		}
		b := out.Runs[c.before(i)]
		u := out.Path.Segs[b.First+b.Pieces-1].Tangent(1)
		v := out.Path.Segs[out.Runs[i].First].Tangent(0)
		out.Runs[i].Turn = math.Atan2(u.Cross(v), u.Dot(v))
	}
}

// sdOf propagates the covariance of the unknowns into a figure, its derivatives by central
// differences.
func (c *chain) sdOf(f func(q []float64) float64) float64 {
	const h = 1e-5
	g := make([]float64, c.n)
	q := append([]float64(nil), c.q...)
	for a := range q {
		keep := q[a]
		q[a] = keep + h
		up := f(q)
		q[a] = keep - h
		g[a] = (up - f(q)) / (2 * h)
		q[a] = keep
	}
	v := 0.0
	for a := range g {
		if g[a] == 0 {
			continue
		}
		for b := range g {
			v += g[a] * c.cov[a*c.n+b] * g[b]
		}
	}
	return math.Sqrt(math.Max(v, 0))
}
