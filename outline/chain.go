package outline

import (
	"math"

	"brimline/adjust"
	"brimline/finding"
	"brimline/plane"
)

// piece is one run of the chain between two vertices (numbers into chain.at).
type piece struct {
	kind  string // straight, arc, curve
	from  int    // vertex
	to    int
	inner []int // marks: straight and arc; vertices: curve
	bulge int   // place of the arc's unknown in q, -1 none
	rise  *rise // of an arc of two marks that a bow reads
	joint string
	names [2]string
	run   int // run of the book
}

// chain is the unknown line: q holds x and y of every vertex, then the bulges.
type chain struct {
	s      *adjust.Solution
	l      Spec
	vertex []int // mark of each vertex
	pieces []piece
	q      []float64
	rows   []row
	cov    []float64 // of q
	n      int
	resSD  []float64
	res    []float64
}

// row is one condition: a coordinate of a vertex (axis 0 or 1), the distance of a mark across a
// piece (axis 2), a joint said to be tangent (axis 3, at the start of the piece), or the rise of an
// arc (axis 4).
type row struct {
	axis, vertex, mark, piece int
}

func newChain(s *adjust.Solution, l Spec) *chain {
	c := &chain{s: s, l: l}
	for ri, r := range l.Runs {
		kind, last := r.Kind, len(r.Marks)-1
		if kind == "any" {
			kind = "curve"
		}
		if kind != "curve" && r.Marks[0] == r.Marks[last] && last > 2 { // a whole loop: two halves
			h := len(r.Marks) / 2
			c.add(kind, r.Marks[:h+1], r.Joint, ri, r.Names[0], r.Names[h])
			c.add(kind, r.Marks[h:], "tangent", ri, r.Names[h], r.Names[0])
			continue
		}
		c.add(kind, r.Marks, r.Joint, ri, r.Names[0], r.Names[last])
	}
	return c
}

// add appends a piece; its first vertex is the last of the piece before.
func (c *chain) add(kind string, marks []int, joint string, run int, from, to string) {
	p := piece{kind: kind, bulge: -1, joint: joint, names: [2]string{from, to}, run: run}
	if len(c.pieces) > 0 {
		p.from = c.pieces[len(c.pieces)-1].to
	} else {
		p.from = c.newVertex(marks[0])
	}
	for _, m := range marks[1 : len(marks)-1] {
		if kind == "curve" {
			p.inner = append(p.inner, c.newVertex(m))
		} else {
			p.inner = append(p.inner, m)
		}
	}
	last := marks[len(marks)-1]
	if c.l.Closed && last == c.vertex[0] {
		p.to = 0
	} else {
		p.to = c.newVertex(last)
	}
	c.pieces = append(c.pieces, p)
}

func (c *chain) newVertex(mark int) int {
	c.vertex = append(c.vertex, mark)
	return len(c.vertex) - 1
}

// mostBulge is that of 340°: an open arc said to sweep more has its marks out of order.
var mostBulge = math.Tan(340 * math.Pi / 180 / 4)

// begin sets the start of the unknowns and the list of conditions.
func (c *chain) begin() []finding.Finding {
	var found []finding.Finding
	for _, m := range c.vertex {
		p := c.s.X.Point(m)
		c.q = append(c.q, p.X, p.Y)
	}
	taken := make([]bool, len(c.pieces)) // tangent joints that hold an arc without inner marks
	for i := range c.pieces {
		p := &c.pieces[i]
		if p.kind != "arc" {
			continue
		}
		side, read := c.risen(p)
		found = append(found, side...)
		if len(p.inner) == 0 && !read && !c.held(i, taken) {
			p.kind = "straight"
			found = append(found, finding.Finding{Code: "arc-alone", Lines: []string{c.l.Name}, Marks: p.names[:]})
			continue
		}
		b := c.firstBulge(p)
		if math.Abs(b) > mostBulge {
			p.kind = "straight"
			found = append(found, finding.Finding{Code: "arc-order", Lines: []string{c.l.Name}, Marks: p.names[:]})
			continue
		}
		p.bulge = len(c.q)
		c.q = append(c.q, b)
	}
	c.n = len(c.q)
	for v := range c.vertex {
		c.rows = append(c.rows, row{axis: 0, vertex: v, mark: c.vertex[v]}, row{axis: 1, vertex: v, mark: c.vertex[v]})
	}
	for i, p := range c.pieces {
		if p.kind == "curve" {
			continue
		}
		for _, m := range p.inner {
			c.rows = append(c.rows, row{axis: 2, mark: m, piece: i})
		}
	}
	for i := range c.pieces {
		if c.leans(i) {
			c.rows = append(c.rows, row{axis: 3, piece: i})
		}
		if c.pieces[i].rise != nil && c.pieces[i].bulge >= 0 {
			c.rows = append(c.rows, row{axis: 4, piece: i})
		}
	}
	return found
}

func (c *chain) before(i int) int { return (i + len(c.pieces) - 1) % len(c.pieces) }

// firstBulge takes the arc through the inner mark nearest the middle.
func (c *chain) firstBulge(p *piece) float64 {
	a, b := c.point(c.q, p.from), c.point(c.q, p.to)
	if p.rise != nil {
		return 2 * p.rise.h / math.Max(a.Dist(b), leastSD)
	}
	if len(p.inner) == 0 {
		return 0.1
	}
	best, score := 0.0, math.Inf(1)
	for _, m := range p.inner {
		at := c.s.X.Point(m)
		if d := math.Abs(at.Dist(a) - at.Dist(b)); d < score {
			score = d
			best = plane.ArcThrough(a, at, b).Bulge
		}
	}
	return best
}

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
		p := c.s.X.Point(r.mark)
		return q[2*r.vertex+r.axis] - []float64{p.X, p.Y}[r.axis]
	case 2:
		return -leftOf(c.segment(q, &c.pieces[r.piece]), c.s.X.Point(r.mark))
	case 4:
		p := &c.pieces[r.piece]
		return c.segment(q, p).Sagitta() - p.rise.h
	}
	before := c.segment(q, &c.pieces[c.before(r.piece)])
	after := c.segment(q, &c.pieces[r.piece])
	u, v := before.Tangent(1), after.Tangent(0)
	return math.Atan2(u.Cross(v), u.Dot(v))
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
	var start, end *plane.Point
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
	return plane.Fair(pts, false, start, end)
}
