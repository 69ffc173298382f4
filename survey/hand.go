package survey

import (
	"math"

	"brimline/network"
)

// fewTies: marks with more tapes than this are pegs, which have no second place.
const fewTies = 40

// sameHand puts back to its located place every mark that x holds on the other hand
// of two marks it is taped to: the adjustment would settle at its mirror image, however near the
// two images lie.
func sameHand(n *network.Network, located, x network.State) {
	tied := make([][]int, len(n.Marks))
	for i := range n.Obs {
		o := &n.Obs[i]
		if _, tie := o.Kind.(network.Tie); tie && o.Use && n.Ready(located, o) {
			a, b := o.Marks[0], o.Marks[1]
			tied[a], tied[b] = append(tied[a], b), append(tied[b], a)
		}
	}
	for again := true; again; {
		again = false
		for m, to := range tied {
			if len(to) <= fewTies && x.Point(m) != located.Point(m) && crossed(m, to, located, x) {
				x.SetPoint(m, located.Point(m))
				again = true
			}
		}
	}
}

// crossed says that m lies on different hands of two of the marks in the two states.
func crossed(m int, to []int, one, other network.State) bool {
	for i, a := range to {
		for _, b := range to[:i] {
			if math.Signbit(hand(one, a, b, m)) != math.Signbit(hand(other, a, b, m)) {
				return true
			}
		}
	}
	return false
}

// hand is positive where m lies left of a to b.
func hand(x network.State, a, b, m int) float64 {
	p := x.Point(a)
	return x.Point(b).Sub(p).Cross(x.Point(m).Sub(p))
}

// keepHand gives a solution x whose marks stand on the hand that was located, where nothing but
// two tapes says where a mark is and the adjustment, on its way, went over to the other image;
// false when none did.
func keepHand(n *network.Network, located, x network.State) (network.State, bool) {
	uses := make([]int, len(n.Marks))
	tied := make([][]int, len(n.Marks))
	for i := range n.Obs {
		o := &n.Obs[i]
		if !o.Use || o.Track != nil || !n.Ready(located, o) {
			continue
		}
		for _, m := range o.Marks {
			uses[m]++
		}
		if _, tie := o.Kind.(network.Tie); tie {
			a, b := o.Marks[0], o.Marks[1]
			tied[a], tied[b] = append(tied[a], b), append(tied[b], a)
		}
	}
	kept := append(network.State(nil), x...)
	any := false
	for m, to := range tied {
		if uses[m] != 2 || len(to) != 2 || !crossed(m, to, located, x) {
			continue
		}
		a, p := x.Point(to[0]), x.Point(m)
		along := x.Point(to[1]).Sub(a).Unit()
		d := p.Sub(a)
		kept.SetPoint(m, a.Add(along.Mul(2*along.Dot(d)).Sub(d)))
		any = true
	}
	return kept, any
}
