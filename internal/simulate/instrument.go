package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// withInstrument reads most marks from one or two places of an instrument, in its own frames,
// and ties the rest, and some again, from two pegs.
type withInstrument struct{}

func (withInstrument) Name() string { return "mixed with instrument points" }

func (withInstrument) pegs(r *rand.Rand, p pool) []plane.Point { return twoPegs(r, p) }

func (withInstrument) read(v *visit) {
	v.base()
	n := len(v.order)
	start := v.r.IntN(n)
	seen := make([]bool, n)
	look := func(s Setup, from, count int) {
		for i := range count {
			k := (from + i) % n
			v.seen(v.order[k], s)
			seen[k] = true
		}
	}
	first := v.setup("T1")
	v.seen("A", first)
	v.seen("B", first)
	if chance(v.r, 0.4) { // two places, with three marks and more in common, at both ends
		part := int(math.Ceil(between(v.r, 0.5, 0.65) * float64(n)))
		early, late := 2, 1+v.r.IntN(3)
		look(first, start, part)
		second := v.setup("T2")
		look(second, start+part-early, early+n-part+late)
		if chance(v.r, 0.5) {
			v.seen("B", second)
		}
	} else {
		hidden := v.r.IntN(n/4 + 1) // behind a planter
		look(first, start, n-hidden)
	}
	v.instrumentTies(seen)
	v.checkTapes(v.share / 2)
}

// instrumentTies fixes what was not seen by two ties and one to a neighbour, which tells it
// from its mirror image, and ties some of the rest.
func (v *visit) instrumentTies(seen []bool) {
	again := between(v.r, 0.2, 0.5)
	for i, m := range v.order {
		switch {
		case !seen[i]:
			v.tie("A", m, v.tape)
			v.tie("B", m, v.tape)
			v.tie(v.order[(i+len(seen)-1)%len(seen)], m, v.check)
		case chance(v.r, again):
			v.tie(pick(v.r, v.pegs), m, v.tape)
		}
	}
}

// setup draws an instrument's frame: any turn, its origin under the instrument or far off.
func (v *visit) setup(name string) Setup {
	spread := 15.0
	if chance(v.r, 0.4) {
		spread = 200
	}
	origin := plane.Point{X: between(v.r, -spread, spread), Y: between(v.r, -spread, spread)}
	s := Setup{Name: name, Pose: plane.Turned(between(v.r, -math.Pi, math.Pi), origin), Flip: chance(v.r, 0.25)}
	switch v.r.IntN(3) {
	case 0:
		s.Sigma = stepped(v.r, 0.002, 0.006, 0.001)
	case 1:
		s.Sigma, s.Own = stepped(v.r, 0.002, 0.005, 0.0005), true
	}
	v.setups = append(v.setups, s)
	return s
}
