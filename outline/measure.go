package outline

import (
	"math"

	"brimline/plane"
)

// Held is a fitted line that can be asked how its points move: with the marks that it was fitted
// to, and with what stays open about the edge however well these are known.
type Held struct {
	grip
	line    *Line
	spans   []span
	origin  anchor
	at      []float64 // of each mark of the line, along the path from its start
	marksSD float64   // of the line's length, from the marks and their edges
}

// kept is what a line keeps of its fit.
type kept struct {
	c     *chain
	edge  []float64
	spans []span
}

// Hold readies a line for questions; nil for one that has no path or keeps no fit.
func Hold(l *Line) *Held {
	if l.kept == nil || len(l.Path.Segs) == 0 {
		return nil
	}
	h := &Held{grip: newGrip(l.kept.c, l.kept.edge), line: l, spans: l.kept.spans}
	now := h.course(h.c.q)
	for _, m := range l.Marks {
		h.at = append(h.at, now.foot(now.anchor(m)).along)
	}
	h.origin = now.anchor(l.Marks[0])
	h.marksSD = h.c.figureSDs()[0]
	return h
}

// Line is the line that is held.
func (h *Held) Line() *Line { return h.line }

// Spot is a point of a line in the inner datum, with how it moves.
type Spot struct {
	At    plane.Point
	Way   plane.Point // unit direction of travel
	Along float64     // from the foot of the line's first mark; 0 to below Whole where the line is closed
	Whole float64     // length of the path

	held   *Held
	byLine [4][]float64 // derivatives of x, y, Along and Whole by the unknowns of the line
	marks  []int        // marks that the spot hangs on besides: the first, the one whose foot it is
	byMark [4][]float64 // derivatives by their coordinates
	open   float64      // variance across the line there of what lies between its marks
}

// tiny is rounding (metres).
const tiny = 1e-9

// Along is the point so many metres along the line from its first mark; false beyond the length of
// the line, before its start, and for a number that is none.
func (h *Held) Along(metres float64) (*Spot, bool) {
	if !(metres >= 0 && metres <= h.Reach()+tiny) {
		return nil, false
	}
	return h.spot(func(c course) place { return c.place(c.foot(h.origin).along + metres) }, h.origin), true
}

// Reach is how far the line runs on from its first mark.
func (h *Held) Reach() float64 {
	now := h.course(h.c.q)
	if h.line.Closed {
		return now.whole()
	}
	return now.whole() - now.foot(h.origin).along
}

// Foot is the point of the line nearest to a mark of the network. At a mark where two runs meet, and
// at one on a fair curve, it is the line's own joint. False for a mark without a place.
func (h *Held) Foot(mark int) (*Spot, bool) {
	if mark < 0 || math.IsNaN(h.c.s.X.Point(mark).X) {
		return nil, false
	}
	return h.footAt(h.course(h.c.q).anchor(mark)), true
}

// Nearest is the point of the line nearest to a mark, wherever the mark belongs. False for a mark
// without a place.
func (h *Held) Nearest(mark int) (*Spot, bool) {
	if mark < 0 || math.IsNaN(h.c.s.X.Point(mark).X) {
		return nil, false
	}
	return h.footAt(h.course(h.c.q).nearest(mark)), true
}

// Corner is where an unreached corner was found to lie; false where the line has none of the name, and
// where it is rounded: then no point of the edge is there.
func (h *Held) Corner(name string) (*Spot, bool) {
	now := h.course(h.c.q)
	for i := range h.c.block.corner {
		m := len(h.c.s.Net.Marks) + i
		if k := now.knot(m); h.c.block.corner[i].Name == name && k >= 0 {
			return h.footAt(anchor{mark: m, knot: k, of: len(now.path.Segs)}), true
		}
	}
	return nil, false
}

func (h *Held) footAt(a anchor) *Spot {
	return h.spot(func(c course) place { return c.foot(a) }, h.origin, a)
}

// spot finds a point and its derivatives by central differences: the line is drawn anew for each of
// its unknowns.
func (h *Held) spot(find func(course) place, hang ...anchor) *Spot {
	const step = 1e-5 // metres; of a bulge as it is
	now := h.course(h.c.q)
	p := find(now)
	s := &Spot{At: p.at, Way: p.way, Along: h.fromFirst(now, p), Whole: now.whole(), held: h, open: h.open(p.along)}
	value := func(c course) [4]float64 {
		p := find(c)
		return [4]float64{p.at.X, p.at.Y, h.fromFirst(c, p), c.whole()}
	}
	q := append([]float64(nil), h.c.q...)
	for a := range q {
		keep := q[a]
		q[a] = keep + step
		up := value(h.course(q))
		q[a] = keep - step
		s.slope(&s.byLine, up, value(h.course(q)), 2*step)
		q[a] = keep
	}
	for i, a := range hang {
		if a.knot >= 0 || i > 0 && a.mark == hang[0].mark && hang[0].knot < 0 {
			continue // a joint moves with the line
		}
		s.marks = append(s.marks, a.mark)
		for _, d := range []plane.Point{{X: step}, {Y: step}} {
			s.slope(&s.byMark, value(now.with(a.mark, d)), value(now.with(a.mark, d.Mul(-1))), 2*step)
		}
	}
	return s
}

// slope appends a difference quotient; Along of a closed line may pass its beginning.
func (s *Spot) slope(to *[4][]float64, up, down [4]float64, by float64) {
	for k := range up {
		d := up[k] - down[k]
		if k == 2 && s.held.line.Closed {
			d = math.Remainder(d, s.Whole)
		}
		to[k] = append(to[k], d/by)
	}
}

// fromFirst is the length along the line from its first mark to a place.
func (h *Held) fromFirst(c course, p place) float64 {
	d := p.along - c.foot(h.origin).along
	if !h.line.Closed {
		return d
	}
	if d = math.Mod(d, c.whole()); d < -tiny {
		d += c.whole()
	}
	return math.Max(d, 0)
}

// open is the variance across the line, beyond that of its marks, so far from the start of its path.
// It is known for the middle of each span and falls to nothing at the marks as the rise of a flat arc
// over its chord does.
func (h *Held) open(along float64) float64 {
	whole := h.line.Path.Length()
	for _, x := range h.spans {
		d := along - h.at[x.from]
		if h.line.Closed {
			d = math.Mod(d+2*whole, whole)
		}
		if d >= 0 && d <= x.length && x.length > 0 {
			t := d / x.length
			return x.open * math.Pow(4*t*(1-t), 2)
		}
	}
	return 0
}
