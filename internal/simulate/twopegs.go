package simulate

import (
	"math/rand/v2"

	"brimline/plane"
)

// fromTwoPegs ties every mark to A and to B, and checks with tapes between marks.
type fromTwoPegs struct{}

func (fromTwoPegs) Name() string { return "two pegs with some diagonals" }

func (fromTwoPegs) pegs(r *rand.Rand, p pool) []plane.Point { return twoPegs(r, p) }

func (fromTwoPegs) read(v *visit) {
	v.base()
	columns := chance(v.r, 0.5) // first all from A, then all from B; else mark by mark
	if columns {
		for _, peg := range v.pegs {
			for _, m := range v.order {
				v.tie(peg, m, v.tape)
			}
		}
	} else {
		for _, m := range v.order {
			v.tie("A", m, v.tape)
			v.tie("B", m, v.tape)
		}
	}
	v.checkTapes(v.share)
}

// base tapes A to B one to three times.
func (v *visit) base() {
	for range 1 + v.r.IntN(3) {
		v.tie("A", "B", v.tape)
	}
}
