package outline

import (
	"math"

	"brimline/plane"
)

// describe fills the line from the fitted chain.
func (c *chain) describe(out *Line) {
	path, count := c.path(c.q)
	out.Path = path
	whole := c.figures(c.q)
	sd := c.figureSDs()
	out.Length, out.LengthSD = whole[0], sd[0]
	if out.Closed {
		out.Clockwise = whole[1] < 0
		out.Area, out.AreaSD = math.Abs(whole[1]), sd[1]
	}
	for _, n := range c.normals(out.Marks) {
		out.Normals = append(out.Normals, plane.Point{X: n[0], Y: n[1]})
	}
	first := 0
	for i := range c.pieces {
		r := c.describeRun(i, first, count[i])
		r.Length, r.LengthSD = whole[2+i], sd[2+i]
		out.Runs = append(out.Runs, r)
		first += count[i]
	}
	c.turns(out)
}

func (c *chain) describeRun(i, first, count int) Run {
	p := &c.pieces[i]
	r := Run{Kind: p.kind, Found: c.l.Runs[p.run].found, From: p.names[0], To: p.names[1], Joint: p.joint, First: first, Pieces: count, Turn: math.NaN()}
	if c.l.Runs[p.run].soft {
		r.Kind = "soft"
	}
	if p.kind == "curve" {
		return r
	}
	s := c.segment(c.q, p)
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
	r.Sagitta = math.Abs(s.Sagitta())
	r.SagittaSD = c.sdOf(func(q []float64) float64 { return math.Abs(c.segment(q, p).Sagitta()) })
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
		if b.Pieces == 0 || out.Runs[i].Pieces == 0 {
			continue // all its marks on one place
		}
		u := out.Path.Segs[b.First+b.Pieces-1].Tangent(1)
		v := out.Path.Segs[out.Runs[i].First].Tangent(0)
		out.Runs[i].Turn = math.Atan2(u.Cross(v), u.Dot(v))
	}
}

// figures of the line as a whole: its length, its signed area (0 when open), and the length of
// every piece.
func (c *chain) figures(q []float64) []float64 {
	path, count := c.path(q)
	out := make([]float64, 2+len(count))
	if c.l.Closed {
		out[1] = path.Area()
	}
	at := 0
	for i, n := range count {
		for _, s := range path.Segs[at : at+n] {
			out[2+i] += s.Length()
		}
		at += n
		out[0] += out[2+i]
	}
	return out
}

// sdOf propagates the covariance of the unknowns into one figure.
func (c *chain) sdOf(f func(q []float64) float64) float64 {
	return c.sdsOf(func(q []float64) []float64 { return []float64{f(q)} })[0]
}

// sdsOf propagates the covariance of the unknowns into the standard deviations of figures.
func (c *chain) sdsOf(f func(q []float64) []float64) []float64 { return roots(c.covOf(f)) }

// figureSDs are those of the figures of the line.
func (c *chain) figureSDs() []float64 { return roots(c.figureCov()) }

// roots are the square roots of the diagonal.
func roots(v []float64) []float64 {
	n := int(math.Sqrt(float64(len(v))) + 0.5)
	out := make([]float64, n)
	for k := range out {
		out[k] = math.Sqrt(math.Max(v[k*n+k], 0))
	}
	return out
}

// covOf propagates the covariance of the unknowns into figures.
func (c *chain) covOf(f func(q []float64) []float64) []float64 {
	m := len(f(c.q))
	g := make([]float64, c.n*m)
	c.slopes(f, g, m, make([]bool, c.n))
	return c.propagate(g, m)
}

// slopes fills in how m figures grow with each unknown that is not done, by central differences.
func (c *chain) slopes(f func(q []float64) []float64, g []float64, m int, done []bool) {
	const h = 1e-5
	q := append([]float64(nil), c.q...)
	for a := range q {
		if done[a] {
			continue
		}
		keep := q[a]
		q[a] = keep + h
		up := f(q)
		q[a] = keep - h
		for k, down := range f(q) {
			g[a*m+k] = (up[k] - down) / (2 * h)
		}
		q[a] = keep
	}
}

// propagate is gᵀ·C·g, g by unknown.
func (c *chain) propagate(g []float64, m int) []float64 {
	out := make([]float64, m*m)
	row := make([]float64, c.n)
	for k := range m {
		for b := range row {
			row[b] = 0
		}
		for a := range c.n {
			if x := g[a*m+k]; x != 0 {
				for b, v := range c.cov[a*c.n : (a+1)*c.n] {
					row[b] += x * v
				}
			}
		}
		for l := range m {
			for b, v := range row {
				out[k*m+l] += v * g[b*m+l]
			}
		}
	}
	return out
}
