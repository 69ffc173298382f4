package plane

import (
	"math"
	"slices"
)

// covering is the union of the discs of radius d about a path and of its kites.
type covering struct {
	path   Path
	ccw    bool
	d      float64
	sides  []side
	tree   boxTree // of the segments
	kites  []kite
	points boxTree // of the kites
	rest   rest
}

// side is a segment with what is asked of it again and again.
type side struct {
	Segment
	straight bool
	way      Point // of a straight
	size     float64
}

func newSide(s Segment) side {
	x := side{Segment: s, straight: s.Straight(), size: s.Chord()}
	x.way = s.B.Sub(s.A).Mul(1 / x.size)
	return x
}

// distance is that of a place to the segment.
func (s *side) distance(x Point) float64 {
	if !s.straight {
		q, _ := s.Nearest(x)
		return q.Dist(x)
	}
	return math.Sqrt(s.distance2(x))
}

// distance2 is the square of the distance of a place to a straight.
func (s *side) distance2(x Point) float64 {
	v := x.Sub(s.foot(x))
	return v.Dot(v)
}

// foot is the nearest place of a straight.
func (s *side) foot(x Point) Point {
	along := x.Sub(s.A).Dot(s.way)
	switch {
	case along <= 0:
		return s.A
	case along >= s.size:
		return s.B
	}
	return s.A.Add(s.way.Mul(along))
}

func newCovering(p Path, kites []kite, d float64) *covering {
	w := &covering{path: p, ccw: p.Area() > 0, d: d, kites: kites, sides: make([]side, len(p.Segs))}
	boxes := make([]Box, len(p.Segs))
	for i, s := range p.Segs {
		boxes[i], w.sides[i] = s.Bounds(), newSide(s)
	}
	w.tree = newBoxTree(boxes)
	corners := make([]Box, len(kites))
	for i, k := range kites {
		corners[i] = BoundsOf(k.p[:]...)
	}
	w.points = newBoxTree(corners)
	return w
}

// probes is how often a strand is asked in its middle for what covers it most, before everything near
// it is looked at: what covers the middle mostly covers the whole.
const probes = 3

// free are the stretches of a strand that nothing covers, in order; they last until it is asked again.
func (w *covering) free(s strand) []stretch {
	r := &w.rest
	r.begin(s, w.path.Segs[(s.at+1)%len(w.path.Segs)].A)
	for _, i := range [2]int{s.at + 1, s.at - 1} { // neighbours leave little to look at
		if i != s.of && i >= 0 && i < len(w.sides) {
			w.lessDisc(r, &w.sides[i])
		}
	}
	for k := 0; k < probes && len(r.left) > 0; k++ {
		q := s.At(r.middle())
		i, ok := w.tree.nearest(q, w.d-hairline, func(i int) float64 { return w.sides[i].distance(q) })
		if !ok {
			break
		}
		w.lessDisc(r, &w.sides[i])
	}
	if len(r.left) > 0 {
		w.lessAll(r)
	}
	return r.left
}

// lessAll takes whatever covers it from the rest of a strand.
func (w *covering) lessAll(r *rest) {
	box := r.bounds()
	w.tree.each(box, w.d+hairline, func(i int) bool {
		if i != r.of {
			w.lessDisc(r, &w.sides[i])
		}
		return len(r.left) == 0
	})
	w.points.each(box, hairline, func(i int) bool {
		w.kites[i].cover(r)
		return len(r.left) == 0
	})
	if r.of < 0 && len(w.kites) > 0 { // the point of a mitre may reach through to the other side
		for _, f := range slices.Clone(r.left) {
			if w.wrongSide(r.At((f.from + f.to) / 2)) {
				r.less(f)
			}
		}
	}
}

// lessDisc takes what the discs about a segment cover from the rest of a strand.
func (w *covering) lessDisc(r *rest, other *side) {
	if r.run.straight && other.straight {
		if c, ok := stripped(&r.run, other, w.d); ok && w.hides(r.strand, other, (c.from+c.to)/2) {
			r.less(c)
		}
		return
	}
	if r.clear(other, w.d) {
		return
	}
	low, high := r.distances(other)
	switch {
	case high < w.d-hairline:
		r.less(whole)
		return
	case low > w.d+hairline:
		return
	}
	for _, edge := range rims(other.Segment, w.d) {
		r.cut(edge)
	}
	r.lessWhere(func(t float64) bool { return w.hides(r.strand, other, t) })
}

// rims are the whole curves at distance d from a segment: its parallels and the circles at its ends.
func rims(s Segment, d float64) []curve {
	out := make([]curve, 0, 4)
	for _, side := range []float64{d, -d} {
		if 1+s.Curvature()*side > 0 {
			out = append(out, s.rightBy(side).curve())
		}
	}
	for _, end := range []Point{s.A, s.B} {
		out = append(out, curve{1 / d, Point{X: 1}, end.Add(Point{X: d})})
	}
	return out
}
