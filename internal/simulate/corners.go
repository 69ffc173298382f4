package simulate

import (
	"math"

	"brimline/plane"
)

// Rounded is the outline of straights through the corners, given counter-clockwise, each corner
// rounded by its own radius; radius 0 leaves a kink. The arc begins r·tan(turn/2) before the
// corner, turn being the change of direction there.
func Rounded(corners []plane.Point, radii []float64) Figure {
	n := len(corners)
	var starts, ends []plane.Point // of the arc at each corner
	var turns []float64
	for i, p := range corners {
		in := p.Sub(corners[(i+n-1)%n]).Unit()
		out := corners[(i+1)%n].Sub(p).Unit()
		turn := plane.Between(in, out)
		t := radii[i] * math.Tan(math.Abs(turn)/2)
		starts, ends = append(starts, p.Sub(in.Mul(t))), append(ends, p.Add(out.Mul(t)))
		turns = append(turns, turn)
	}
	var f Figure
	for i := range corners {
		next := (i + 1) % n
		f = append(f, one(plane.Segment{A: ends[i], B: starts[next]}, radii[i] > 0))
		if radii[next] > 0 {
			bulge := math.Tan(turns[next] / 4)
			f = append(f, one(plane.Segment{A: starts[next], B: ends[next], Bulge: bulge}, true))
		}
	}
	return f
}

// Box4 gives the four corners of a rectangle about the origin, its upright sides leaning by
// skew: a parallelogram of the sides length and width.
func Box4(length, width, skew float64) []plane.Point {
	side := plane.Point{Y: width}.Turn(-skew)
	low := plane.Point{X: -length / 2}.Sub(side.Mul(0.5))
	far := plane.Point{X: length}
	return []plane.Point{low, low.Add(far), low.Add(far).Add(side), low.Add(side)}
}
