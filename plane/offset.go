package plane

import (
	"fmt"
	"math"
	"slices"
)

// Corners says what a parallel does round a corner that it passes on the outside.
type Corners int

// The corners. RoundCorners is the true parallel: an arc about the corner. MitredCorners runs both
// neighbours on along their tangents until they meet; a corner whose point would reach further than
// mitreMost times the distance is rounded all the same.
const (
	RoundCorners Corners = iota
	MitredCorners
)

// mitreMost is the miter limit that W3C, Scalable Vector Graphics (SVG) 1.1, 11.4 takes where
// nothing is said: corners below 29° are not drawn out to a point.
const mitreMost = 4

// Parallel is what Offset gives.
type Parallel struct {
	Paths []Path  // closed ones by size, then open ones in the order of the path
	Of    [][]int // for each segment of each path the segment it runs beside; −1 round a corner
	Gone  []int   // segments of the path that nothing runs beside any more, in order
}

// Offset is the parallel of p at distance d in metres: the places on one side that lie at d from
// the nearest point of p. d > 0 is outside a closed path and to the right of an open one; d < 0 is
// the other side. Arcs stay arcs of the same sweep; what comes nearer than |d| to another part of p
// is cut away, so that one path may leave several, or none. Paths run the way p runs; a ring that
// closes round a hole of the outcome runs the other way. An open path has no caps at its ends.
//
// The outcome is right to 10⁻⁷ m, on smooth paths to 10⁻⁹ m; pieces shorter than 10⁻⁷ m and rings
// and slits narrower than 10⁻⁹ m are left out, and a distance below 10⁻⁶ m counts as none. An error
// says that p is no path, encloses nothing, d is not finite, or that no ring could be closed.
//
// p should not cross itself (see Crossings); it may touch itself. Source of the method: the
// boundary of a union of discs along a curve is what no other disc of the union covers; lengths
// and areas then follow J. Steiner, Über parallele Flächen (1840), where p is convex or smooth.
func (p Path) Offset(d float64, c Corners) (Parallel, error) {
	if err := p.Validate(); err != nil {
		return Parallel{}, err
	}
	if math.IsNaN(d - d) {
		return Parallel{}, fmt.Errorf("parallel: the distance is not finite")
	}
	area := p.Area()
	if p.Closed && area == 0 {
		return Parallel{}, fmt.Errorf("parallel: the ring encloses nothing")
	}
	if math.Abs(d) < 1e-6 {
		return unmoved(p), nil
	}
	turned := (d < 0) != (p.Closed && area < 0)
	right := math.Abs(d)
	if turned {
		right = -right
	}
	if out, ok := p.plain(right, c); ok {
		return out, nil
	}
	side := p
	if turned {
		side = p.Reverse()
	}
	out, err := side.right(math.Abs(d), c)
	if err != nil {
		return Parallel{}, err
	}
	if turned {
		out.reverse(len(p.Segs))
	}
	return out, nil
}

// unmoved is the parallel at no distance.
func unmoved(p Path) Parallel {
	of := make([]int, len(p.Segs))
	for i := range of {
		of[i] = i
	}
	return Parallel{Paths: []Path{{slices.Clone(p.Segs), p.Closed}}, Of: [][]int{of}}
}

// reverse turns a parallel of the reversed path of n segments into one of the path.
func (r *Parallel) reverse(n int) {
	for k, p := range r.Paths {
		r.Paths[k] = p.Reverse()
		slices.Reverse(r.Of[k])
		for i, of := range r.Of[k] {
			if of >= 0 {
				r.Of[k][i] = n - 1 - of
			}
		}
	}
	for i, g := range r.Gone {
		r.Gone[i] = n - 1 - g
	}
	slices.Reverse(r.Gone)
}

// nudges are added to the distance in turn, in metres, until the pieces close into rings: where
// more than two boundaries meet in one point to rounding, a distance beside it is as good.
var nudges = []float64{0, 1e-9, -1e-9, 3e-9, -3e-9, 1e-8, -1e-8}

// right is the parallel on the right at d > 0. It works about the path's own middle, where
// coordinates are small.
func (p Path) right(d float64, c Corners) (Parallel, error) {
	box := p.Bounds()
	home := Turned(0, Lerp(box.Min, box.Max, 0.5).Mul(-1))
	near := p.Move(home)
	for i, s := range near.Segs {
		if s.Straight() {
			near.Segs[i].Bulge = 0
		}
	}
	for _, nudge := range nudges {
		r, ok := near.beside(d+nudge, c)
		if !ok {
			continue
		}
		for k := range r.Paths {
			r.Paths[k] = r.Paths[k].Move(home.Inverse())
		}
		return r, nil
	}
	return Parallel{}, fmt.Errorf("parallel: the pieces at %g m do not close", d)
}

// beside cuts every strand free of what covers it and links what is left; ok says that a closed
// path gave rings only.
func (p Path) beside(d float64, c Corners) (Parallel, bool) {
	strands, kites := p.strands(d, c)
	w := newCovering(p, kites, d)
	k := newShears(p, d)
	var left []strand
	for _, s := range strands {
		if !k.cut(&s) {
			continue
		}
		for _, free := range w.free(s) {
			piece := s
			if free != whole {
				piece.Segment = s.Part(free.from, free.to)
			}
			if piece.Length() > least {
				left = append(left, piece)
			}
		}
	}
	next, linked := link(left)
	if p.Closed && !linked {
		return Parallel{}, false
	}
	return collect(p, left, next), true
}
