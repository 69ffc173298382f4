package mistake

import (
	"brimline/network"
	"brimline/plane"
)

// handed turns everything found over to the other hand where the figure stands on the wrong one now
// that the mistakes are known: while they bent it, a mark that a `side` was said of may have stood
// on the other side of the base. Nothing read changes by it.
func (f *finder) handed(found []weighed, taken []*hypothesis, x network.State) network.State {
	y, turned := f.s.Handed(x)
	if !turned {
		return x
	}
	a, b := x.Point(f.s.Net.Base[0]), x.Point(f.s.Net.Base[1])
	done := map[*hypothesis]bool{}
	turn := func(all []*hypothesis) {
		for _, h := range all {
			if h.x != nil && !done[h] {
				h.x = reflected(h.x, f.s.Net, a, b)
			}
			done[h] = true
		}
	}
	turn(taken)
	for _, w := range found {
		turn(w.best)
		turn(w.all)
	}
	return y
}

// reflected is a state at its image in the line through a and b.
func reflected(x network.State, n *network.Network, a, b plane.Point) network.State {
	y := append(network.State(nil), x...)
	u := b.Sub(a).Unit()
	for m := range n.Marks {
		d := x.Point(m).Sub(a)
		y.SetPoint(m, a.Add(u.Mul(2*u.Dot(d))).Sub(d))
	}
	return y
}
