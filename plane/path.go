package plane

import (
	"fmt"
	"math"
)

// Path is a run of segments, each beginning where the one before ends. A closed path is a ring:
// its last segment ends where the first begins.
type Path struct {
	Segs   []Segment
	Closed bool
}

// joint is the largest gap between two segments that Validate takes for none, in metres: far
// above rounding at ten kilometres from the origin, far below any reading.
const joint = 1e-9

// Polyline is the path of straights through the points; closed adds the way back.
func Polyline(pts []Point, closed bool) Path {
	p := Path{Closed: closed}
	for i := 1; i < len(pts); i++ {
		p.Segs = append(p.Segs, Segment{A: pts[i-1], B: pts[i]})
	}
	if closed && len(pts) > 1 {
		p.Segs = append(p.Segs, Segment{A: pts[len(pts)-1], B: pts[0]})
	}
	return p
}

// Length is the sum of the lengths of the segments.
func (p Path) Length() float64 {
	sum := 0.0
	for _, s := range p.Segs {
		sum += s.Length()
	}
	return sum
}

// Area is the area inside a closed path, positive when it runs counter-clockwise; 0 for an
// open one. It is taken about the path's first point, so that far coordinates lose nothing.
func (p Path) Area() float64 {
	if !p.Closed || len(p.Segs) == 0 {
		return 0
	}
	o := p.Segs[0].A
	sum := 0.0
	for i := range p.Segs {
		s := &p.Segs[i]
		sum += s.A.Sub(o).Cross(s.B.Sub(o)) / 2
		if s.Bulge != 0 {
			sum += s.capArea()
		}
	}
	return sum
}

// Bounds is the smallest upright box round the path; an empty path gives EmptyBox.
func (p Path) Bounds() Box {
	b := EmptyBox()
	for _, s := range p.Segs {
		b = b.Join(s.Bounds())
	}
	return b
}

// Nearest is the point q of the path nearest to pt, on segment seg at share t of its length.
// Where several are as near it is the first. An empty path gives seg −1.
func (p Path) Nearest(pt Point) (seg int, t float64, q Point) {
	seg = -1
	best := math.Inf(1)
	for i, s := range p.Segs {
		at, share := s.Nearest(pt)
		if d := at.Dist(pt); d < best {
			best, seg, t, q = d, i, share, at
		}
	}
	return seg, t, q
}

// Distance is the shortest distance from pt to the path. For a closed path it is positive
// outside and negative inside; for an open one never negative; +Inf for an empty one.
func (p Path) Distance(pt Point) float64 {
	seg, _, q := p.Nearest(pt)
	if seg < 0 {
		return math.Inf(1)
	}
	if p.Closed && p.Contains(pt) {
		return -q.Dist(pt)
	}
	return q.Dist(pt)
}

// Reverse is the same path travelled the other way.
func (p Path) Reverse() Path {
	r := Path{make([]Segment, len(p.Segs)), p.Closed}
	for i, s := range p.Segs {
		r.Segs[len(p.Segs)-1-i] = s.Reverse()
	}
	return r
}

// Move is the path shifted and turned by m.
func (p Path) Move(m Rigid) Path {
	r := Path{make([]Segment, len(p.Segs)), p.Closed}
	for i, s := range p.Segs {
		r.Segs[i] = Segment{m.Apply(s.A), m.Apply(s.B), s.Bulge}
	}
	return r
}

// Flatten is the path as points, with chords that leave it by at most sagitta metres. A closed
// path does not repeat its first point. A sagitta that is not positive counts as 1 mm.
func (p Path) Flatten(sagitta float64) []Point {
	if !(sagitta > 0) {
		sagitta = 1e-3
	}
	var out []Point
	for _, s := range p.Segs {
		n := s.pieces(sagitta)
		for i := range n {
			out = append(out, s.At(float64(i)/float64(n)))
		}
	}
	if len(p.Segs) > 0 && !p.Closed {
		out = append(out, p.Segs[len(p.Segs)-1].B)
	}
	return out
}

// pieces is the number of equal chords that keep within sagitta of the segment: a chord of
// sweep δ leaves a circle by 2R sin²(δ/4).
func (s Segment) pieces(sagitta float64) int {
	if s.Straight() || s.A == s.B {
		return 1
	}
	part := math.Sqrt(sagitta / (2 * math.Abs(s.Radius())))
	if part >= 1 {
		return 1 + int(math.Abs(s.Sweep())/math.Pi) // never a chord across half a circle or more
	}
	n := math.Ceil(math.Abs(s.Sweep()) / (4 * math.Asin(part)) * (1 - 1e-12))
	return int(math.Max(1, math.Min(n, 1e6)))
}

// Validate says what keeps p from being a path: no segments, a number that is not finite, a
// segment without length, a gap between neighbours, or a closed path that does not come back.
// It does not look for crossings: see Crossings.
func (p Path) Validate() error {
	if len(p.Segs) == 0 {
		return fmt.Errorf("path: it has no segments")
	}
	for i, s := range p.Segs {
		if !s.A.Finite() || !s.B.Finite() || math.IsNaN(s.Bulge-s.Bulge) {
			return fmt.Errorf("path: segment %d holds a number that is not finite", i)
		}
		if d := s.B.Sub(s.A); d.Dot(d) <= joint*joint {
			return fmt.Errorf("path: segment %d ends where it begins", i)
		}
		if i > 0 && p.Segs[i-1].B != s.A && p.Segs[i-1].B.Dist(s.A) > joint {
			return fmt.Errorf("path: a gap between segments %d and %d", i-1, i)
		}
	}
	if p.Closed && p.Segs[len(p.Segs)-1].B.Dist(p.Segs[0].A) > joint {
		return fmt.Errorf("path: it is called closed but does not come back to its start")
	}
	return nil
}
