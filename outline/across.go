package outline

import (
	"math"

	"brimline/plane"
)

// normals to the left of the line at each mark.
func (c *chain) normals(marks []int) [][2]float64 {
	path, count := c.path(c.q)
	near := c.nearby(count)
	out := make([][2]float64, len(marks))
	for i, m := range marks {
		p := c.block.point(m)
		best, n := math.Inf(1), plane.Point{}
		for _, k := range near[m] {
			q, t := path.Segs[k].Nearest(p)
			if d := q.Dist(p); d < best {
				best, n = d, path.Segs[k].Tangent(t).Left()
			}
		}
		out[i] = [2]float64{n.X, n.Y}
	}
	return out
}

// nearby lists the segments of the path that a mark may be nearest to: those of its piece, of a
// curve those beside it, and at a joint those on both sides.
func (c *chain) nearby(count []int) map[int][]int {
	out := map[int][]int{}
	total, first := 0, make([]int, len(count))
	for i, n := range count {
		first[i] = total
		total += n
	}
	if total == 0 { // all marks on one place
		return out
	}
	beside := func(mark, seg int) {
		if c.l.Closed || seg > 0 {
			out[mark] = append(out[mark], (seg+total-1)%total)
		}
		if c.l.Closed || seg < total {
			out[mark] = append(out[mark], seg%total)
		}
	}
	for i := range c.pieces {
		p := &c.pieces[i]
		if m := c.vertex[p.from].mark; m >= 0 {
			beside(m, first[i])
		}
		if m := c.vertex[p.to].mark; m >= 0 && (p.to != 0 || i != len(c.pieces)-1) {
			beside(m, first[i]+count[i])
		}
		if p.near >= 0 {
			beside(p.near, first[i])
		}
		for k, m := range p.inner {
			if p.kind != "curve" {
				out[m] = append(out[m], first[i])
				continue
			}
			at := first[i] + 2*(k+1)
			if count[i] == 2*(len(p.inner)+1) {
				beside(c.vertex[m].mark, at)
				continue
			}
			for s := range count[i] { // marks on one place: not every span has its two arcs
				out[c.vertex[m].mark] = append(out[c.vertex[m].mark], first[i]+s)
			}
		}
	}
	return out
}
