package simulate

import (
	"math/rand/v2"

	"brimline/plane"
)

// roman has a rectangular body with square shoulders and a segmental arc at each end.
type roman struct{}

func (roman) Name() string { return "segmental ends" }

func (roman) Draw(r *rand.Rand) Figure {
	body := between(r, 5, 9)
	width := body * between(r, 0.45, 0.65)
	shoulder := width * between(r, 0.12, 0.20)
	chord := width - 2*shoulder
	rise := chord * between(r, 0.25, 0.45)
	other := rise
	if chance(r, 0.3) { // the two ends are not always alike
		other = chord * between(r, 0.25, 0.45)
	}
	return Roman(body, width, shoulder, rise, other)
}

// Roman has a body of length by width, shoulders at both ends, and arcs over the rest of the
// ends with the rises given, right and left. Every joint is a kink.
func Roman(body, width, shoulder, right, left float64) Figure {
	x, y := body/2, width/2
	c := y - shoulder // half the chord of the arcs
	at := func(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }
	line := func(a, b plane.Point, bulge float64) Piece {
		return one(plane.Segment{A: a, B: b, Bulge: bulge}, false)
	}
	return Figure{
		line(at(-x, -y), at(x, -y), 0),
		line(at(x, -y), at(x, -c), 0),
		line(at(x, -c), at(x, c), right/c), // bulge = rise over half the chord
		line(at(x, c), at(x, y), 0),
		line(at(x, y), at(-x, y), 0),
		line(at(-x, y), at(-x, c), 0),
		line(at(-x, c), at(-x, -c), left/c),
		line(at(-x, -c), at(-x, -y), 0),
	}
}
