package mesh

import (
	"math"

	"brimline/plane"
)

// InCircle is positive when d lies inside the circle through a, b, c, which turn
// counter-clockwise, negative outside and exactly zero on it: the sign is always that of exact
// arithmetic. Coordinates must be finite and zero or of a size between 1e-50 and 1e50.
func InCircle(a, b, c, d plane.Point) float64 {
	adx, ady := a.X-d.X, a.Y-d.Y
	bdx, bdy := b.X-d.X, b.Y-d.Y
	cdx, cdy := c.X-d.X, c.Y-d.Y
	bc, cb := float64(bdx*cdy), float64(cdx*bdy)
	ca, ac := float64(cdx*ady), float64(adx*cdy)
	ab, ba := float64(adx*bdy), float64(bdx*ady)
	al := float64(adx*adx) + float64(ady*ady)
	bl := float64(bdx*bdx) + float64(bdy*bdy)
	cl := float64(cdx*cdx) + float64(cdy*cdy)
	det := float64(al*(bc-cb)) + float64(bl*(ca-ac)) + float64(cl*(ab-ba))
	size := float64((math.Abs(bc)+math.Abs(cb))*al) + float64((math.Abs(ca)+math.Abs(ac))*bl) + float64((math.Abs(ab)+math.Abs(ba))*cl)
	if bound := circleBoundA * size; det > bound || -det > bound {
		return det
	}
	return inCircleExactly(a, b, c, d, size)
}

// corner is one point relative to d.
type corner struct{ x, y gap }

// inCircleExactly is the slow half of InCircle, in the same two steps as orientExactly.
func inCircleExactly(a, b, c, d plane.Point, size float64) float64 {
	var corners [3]corner
	exact := true
	for i, p := range [3]plane.Point{a, b, c} {
		k := &corners[i]
		k.x, k.y = gapOf(p.X, d.X), gapOf(p.Y, d.Y)
		exact = exact && k.x.n+k.y.n == 2
	}
	det := lifted(&corners, true)
	if exact || math.Abs(det) > 2*circleBoundB*size {
		return det
	}
	return lifted(&corners, false)
}

// lifted is the determinant of the three rows (x, y, x²+y²), expanded by its last column; of the
// rounded differences, or of the exact ones.
func lifted(k *[3]corner, rounded bool) float64 {
	// Room for differences that were not rounded; more is made where it is needed.
	var minorRoom, squareRoom, secondRoom, liftRoom [16]float64
	var termRoom [32]float64
	var room [2][96]float64
	sum, next := room[0][:0], room[1][:0]
	for i := range k {
		p, q, r := &k[i], &k[(i+1)%3], &k[(i+2)%3]
		minor := crossOf(minorRoom[:0], q.x.of(rounded), q.y.of(rounded), r.x.of(rounded), r.y.of(rounded))
		xx := multiply(squareRoom[:0], p.x.of(rounded), p.x.of(rounded))
		yy := multiply(secondRoom[:0], p.y.of(rounded), p.y.of(rounded))
		term := multiply(termRoom[:0], add(liftRoom[:0], xx, yy), minor)
		sum, next = add(next[:0], sum, term), sum
	}
	return last(sum)
}
