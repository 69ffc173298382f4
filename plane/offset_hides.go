package plane

import "math"

// hides says that the strand at share t lies inside the discs about a segment, or on their edge
// where it does not belong: back to back with the other's own parallel, so that nothing is left
// between the two, or on the wrong side of two segments that run over each other.
func (w *covering) hides(s strand, other *side, t float64) bool {
	x := s.At(t)
	switch r := other.distance(x); {
	case r < w.d-hairline:
		return true
	case r > w.d+hairline:
		return false
	}
	q, share := other.Nearest(x)
	if share <= 0 || share >= 1 {
		return false
	}
	way := other.Tangent(share)
	if s.Tangent(t).Dot(way) > -0.5 {
		return false
	}
	if onRight := way.Cross(x.Sub(q)) < 0; onRight {
		return true
	}
	return w.wrongSide(x)
}

// wrongSide says that a place lies on the side of a closed path that is not asked for.
func (w *covering) wrongSide(x Point) bool {
	if !w.path.Closed {
		return false
	}
	n := 0
	ray := Box{x, Point{math.Inf(1), x.Y}}
	w.tree.each(ray, hairline, func(i int) bool {
		n += w.path.Segs[i].turnAbout(x)
		return false
	})
	return (n != 0) == w.ccw
}
