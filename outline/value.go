package outline

import (
	"math"

	"brimline/plane"
)

func (c *chain) point(q []float64, v int) plane.Point { return plane.Point{X: q[2*v], Y: q[2*v+1]} }

func (c *chain) segment(q []float64, p *piece) plane.Segment {
	s := plane.Segment{A: c.point(q, p.from), B: c.point(q, p.to)}
	if p.bulge >= 0 {
		s.Bulge = q[p.bulge]
	}
	return s
}

// value is the misfit of a condition at q: line minus mark for coordinates, the mark's distance
// to the left of the piece with its sign turned, the turn at a tangent joint, the sagitta less the
// rise read.
func (c *chain) value(q []float64, r row) float64 {
	switch r.axis {
	case 0, 1:
		p := c.block.point(r.mark)
		return q[2*r.vertex+r.axis] - []float64{p.X, p.Y}[r.axis]
	case 2:
		return -leftOf(c.segment(q, c.across(q, r)), c.block.point(r.mark))
	case 5:
		return q[2*r.vertex] - c.vertex[r.vertex].about.X
	case 6:
		return q[2*r.vertex+1] - c.vertex[r.vertex].about.Y
	case 7:
		return apex(c.segment(q, &c.pieces[r.piece])).X - c.block.point(r.mark).X
	case 8:
		return apex(c.segment(q, &c.pieces[r.piece])).Y - c.block.point(r.mark).Y
	case 9:
		p := &c.pieces[r.piece]
		return math.Abs(c.segment(q, p).Radius()) - c.block.corner[p.corner-1].radius
	case 4:
		p := &c.pieces[r.piece]
		return c.segment(q, p).Sagitta() - p.rise.h
	}
	before := c.segment(q, &c.pieces[c.before(r.piece)])
	after := c.segment(q, &c.pieces[r.piece])
	u, v := before.Tangent(1), after.Tangent(0)
	return math.Atan2(u.Cross(v), u.Dot(v))
}

// across is the piece that a mark is held to.
func (c *chain) across(q []float64, r row) *piece {
	p := &c.pieces[r.piece]
	if r.two {
		joint := c.point(q, p.from)
		if c.segment(q, p).Tangent(0).Dot(c.block.point(r.mark).Sub(joint)) < 0 {
			return &c.pieces[c.before(r.piece)]
		}
	}
	return p
}

// leftOf is the distance of p to the left of a straight or of the whole circle of an arc.
func leftOf(s plane.Segment, p plane.Point) float64 {
	if math.Abs(s.Bulge) < 1e-7 {
		return s.B.Sub(s.A).Unit().Cross(p.Sub(s.A))
	}
	d := p.Dist(s.Centre()) - math.Abs(s.Radius())
	if s.Bulge > 0 {
		return -d
	}
	return d
}

// path draws q: the pieces in order, and for each the number of segments it took.
func (c *chain) path(q []float64) (plane.Path, []int) {
	out := plane.Path{Closed: c.l.Closed}
	count := make([]int, len(c.pieces))
	for i := range c.pieces {
		p := &c.pieces[i]
		if p.kind != "curve" {
			out.Segs = append(out.Segs, c.segment(q, p))
			count[i] = 1
			continue
		}
		f := c.curve(q, i)
		out.Segs = append(out.Segs, f.Segs...)
		count[i] = len(f.Segs)
	}
	return out, count
}

// curve is the fair curve of one piece, tangent to its neighbours where the book says so.
func (c *chain) curve(q []float64, i int) plane.Path {
	p := &c.pieces[i]
	pts := []plane.Point{c.point(q, p.from)}
	for _, v := range p.inner {
		pts = append(pts, c.point(q, v))
	}
	if p.from == p.to {
		return plane.Fair(pts, true, nil, nil)
	}
	pts = append(pts, c.point(q, p.to))
	start, end := c.curveEnds(q, i)
	return plane.Fair(pts, false, start, end)
}

// curveEnds are the directions at the ends of a curve where its neighbours give them.
func (c *chain) curveEnds(q []float64, i int) (start, end *plane.Point) {
	p := &c.pieces[i]
	joined := i > 0 || c.l.Closed
	if b := &c.pieces[c.before(i)]; joined && p.joint == "tangent" && b.kind != "curve" {
		t := c.segment(q, b).Tangent(1)
		start = &t
	}
	next := (i + 1) % len(c.pieces)
	if a := &c.pieces[next]; (next > 0 || c.l.Closed) && a.joint == "tangent" && a.kind != "curve" && next != i {
		t := c.segment(q, a).Tangent(0)
		end = &t
	}
	return start, end
}
