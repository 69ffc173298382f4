package outline

import "brimline/plane"

// Fixed are the points of the line so far from the start of its path, metres, each held at its share of
// the piece that it lies on, so that a joint stays the joint. They move as the line as drawn does; what
// lies between its marks is not in them, and the length along the line does not follow.
func (h *Held) Fixed(along []float64) []*Spot {
	const step = 1e-5 // metres; of a bulge as it is
	now := h.course(h.c.q)
	segs := make([]int, len(along))
	shares := make([]float64, len(along))
	out := make([]*Spot, len(along))
	for k, s := range along {
		segs[k], shares[k], _ = now.path.Place(s)
		p := now.on(segs[k], shares[k])
		out[k] = &Spot{At: p.at, Way: p.way, Along: h.fromFirst(now, p), Whole: now.whole(), held: h}
	}
	at := func(c course, k int) plane.Point {
		if len(c.path.Segs) != len(now.path.Segs) {
			return c.place(along[k]).at
		}
		return c.path.Segs[segs[k]].At(shares[k])
	}
	q := append([]float64(nil), h.c.q...)
	for a := range q {
		keep := q[a]
		q[a] = keep + step
		up := h.course(q)
		q[a] = keep - step
		down := h.course(q)
		q[a] = keep
		for k, s := range out {
			d := at(up, k).Sub(at(down, k)).Mul(1 / (2 * step))
			s.byLine[0], s.byLine[1] = append(s.byLine[0], d.X), append(s.byLine[1], d.Y)
		}
	}
	return out
}
