package outline

import (
	"math"

	"brimline/plane"
)

// course is a line drawn for some values of its unknowns. One mark may be moved off its place, to
// see what follows.
type course struct {
	c      *chain
	path   plane.Path
	count  []int     // segments of each piece
	ends   []float64 // lengths to the end of each segment, 0 first
	moved  int       // −1 none
	moveBy plane.Point
}

func (h *Held) course(q []float64) course {
	path, count := h.c.path(q)
	return course{c: h.c, path: path, count: count, ends: ends(path), moved: -1}
}

func (c course) with(mark int, by plane.Point) course {
	c.moved, c.moveBy = mark, by
	return c
}

func (c course) mark(m int) plane.Point {
	p := c.c.s.X.Point(m)
	if m == c.moved {
		p = p.Add(c.moveBy)
	}
	return p
}

func (c course) whole() float64 { return c.ends[len(c.path.Segs)] }

// place is a point of the drawn line.
type place struct {
	at, way plane.Point
	along   float64 // from the start of the path
}

// place is the one so many metres from the start of the path; round and round a closed one, no
// further than the ends of an open one.
func (c course) place(along float64) place {
	seg, share, _ := c.path.Place(along)
	return c.on(seg, share)
}

func (c course) on(seg int, share float64) place {
	s := c.path.Segs[seg]
	return place{s.At(share), s.Tangent(share), c.ends[seg] + share*(c.ends[seg+1]-c.ends[seg])}
}

// anchor says where a mark belongs on the line: at the start of a segment (knot; the number of
// segments is the end of an open line), or (knot −1) at its foot on or beside segment near, of so
// many segments.
type anchor struct {
	mark, knot, near, of int
}

// anchor of a mark: its own joint, else its nearest foot.
func (c course) anchor(m int) anchor {
	if k := c.knot(m); k >= 0 {
		return anchor{mark: m, knot: k, of: len(c.path.Segs)}
	}
	return c.nearest(m)
}

func (c course) nearest(m int) anchor {
	near, _, _ := c.path.Nearest(c.mark(m))
	return anchor{mark: m, knot: -1, near: near, of: len(c.path.Segs)}
}

// knot is the segment that begins at the joint which a mark holds; −1 where it holds none.
func (c course) knot(m int) int {
	first := 0
	for i := range c.c.pieces {
		p := &c.c.pieces[i]
		if c.c.vertex[p.from].mark == m {
			return first
		}
		for k, v := range p.inner {
			if p.kind == "curve" && c.c.vertex[v].mark == m && c.count[i] == 2*(len(p.inner)+1) {
				return first + 2*(k+1)
			}
		}
		first += c.count[i]
		if c.c.vertex[p.to].mark == m && !c.c.l.Closed {
			return first
		}
	}
	return -1
}

// foot is the place of an anchor. A mark's foot is looked for on the segment where it was and on
// those beside it, so that a small move does not let it leap across the pool.
func (c course) foot(a anchor) place {
	n := len(c.path.Segs)
	switch {
	case a.of != n: // marks that were on one place are not any more
		seg, share, _ := c.path.Nearest(c.mark(a.mark))
		return c.on(seg, share)
	case a.knot == n:
		return c.on(n-1, 1)
	case a.knot >= 0:
		return c.on(a.knot, 0)
	}
	best, out := math.Inf(1), place{}
	for k := a.near - 1; k <= a.near+1; k++ {
		if !c.path.Closed && (k < 0 || k >= n) {
			continue
		}
		seg := (k + n) % n
		q, share := c.path.Segs[seg].Nearest(c.mark(a.mark))
		if d := q.Dist(c.mark(a.mark)); d < best {
			best, out = d, c.on(seg, share)
		}
	}
	return out
}
