package plane

import (
	"math"
	"slices"
)

// stretch is a part of a strand by shares of its length.
type stretch struct{ from, to float64 }

var whole = stretch{0, 1}

// rest is what is left of a strand.
type rest struct {
	strand
	run    side
	line   curve
	about  Point   // centre of an arc round a corner
	full   float64 // length of the strand
	left   []stretch
	ends   [2]Point // of what is left, gaps not counted
	length float64  // between them
	cuts   []float64
	spare  []stretch
}

// begin makes r the whole of a strand, in the space that it has.
func (r *rest) begin(s strand, about Point) {
	*r = rest{
		strand: s, run: newSide(s.Segment), line: s.curve(), about: about, full: s.Length(),
		left: append(r.left[:0], whole), spare: r.spare, cuts: r.cuts[:0],
	}
	r.ends, r.length = [2]Point{s.A, s.B}, r.full
}

func (r *rest) extent() stretch { return stretch{r.left[0].from, r.left[len(r.left)-1].to} }

// distances are bounds of those from what is left to a segment. No place is further along from both
// ends than half the length; and beside a straight the places about which are convex, an arc up to a
// half circle leaves its chord by no more than length²·curvature/8.
func (r *rest) distances(other *side) (low, high float64) {
	a, b := other.distance(r.ends[0]), other.distance(r.ends[1])
	low, high = min(a, b)-r.length/2, (a+b+r.length)/2
	bend := r.length * math.Abs(r.line.k)
	if !other.straight || bend > math.Pi || r.ends[0] == r.ends[1] {
		return low, high
	}
	rise := r.length * bend / 8
	chord := newSide(Segment{A: r.ends[0], B: r.ends[1]})
	if apart(&chord, other) {
		low = max(low, min(a, b, chord.distance(other.A), chord.distance(other.B))-rise)
	}
	return low, min(high, max(a, b)+rise)
}

// bounds is a box round what is left.
func (r *rest) bounds() Box {
	switch e := r.extent(); {
	case r.run.straight:
		a, b := r.ends[0], r.ends[1]
		return Box{Point{min(a.X, b.X), min(a.Y, b.Y)}, Point{max(a.X, b.X), max(a.Y, b.Y)}}
	case e != whole:
		return r.Part(e.from, e.to).Bounds()
	}
	return r.strand.Bounds()
}

// middle is the share half-way along the longest stretch.
func (r *rest) middle() float64 {
	best := r.left[0]
	for _, l := range r.left[1:] {
		if l.to-l.from > best.to-best.from {
			best = l
		}
	}
	return (best.from + best.to) / 2
}

// cut notes the shares at which the strand meets a curve.
func (r *rest) cut(edge curve) {
	for _, q := range common(r.line, edge, r.A, false) {
		on, along, ok := r.line.foot(q)
		if !ok || on.Dist(q) > 1e-6 {
			continue
		}
		if t, ok := r.share(on, along); ok && t > 0 && t < 1 {
			r.cuts = append(r.cuts, t)
		}
	}
}

// lessWhere takes away the stretches between the cuts whose middle is covered.
func (r *rest) lessWhere(covered func(t float64) bool) {
	slices.Sort(r.cuts)
	from := 0.0
	r.cuts = append(r.cuts, 1)
	for _, to := range r.cuts {
		if to > from && covered((from+to)/2) {
			r.less(stretch{from, to})
		}
		from = to
	}
	r.cuts = r.cuts[:0]
}

// less takes a stretch away.
func (r *rest) less(c stretch) {
	out := r.spare[:0]
	untouched := true
	for _, l := range r.left {
		if c.to <= l.from || c.from >= l.to {
			out = append(out, l)
			continue
		}
		untouched = false
		if l.from < c.from {
			out = append(out, stretch{l.from, c.from})
		}
		if c.to < l.to {
			out = append(out, stretch{c.to, l.to})
		}
	}
	if untouched {
		return
	}
	r.left, r.spare = out, r.left
	if len(out) > 0 {
		e := r.extent()
		r.ends, r.length = [2]Point{r.strand.At(e.from), r.strand.At(e.to)}, r.full*(e.to-e.from)
	}
}

// apart says that two straights do not cross.
func apart(s, o *side) bool {
	one, two := s.way.Cross(o.A.Sub(s.A)), s.way.Cross(o.B.Sub(s.A))
	three, four := o.way.Cross(s.A.Sub(o.A)), o.way.Cross(s.B.Sub(o.A))
	return one*two > 0 || three*four > 0
}
