package simulate

import (
	"math/rand/v2"

	"brimline/plane"
)

// ell is an L: five outward corners of one radius and an inward one of another.
type ell struct{}

func (ell) Name() string { return "L" }

func (ell) Draw(r *rand.Rand) Figure {
	length := between(r, 8, 13)
	width := length * between(r, 0.30, 0.40)
	leg := length * between(r, 0.30, 0.45)
	deep := width + between(r, 2.0, 3.5)
	return Ell(length, width, leg, deep, between(r, 0.25, 0.6), between(r, 0.3, 0.8))
}

// Ell is length long and width wide, with a leg at its left end that reaches deep from the
// lower side; out and in are the radii of its corners.
func Ell(length, width, leg, deep, out, in float64) Figure {
	x, y := length/2, deep/2
	corners := []plane.Point{
		{X: -x, Y: -y}, {X: x, Y: -y}, {X: x, Y: width - y},
		{X: leg - x, Y: width - y}, {X: leg - x, Y: y}, {X: -x, Y: y},
	}
	return Rounded(corners, []float64{out, out, out, in, out, out})
}
