package locate

import (
	"math"

	"brimline/network"
)

// Handed gives a state that was reached from a start the hand that Find would give it: a figure of
// which no reading knows left from right is turned over as a whole where it stands on the other
// hand. Wrong readings may have had the hand chosen when the figure was not yet itself. The second
// result is false where x is right as it is; then it is x itself.
func Handed(n *network.Network, x network.State) (network.State, bool) {
	g := newGrowth(n, true)
	if g.handed() {
		return x, false
	}
	for m := range g.pos {
		if p := x.Point(m); !math.IsNaN(p.X) {
			g.pos[m], g.placed[m] = p, true
		}
	}
	if !g.wrongHand() {
		return x, false
	}
	a, b := g.pos[n.Base[0]], g.pos[n.Base[1]]
	y := append(network.State(nil), x...)
	for m, ok := range g.placed {
		if ok {
			y.SetPoint(m, reflect(g.pos[m], a, b))
		}
	}
	return y, true
}
