package simulate

import (
	"math/rand/v2"

	"brimline/plane"
)

// oval has four centres: two end arcs and two flat side arcs, all tangent. Often sold as an
// ellipse.
type oval struct{}

func (oval) Name() string { return "four-centre oval" }

func (oval) Draw(r *rand.Rand) Figure {
	length := between(r, 6.5, 13)
	width := length * between(r, 0.48, 0.65)
	return Oval(length, width, width/2*between(r, 0.60, 0.90))
}

// SideRadius is that of the side arcs of an oval with ends of radius end: the side's centre
// lies k beyond the middle, and the centres of tangent circles are as far apart as their radii
// differ: (length/2 − end)² + k² = (width/2 + k − end)².
func SideRadius(length, width, end float64) float64 {
	a, b := length/2-end, width/2-end
	return width/2 + (a*a-b*b)/(2*b)
}

// Oval is length by width overall with end arcs of radius end, which is less than half the
// width. Counter-clockwise from its lower side.
func Oval(length, width, end float64) Figure {
	r := SideRadius(length, width, end)
	k := r - width/2
	right, left := plane.Point{X: length/2 - end}, plane.Point{X: end - length/2}
	up, down := plane.Point{Y: k}, plane.Point{Y: -k} // centres of the lower and the upper side
	touch := func(side, end plane.Point) plane.Point {
		return side.Add(end.Sub(side).Unit().Mul(r))
	}
	a, b := touch(up, left), touch(up, right)
	c, d := touch(down, right), touch(down, left)
	return Figure{round(up, a, b, 1), round(right, b, c, 1), round(down, c, d, 1), round(left, d, a, 1)}
}
