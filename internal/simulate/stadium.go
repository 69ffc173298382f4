package simulate

import (
	"math/rand/v2"

	"brimline/plane"
)

// stadium has two parallel sides and a half circle at each end.
type stadium struct{}

func (stadium) Name() string { return "semicircle ends" }

func (stadium) Draw(r *rand.Rand) Figure {
	length := between(r, 7, 13)
	return Stadium(length, length*between(r, 0.38, 0.52))
}

// Stadium is length by width overall, counter-clockwise from the start of its lower side.
func Stadium(length, width float64) Figure {
	x, y := (length-width)/2, width/2
	a, b := plane.Point{X: -x, Y: -y}, plane.Point{X: x, Y: -y}
	c, d := plane.Point{X: x, Y: y}, plane.Point{X: -x, Y: y}
	return Figure{
		one(plane.Segment{A: a, B: b}, true),
		one(plane.Segment{A: b, B: c, Bulge: 1}, true),
		one(plane.Segment{A: c, B: d}, true),
		one(plane.Segment{A: d, B: a, Bulge: 1}, true),
	}
}
