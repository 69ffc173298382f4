package outline

import (
	"math"

	"brimline/finding"
	"brimline/plane"
)

// mostBulge is that of 340°: an open arc said to sweep more has its marks out of order.
var mostBulge = math.Tan(340 * math.Pi / 180 / 4)

// begin sets the start of the unknowns and the list of conditions.
func (c *chain) begin() []finding.Finding {
	var found []finding.Finding
	for _, v := range c.vertex {
		p := v.about
		if v.mark >= 0 {
			p = c.block.point(v.mark)
		}
		c.q = append(c.q, p.X, p.Y)
	}
	taken := make([]bool, len(c.pieces)) // tangent joints that hold an arc without inner marks
	for i := range c.pieces {
		if c.pieces[i].corner > 0 {
			taken[i], taken[(i+1)%len(c.pieces)] = true, true
		}
	}
	for i := range c.pieces {
		p := &c.pieces[i]
		if p.kind != "arc" {
			continue
		}
		if p.corner > 0 {
			p.bulge = len(c.q)
			c.q = append(c.q, p.start)
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
	c.conditions()
	return found
}

// conditions lists what holds the unknowns: vertices, marks along pieces, tangent joints, rises.
func (c *chain) conditions() {
	for i, v := range c.vertex {
		if v.free {
			continue
		}
		if v.mark < 0 {
			c.rows = append(c.rows, row{axis: 5, vertex: i, mark: v.beside}, row{axis: 6, vertex: i, mark: v.beside})
			continue
		}
		c.rows = append(c.rows, row{axis: 0, vertex: i, mark: v.mark}, row{axis: 1, vertex: i, mark: v.mark})
	}
	for i, p := range c.pieces {
		if p.kind == "curve" {
			continue
		}
		if p.near >= 0 {
			c.rows = append(c.rows, row{axis: 2, mark: p.near, piece: i, two: true})
		}
		for k, m := range p.inner {
			r := row{axis: 2, mark: m, piece: i}
			if next := (i + 1) % len(c.pieces); k == len(p.inner)-1 && c.slides(next) {
				r.piece, r.two = next, true
			} else if k == 0 && c.slides(i) {
				r.two = true
			}
			c.rows = append(c.rows, r)
		}
	}
	for i := range c.pieces {
		if p := &c.pieces[i]; p.corner > 0 {
			m := len(c.s.Net.Marks) + p.corner - 1
			c.rows = append(c.rows, row{axis: 7, mark: m, piece: i}, row{axis: 8, mark: m, piece: i}, row{axis: 9, piece: i})
		}
		if c.leans(i) {
			c.rows = append(c.rows, row{axis: 3, piece: i})
		}
		if c.pieces[i].rise != nil && c.pieces[i].bulge >= 0 {
			c.rows = append(c.rows, row{axis: 4, piece: i})
		}
	}
}

// slides says that piece i begins at a tangent joint that no mark holds: the marks beside it lie on
// whichever piece they are found at.
func (c *chain) slides(i int) bool {
	return c.vertex[c.pieces[i].from].mark < 0 && c.pieces[i].joint == "tangent"
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
		at := c.block.point(m)
		if d := math.Abs(at.Dist(a) - at.Dist(b)); d < score {
			score = d
			best = plane.ArcThrough(a, at, b).Bulge
		}
	}
	return best
}
