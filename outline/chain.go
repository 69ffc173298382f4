package outline

import (
	"brimline/adjust"
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
	near  int // the mark that lies on the edge near its start, on this side of the joint or that; −1 none

	corner int     // counted from 1: the unreached corner that it rounds
	start  float64 // bulge to begin with
}

// vertex is where pieces meet: on a mark that holds it, or (mark −1) somewhere about a place, which
// moves with the mark beside it.
type vertex struct {
	mark, beside int
	about        plane.Point
	sd           float64
	free         bool // held by the pieces that meet in it alone
}

// chain is the unknown line: q holds x and y of every vertex, then the bulges.
type chain struct {
	s      *adjust.Solution
	l      Spec
	block  *block
	frame  []float64 // covariance that the fit uses: the block's own or datum
	vertex []vertex
	pieces []piece
	q      []float64
	rows   []row
	cov    []float64 // of q
	n      int
	resSD  []float64
	res    []float64
}

// row is one condition: a coordinate of a vertex (axis 0 or 1), the distance of a mark across a
// piece (axis 2; of two pieces across the one it lies along), a joint said to be tangent (axis 3, at
// the start of the piece), the rise of an arc (axis 4), or how far a loose vertex lies from the
// place it is about (axis 5 or 6). Of the arc that rounds an unreached corner: where the tangents
// at its ends meet (axis 7 or 8), and its radius (axis 9).
type row struct {
	axis, vertex, mark, piece int
	two                       bool
}

func newChain(b *block, l Spec) *chain {
	c := &chain{s: b.s, l: l, block: b, frame: b.own}
	c.sliding()
	for ri, r := range c.l.Runs {
		kind, last := r.Kind, len(r.Marks)-1
		if kind != "curve" && r.Marks[0] == r.Marks[last] && last > 2 { // a whole loop: two halves
			h := len(r.Marks) / 2
			c.add(SpecRun{Kind: kind, Marks: r.Marks[:h+1], Names: r.Names[:h+1], Joint: r.Joint}, ri)
			c.add(SpecRun{Kind: kind, Marks: r.Marks[h:], Names: r.Names[h:], Joint: "tangent"}, ri)
			continue
		}
		c.add(r, ri)
	}
	return c
}

// add appends a piece; its first vertex is the last of the piece before.
func (c *chain) add(r SpecRun, run int) {
	last := len(r.Marks) - 1
	p := piece{kind: r.Kind, bulge: -1, joint: r.Joint, names: [2]string{r.Names[0], r.Names[last]}, run: run, near: -1, corner: r.corner, start: r.bulge}
	end := c.l.Runs[(run+1)%len(c.l.Runs)]
	if len(c.pieces) > 0 {
		p.from = c.pieces[len(c.pieces)-1].to
	} else if r.loose == atMark {
		p.from = c.newVertex(r.Marks[0])
	} else {
		p.from = c.joint(c.l.Runs[len(c.l.Runs)-1], r)
	}
	inner := r.Marks[min(1, last):last]
	switch r.loose {
	case nearMark:
		p.near = r.Marks[0]
	case between:
		inner = r.Marks[:last]
	}
	if end.loose == between {
		inner = append(append([]int(nil), inner...), r.Marks[last])
	}
	for _, m := range inner {
		if r.Kind == "curve" {
			p.inner = append(p.inner, c.newVertex(m))
		} else {
			p.inner = append(p.inner, m)
		}
	}
	if first := c.l.Runs[0]; c.l.Closed && run == len(c.l.Runs)-1 && (end.loose == between || r.Marks[last] == first.Marks[0]) {
		p.to = 0
	} else {
		p.to = c.joint(r, end)
	}
	c.pieces = append(c.pieces, p)
}

// joint makes the vertex between two runs. One that was found loose stays within half a gap or so
// of the mark near it, or of the middle between its two marks.
func (c *chain) joint(p, q SpecRun) int {
	last := len(p.Marks) - 1
	m := c.block.point(q.Marks[0])
	switch q.loose {
	case nearMark:
		gap := m.Dist(c.block.point(q.Marks[1])) + m.Dist(c.block.point(p.Marks[last-1]))
		sd := gap / 4
		if q.play > 0 {
			sd = q.play
		}
		c.vertex = append(c.vertex, vertex{mark: -1, beside: q.Marks[0], about: m, sd: sd})
	case between:
		b := c.block.point(p.Marks[last])
		c.vertex = append(c.vertex, vertex{mark: -1, beside: q.Marks[0], about: plane.Lerp(m, b, 0.5), sd: m.Dist(b) / 2})
	case turned:
		c.vertex = append(c.vertex, vertex{mark: -1, beside: q.Marks[0], about: q.about, free: true})
	default:
		return c.newVertex(p.Marks[last])
	}
	return len(c.vertex) - 1
}

func (c *chain) newVertex(mark int) int {
	c.vertex = append(c.vertex, vertex{mark: mark})
	return len(c.vertex) - 1
}
