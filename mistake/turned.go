package mistake

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// turned looks, for a run of rows with two columns swapped, at the other reading of the same facts:
// the two pegs taken for each other, so that the other rows are swapped instead. Which of them it
// is only the few readings of the pegs themselves tell, and the search may have gone to either.
func (f *finder) turned(s setting) []setting {
	var out []setting
	groups := groupsOf(s.taken)
	for k, h := range groups {
		if h.Code != "columns" {
			continue
		}
		x := mirrored(s.x, h.Peg, h.Other)
		others := without(groups, k)
		for _, g := range f.promising(f.model(x, others), others) {
			if g.Code == "columns" && g.Peg == h.Peg && g.Other == h.Other {
				out = append(out, setting{taken: append(others[:len(others):len(others)], g), x: g.x})
			}
		}
	}
	return out
}

// mirrored is a state seen with two marks in each other's place: everything else at its image
// across the middle of both.
func mirrored(x network.State, a, b int) network.State {
	y := append(network.State(nil), x...)
	p, q := x.Point(a), x.Point(b)
	u := q.Sub(p).Unit()
	mid := plane.Lerp(p, q, 0.5)
	for m := 0; 2*m+1 < len(y); m++ {
		if at := x.Point(m); m != a && m != b && !math.IsNaN(at.X) {
			y.SetPoint(m, at.Sub(u.Mul(2*u.Dot(at.Sub(mid)))))
		}
	}
	return y
}
