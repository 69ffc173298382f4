package plane

import (
	"math"
	"slices"
)

// ribbon is a ring of strands and corners laid one after the other.
type ribbon struct {
	Path
	of      []int
	runs    []run
	d       float64
	corners Corners
}

// runSize is the number of segments whose strands and corners make one run: long enough that there
// are few runs, short enough that two of them are soon compared piece by piece.
const runSize = 16

// run is a stretch of the ring.
type run struct {
	box      Box
	turn     float64 // no less than what it turns, left and right added up, with the joint at its end
	rise     float64 // no less than an arc of it leaves its chord
	from, to int     // its pieces
}

// lay sets strand after strand, each with the corner at its end; false where a strand has no length
// left between the cuts at its ends, or a joint is none that plain can do.
func (r *ribbon) lay(p Path) bool {
	var first, f, g facing
	last := len(p.Segs) - 1
	if !f.face(&p.Segs[last], r.d) || !first.face(&p.Segs[0], r.d) || !f.meet(&first, r.d, r.corners) {
		return false
	}
	begin, ok := r.start(p, last, 0, &f, &first)
	at, cut := begin, f.joint == trim
	f = first
	for i := range p.Segs {
		next := i + 1
		if i == last {
			next, g = 0, first
		} else if !g.face(&p.Segs[next], r.d) {
			return false
		}
		if !ok || !f.meet(&g, r.d, r.corners) {
			return false
		}
		if i%runSize == 0 {
			r.runs = append(r.runs, run{box: Box{at, at}, from: len(r.Segs)})
		}
		to := begin
		if i < last {
			to, ok = r.start(p, i, next, &f, &g)
		}
		if !r.strand(i, at, to, &f, &g, &p.Segs[i].B, cut) {
			return false
		}
		at, cut, f = to, f.joint == trim, g
	}
	return ok
}

// start is the place where the strand of segment j begins, i being the segment before it.
func (r *ribbon) start(p Path, i, j int, f, g *facing) (Point, bool) {
	at := p.Segs[j].A
	switch f.joint {
	case smooth:
		return Lerp(p.Segs[i].B.Sub(f.out.Left().Mul(r.d)), at.Sub(g.in.Left().Mul(r.d)), 0.5), true
	case trim:
		x, ok := f.bisector(g, r.d), true
		if f.bulge != 0 || g.bulge != 0 {
			x, ok = crossNear(x, f, g, r.d)
		}
		return at.Add(x), ok
	}
	return at.Sub(g.in.Left().Mul(r.d)), true
}

// strand sets the strand of segment i, which ends at b, and the corner behind it; to is where the next
// strand begins. cut says that its start is one with the end of the strand before it.
func (r *ribbon) strand(i int, from, to Point, f, g *facing, b *Point, cut bool) bool {
	corner := f.joint == fan || f.joint == point
	end := to
	if corner {
		end = b.Sub(f.out.Left().Mul(r.d))
	}
	bulge, ok := f.between(from, end, cut || f.joint == trim, r.d)
	if !ok {
		return false
	}
	r.add(from, end, bulge, i)
	switch f.joint {
	case fan:
		r.add(end, to, f.half/(1+math.Sqrt(1+f.half*f.half)), -1)
	case point:
		m := b.Add(f.bisector(g, r.d))
		r.add(end, m, 0, -1)
		r.add(m, to, 0, -1)
	}
	w := &r.runs[len(r.runs)-1]
	w.turn += 4*math.Abs(f.bulge) + 2*math.Abs(f.half)
	w.to = len(r.Segs)
	return true
}

// between is the bulge of the strand between two places of it; ok is false where nothing of it is left.
func (f *facing) between(a, b Point, cut bool, d float64) (bulge float64, ok bool) {
	way := b.Sub(a)
	if f.bulge == 0 {
		return 0, way.Dot(f.in) > least
	}
	if !cut {
		return f.bulge, true
	}
	size := math.Sqrt(way.Dot(way))
	sine := size / 2 * f.bend() / (f.size + f.bend()*d)
	if size <= least || way.Dot(f.in.Add(f.out)) < 0.5*size || math.Abs(sine) > 0.99 {
		return 0, false
	}
	return sine / (1 + math.Sqrt(1-sine*sine)), true
}

// add sets a piece. An arc up to half a circle stays within its rise of its chord.
func (r *ribbon) add(a, b Point, bulge float64, of int) {
	s := r.grow(of)
	s.A, s.B, s.Bulge = a, b, bulge
	w := &r.runs[len(r.runs)-1]
	switch {
	case b.X < w.box.Min.X:
		w.box.Min.X = b.X
	case b.X > w.box.Max.X:
		w.box.Max.X = b.X
	}
	switch {
	case b.Y < w.box.Min.Y:
		w.box.Min.Y = b.Y
	case b.Y > w.box.Max.Y:
		w.box.Max.Y = b.Y
	}
	if bulge == 0 {
		return
	}
	if math.Abs(bulge) > 1 {
		w.box = w.box.Join(s.Bounds())
	} else if rise := s.rough(); rise > w.rise {
		w.rise = rise
	}
}

// grow gives room for one more piece; filling it in place takes half the time of appending it.
func (r *ribbon) grow(of int) *Segment {
	k := len(r.Segs)
	if k == cap(r.Segs) || k == cap(r.of) {
		r.Segs, r.of = slices.Grow(r.Segs, k), slices.Grow(r.of, k)
	}
	r.Segs, r.of = r.Segs[:k+1], r.of[:k+1]
	r.of[k] = of
	return &r.Segs[k]
}

// rough is no less than the rise.
func (s *Segment) rough() float64 {
	return math.Abs(s.Bulge) / 2 * (math.Abs(s.B.X-s.A.X) + math.Abs(s.B.Y-s.A.Y))
}

// roughBounds is a box round the segment, quickly made.
func (s Segment) roughBounds() Box {
	if math.Abs(s.Bulge) > 1 {
		return s.Bounds()
	}
	return Box{
		Point{min(s.A.X, s.B.X), min(s.A.Y, s.B.Y)},
		Point{max(s.A.X, s.B.X), max(s.A.Y, s.B.Y)},
	}.widen(s.rough())
}

func (b Box) widen(by float64) Box {
	return Box{Point{b.Min.X - by, b.Min.Y - by}, Point{b.Max.X + by, b.Max.Y + by}}
}
