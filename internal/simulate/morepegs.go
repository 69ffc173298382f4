package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// fromMorePegs stands three or four pegs round the pool, on any sides, so that base lines may
// cross it, and ties each mark to two to four of them.
type fromMorePegs struct{}

func (fromMorePegs) Name() string { return "three and more pegs" }

func (fromMorePegs) pegs(r *rand.Rand, p pool) []plane.Point {
	for range tries {
		n := 3 + r.IntN(2)
		start := between(r, 0, 2*math.Pi)
		var pegs []plane.Point
		for i := range n {
			turn := (float64(i) + between(r, -0.3, 0.3)) * 2 * math.Pi / float64(n)
			h := p.side(start + turn)
			along := h.lo + (h.hi-h.lo)*between(r, 0.2, 0.8)
			pegs = append(pegs, h.peg(between(r, 1, 3), along))
		}
		r.Shuffle(n, func(i, k int) { pegs[i], pegs[k] = pegs[k], pegs[i] })
		if allFixed(p, pegs) {
			return pegs
		}
	}
	panic("simulate: no place for three or four pegs found")
}

func allFixed(p pool, pegs []plane.Point) bool {
	for _, m := range p.marks {
		if !fixes(m, pegs, false) {
			return false
		}
	}
	return true
}

func (fromMorePegs) read(v *visit) {
	v.base()
	v.pegTies()
	for _, m := range v.order {
		for _, peg := range v.someFor(m) {
			v.tie(peg, m, v.tape)
		}
	}
	v.checkTapes(v.share * v.r.Float64()) // the further pegs check already: fewer tapes
}

// pegTies tapes between all pegs, A to B excepted.
func (v *visit) pegTies() {
	for i, b := range v.pegs {
		for _, a := range v.pegs[:i] {
			if a != "A" || b != "B" {
				v.tie(a, b, v.tape)
			}
		}
	}
}

// someFor picks the pegs that a mark is tied to: a drawn few where they fix it without doubt,
// else all. A and B alone do where the whole pool lies on one hand of them.
func (v *visit) someFor(m string) []string {
	n := 2 + v.r.IntN(len(v.pegs)-1)
	var few []string
	for _, k := range v.r.Perm(len(v.pegs))[:n] {
		few = append(few, v.pegs[k])
	}
	base := n == 2 && (few[0]+few[1] == "AB" || few[0]+few[1] == "BA") && v.oneHand()
	if (n > 2 || base) && fixes(v.at[m], v.places(few), base) {
		return few
	}
	return v.pegs
}

// oneHand says that the marks all lie on the same hand of A to B.
func (v *visit) oneHand() bool {
	left := v.at[v.order[0]].Y > 0
	for _, m := range v.order {
		if (v.at[m].Y > 0) != left {
			return false
		}
	}
	return true
}
