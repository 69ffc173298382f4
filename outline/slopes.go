package outline

import "brimline/plane"

// nearReach is how many marks to either side of one on a fair curve are drawn anew to see what its
// move does: its pull fades to about a quarter from each to the next, to 10⁻⁵ here.
const nearReach = 8

// figureCov is the covariance of the figures of the line. What a mark inside a long fair curve does
// is taken from the marks around it alone.
func (c *chain) figureCov() []float64 {
	path, count := c.path(c.q)
	m := 2 + len(count)
	g := make([]float64, c.n*m)
	local := make([]bool, c.n)
	first := 0
	for i := range c.pieces {
		c.curveSlopes(i, path.Segs[first:first+count[i]], g, m, local)
		first += count[i]
	}
	c.slopes(c.figures, g, m, local)
	return c.propagate(g, m)
}

// curveSlopes fills in the slopes of length, area and length of piece i for the marks inside it.
func (c *chain) curveSlopes(i int, segs []plane.Segment, g []float64, m int, done []bool) {
	p := &c.pieces[i]
	spans := len(p.inner) + 1
	if p.kind != "curve" || len(segs) != 2*spans || spans < 2*nearReach+2 {
		return
	}
	ring := p.from == p.to
	start, end := c.curveEnds(c.q, i)
	for k, v := range p.inner {
		lo, hi := k+1-nearReach, k+1+nearReach
		from, to := start, end
		if !ring {
			lo, hi = max(lo, 0), min(hi, spans)
		}
		if ring || lo > 0 {
			t := segs[2*((lo+spans)%spans)].Tangent(0)
			from = &t
		}
		if ring || hi < spans {
			t := segs[2*(hi%spans)].Tangent(0)
			to = &t
		}
		pts := stretch(segs, lo, hi)
		own := k + 1 - lo
		for axis := range 2 {
			length, area := moveOne(pts, own, axis, from, to)
			a := 2*v + axis
			g[a*m], g[a*m+2+i], done[a] = length, length, true
			if c.l.Closed {
				g[a*m+1] = area
			}
		}
	}
}

// stretch lists the points of a curve of two segments a span from one to another, round a ring where
// their numbers run out.
func stretch(segs []plane.Segment, from, to int) []plane.Point {
	var out []plane.Point
	n := len(segs)
	for j := from; j <= to; j++ {
		if 2*j == n {
			out = append(out, segs[n-1].B)
		} else {
			out = append(out, segs[(2*j+n)%n].A)
		}
	}
	return out
}

// moveOne is what length and area of a fair curve gain as one of its points moves along an axis.
func moveOne(pts []plane.Point, k, axis int, from, to *plane.Point) (length, area float64) {
	const h = 1e-5
	keep := pts[k]
	for _, sign := range []float64{1, -1} {
		pts[k] = keep
		if axis == 0 {
			pts[k].X += sign * h
		} else {
			pts[k].Y += sign * h
		}
		for _, s := range plane.Fair(pts, false, from, to).Segs {
			length += sign * s.Length() / (2 * h)
			area += sign * (plane.Segment{A: s.A.Sub(keep), B: s.B.Sub(keep), Bulge: s.Bulge}).SignedArea() / (2 * h)
		}
	}
	pts[k] = keep
	return length, area
}
