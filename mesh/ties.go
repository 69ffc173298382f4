package mesh

import "brimline/plane"

// insideCircle says whether d is inside the circle through a, b, c (counter-clockwise), and
// decides ties: of four points on one circle the one that comes last in the order of x, then
// y, is taken to be lifted off it by less than any number. So a set of points has one Delaunay
// triangulation, whatever order it comes in. (O. Devillers, M. Teillaud, "Perturbations and
// Vertex Removal in a 3D Delaunay Triangulation", SODA 2003, section 3, one dimension lower.)
func insideCircle(a, b, c, d plane.Point) bool {
	if s := InCircle(a, b, c, d); s != 0 {
		return s > 0
	}
	switch {
	case before(a, d) && before(b, d) && before(c, d):
		return false // lifted, d is above the plane through the other three
	case before(a, c) && before(b, c):
		return Orient(a, b, d) > 0 // the plane rises on the side of ab where c is
	case before(a, b):
		return Orient(c, a, d) > 0
	}
	return Orient(b, c, d) > 0
}

// before is the order of points by x, then y.
func before(p, q plane.Point) bool { return p.X < q.X || p.X == q.X && p.Y < q.Y }
