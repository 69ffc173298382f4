package mesh

import "brimline/plane"

// Point3 is a place in plan and its height, metres, z upward.
type Point3 struct{ X, Y, Z float64 }

// Plan is the point seen from above.
func (p Point3) Plan() plane.Point { return plane.Point{X: p.X, Y: p.Y} }

// Surface is a surface of flat triangles over a part of the plane: one height at each place, so
// nothing is upright. Triangles turn counter-clockwise seen from above.
type Surface struct {
	Points    []Point3   // the slice given, or a longer copy with those of Made
	Triangles [][3]int32 // numbers into Points
	Beside    [][3]int32 // the triangle across the edge opposite each corner; −1 where the surface ends
	Fixed     []uint8    // bit i: the edge opposite corner i is a piece of a break, of the ring or of a hole
	Made      []Made     // the points made where edges cross, in the order of their numbers
}

// Made is a point that was made: its height is the weighted sum of those of up to four others,
// each with a lower number; a weight of 0 stands for none.
type Made struct {
	Point  int32
	From   [4]int32
	Weight [4]float64
}

// corners are the three points of triangle t.
func (s *Surface) corners(t int) (a, b, c Point3) {
	v := s.Triangles[t]
	return s.Points[v[0]], s.Points[v[1]], s.Points[v[2]]
}

// area is that of the triangle in plan, m².
func area(a, b, c Point3) float64 {
	return 0.5 * (float64((b.X-a.X)*(c.Y-a.Y)) - float64((b.Y-a.Y)*(c.X-a.X)))
}

// total adds up with a second number for what rounding takes from the sum (A. Neumaier,
// "Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen", ZAMM 54, 1974).
type total struct{ sum, rest float64 }

func (t *total) add(x float64) {
	var err float64
	t.sum, err = twoSum(t.sum, x)
	t.rest += err
}

func (t *total) value() float64 { return t.sum + t.rest }
