package simulate

import (
	"math/rand/v2"

	"brimline/plane"
)

// Method is a way of measuring. pegs sets them out in the frame of the pool, two or more, A
// first; read takes the readings when everything has its place in the frame of the pegs.
type Method interface {
	Name() string
	pegs(r *rand.Rand, p pool) []plane.Point
	read(v *visit)
}

// Methods is the list of ways.
var Methods = []Method{
	fromTwoPegs{},
	fromMorePegs{},
	offsetsWithTies{},
	withInstrument{},
}
