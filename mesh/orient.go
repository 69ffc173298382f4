package mesh

import (
	"math"

	"brimline/plane"
)

// half is the greatest relative error of one rounded operation, 2⁻⁵³.
const half = 1.0 / (1 << 53)

// Bounds of the rounding error of the two tests, from Shewchuk (1997), section 4, tables 2 to 5:
// A for the plain formula, B for the exact one on rounded differences.
const (
	orientBoundA = (3 + 16*half) * half
	orientBoundB = (2 + 12*half) * half
	circleBoundA = (10 + 96*half) * half
	circleBoundB = (4 + 48*half) * half
)

// Orient is positive when a, b, c turn counter-clockwise, negative when clockwise and exactly
// zero when they lie in a line: the sign is always that of exact arithmetic, the value about
// twice the area of the triangle. Coordinates must be finite and zero or of a size between 1e-50 and 1e50.
func Orient(a, b, c plane.Point) float64 {
	left := float64((a.X - c.X) * (b.Y - c.Y))
	right := float64((a.Y - c.Y) * (b.X - c.X))
	det := left - right
	if bound := orientBoundA * (math.Abs(left) + math.Abs(right)); det > bound || -det > bound {
		return det
	}
	return orientExactly(a, b, c, math.Abs(left)+math.Abs(right))
}

// orientExactly is the slow half of Orient: exact first on the rounded differences, which settles
// it where nothing was rounded or the rest cannot matter, then on the whole ones.
func orientExactly(a, b, c plane.Point, size float64) float64 {
	acx, acy := gapOf(a.X, c.X), gapOf(a.Y, c.Y)
	bcx, bcy := gapOf(b.X, c.X), gapOf(b.Y, c.Y)
	var room [16]float64
	det := last(crossOf(room[:0], acx.of(true), acy.of(true), bcx.of(true), bcy.of(true)))
	// The last component is the sum up to half a unit of its last place: twice the bound covers it.
	exact := acx.n+acy.n+bcx.n+bcy.n == 4
	if exact || math.Abs(det) > 2*orientBoundB*size {
		return det
	}
	return last(crossOf(room[:0], acx.of(false), acy.of(false), bcx.of(false), bcy.of(false)))
}
