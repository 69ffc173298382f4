package plane

import "math"

// plain is the parallel on the right at d (on the left for d < 0) of a closed path none of whose
// segments vanishes, when single segments meeting their neighbours make it whole. ok is false where
// that cannot be shown: then the pieces must be cut one by one.
//
// Why that suffices: the places x(s, t) = p(s) + t·n(s), 0 ≤ t ≤ d, up to the bisectors of hollow
// corners, cover the plane as often as the ring at d winds round it more often than p does, each
// time positively as long as nothing has shrunk to nothing. If the ring at d does not cross itself,
// that is once or never, so that no place of it lies nearer to p than d.
func (p Path) plain(d float64, c Corners) (Parallel, bool) {
	if !p.Closed || len(p.Segs) < 2 {
		return Parallel{}, false
	}
	n := len(p.Segs)
	size := n + p.turns(d)*(1+int(c))
	r := ribbon{
		Path: Path{make([]Segment, 0, size), true}, of: make([]int, 0, size),
		runs: make([]run, 0, n/runSize+1), d: d, corners: c,
	}
	if !r.lay(p) || !r.single() {
		return Parallel{}, false
	}
	return Parallel{Paths: []Path{r.Path}, Of: [][]int{r.of}}, true
}

// turns is about the number of joints that turn away from the parallel on the right at d.
func (p Path) turns(d float64) int {
	n, last := 0, &p.Segs[len(p.Segs)-1]
	before := last.B.Sub(last.A)
	for i := range p.Segs {
		s := &p.Segs[i]
		way := s.B.Sub(s.A)
		if before.Cross(way)*d > 0 {
			n++
		}
		before = way
	}
	return n
}

// facing is what a segment of a closed path tells of its parallel and of the joint at its end.
type facing struct {
	in, out Point   // the directions of travel at its ends
	size    float64 // of its chord
	bulge   float64 // 0 for a straight
	half    float64 // tan(turn/2) of the joint at its end
	joint   jointKind
}

type jointKind uint8

const (
	smooth jointKind = iota // the parallels of both neighbours meet as they are
	fan                     // an arc between them
	point                   // a mitre between them
	trim                    // both are cut where they cross
)

// face fills in the face of a segment; false where its parallel at d shrinks to nothing.
func (f *facing) face(s *Segment, d float64) bool {
	way := s.B.Sub(s.A)
	f.size = math.Sqrt(way.Dot(way))
	f.in = way.Mul(1 / f.size)
	if s.Straight() {
		f.out, f.bulge = f.in, 0
		return true
	}
	turn := halfSweep(s.Bulge)
	f.in, f.out, f.bulge = f.in.by(Point{turn.X, -turn.Y}), f.in.by(turn), s.Bulge
	return f.size+f.bend()*d > least
}

// bend is chord over radius.
func (f *facing) bend() float64 { return 4 * f.bulge / (1 + f.bulge*f.bulge) }

// meet settles the joint with the next segment; false where it turns back, or where two curves may
// not cross just once near it.
func (f *facing) meet(next *facing, d float64, c Corners) bool {
	whole := 1 + f.out.Dot(next.in)
	if whole < 1e-6 {
		return false
	}
	f.half = f.out.Cross(next.in) / whole
	switch {
	case 2*math.Abs(f.half*d) <= least:
		f.joint = smooth
	case f.half*d < 0:
		f.joint = trim
		straight := f.bulge == 0 && next.bulge == 0
		return straight || math.Abs(f.half) < 0.5 && math.Abs(f.bulge) < 0.5 && math.Abs(next.bulge) < 0.5
	case c == MitredCorners && 1+f.half*f.half < mitreMost*mitreMost:
		f.joint = point
	default:
		f.joint = fan
	}
	return true
}

// bisector is the place from the joint at d from both tangents.
func (f *facing) bisector(g *facing, d float64) Point {
	return f.out.Add(g.in).Left().Mul(-d / (1 + f.out.Dot(g.in)))
}

// crossNear is where the parallels of the curves of two neighbours cross, from the joint, found by
// Newton's method from x.
func crossNear(x Point, f, g *facing, d float64) (Point, bool) {
	a := curve{k: f.bend() / f.size, g: f.out.Left().Mul(-1)}
	b := curve{k: g.bend() / g.size, g: g.in.Left().Mul(-1)}
	for range 12 {
		// F = d + κd²/2 on the parallel of the curve F = 0.
		ra, rb := a.value(x)-d-a.k*d*d/2, b.value(x)-d-b.k*d*d/2
		ga, gb := a.grad(x), b.grad(x)
		det := ga.Cross(gb)
		if det == 0 {
			return x, false
		}
		step := Point{rb*ga.Y - ra*gb.Y, ra*gb.X - rb*ga.X}.Mul(1 / det)
		x = x.Add(step)
		if math.Abs(step.X)+math.Abs(step.Y) < 1e-10 { // the next would be lost in rounding
			return x, true
		}
	}
	return x, false
}
