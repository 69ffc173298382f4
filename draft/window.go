package draft

import (
	"sort"

	"brimline/plane"
)

// seesAll says that a run lies wholly on the drawing: always on the plan, on a detail where its
// window holds it.
func (c *canvas) seesAll(r run) bool {
	if c.window == nil {
		return true
	}
	b := plane.Path{Segs: r.segs}.Bounds()
	return holds(*c.window, b.Min) && holds(*c.window, b.Max)
}

// seesMiddle says that the middle of a run lies on the drawing.
func (c *canvas) seesMiddle(r run) bool {
	at, _ := r.middle()
	return c.sees(at)
}

// sees says that a place lies on the drawing.
func (c *canvas) sees(p plane.Point) bool {
	return c.window == nil || holds(shrink(*c.window, frameRoom), p)
}

func holds(b plane.Box, p plane.Point) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// clipped are the stretches of a path inside the window, the path itself on the plan.
func (c *canvas) clipped(p plane.Path) []plane.Path {
	if c.window == nil {
		return []plane.Path{p}
	}
	return cutTo(p, *c.window)
}

// cutTo cuts a path at the sides of a box and keeps what lies inside.
func cutTo(p plane.Path, box plane.Box) []plane.Path {
	var out []plane.Path
	var open plane.Path
	for _, s := range p.Segs {
		cuts := cutsAt(s, box)
		for k := 1; k < len(cuts); k++ {
			piece := s.Part(cuts[k-1], cuts[k])
			if !holds(box, s.At((cuts[k-1]+cuts[k])/2)) {
				if len(open.Segs) > 0 {
					out, open = append(out, open), plane.Path{}
				}
				continue
			}
			open.Segs = append(open.Segs, piece)
		}
	}
	if len(open.Segs) > 0 {
		out = append(out, open)
	}
	if len(out) == 1 && p.Closed && len(out[0].Segs) == len(p.Segs) {
		out[0].Closed = true
	}
	return out
}

// cutsAt are the shares of a segment at which it may enter or leave a box, with both its ends.
func cutsAt(s plane.Segment, box plane.Box) []float64 {
	c := [4]plane.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}}
	cuts := []float64{0, 1}
	for i := range c {
		for _, q := range s.Meet(plane.Segment{A: c[i], B: c[(i+1)%4]}) {
			if _, t := s.Nearest(q); t > 1e-9 && t < 1-1e-9 {
				cuts = append(cuts, t)
			}
		}
	}
	sort.Float64s(cuts)
	return cuts
}
