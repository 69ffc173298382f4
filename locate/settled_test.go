package locate_test

import (
	"testing"

	"brimline/locate"
	"brimline/network"
)

// flipped is a state with every mark on the other side of the line from the first mark to the second.
func flipped(n *network.Network, x network.State) network.State {
	y := append(network.State(nil), x...)
	a := x.Point(n.Base[0])
	u := x.Point(n.Base[1]).Sub(a).Unit()
	for m := range n.Marks {
		d := x.Point(m).Sub(a)
		y.SetPoint(m, a.Add(u.Mul(2*u.Dot(d))).Sub(d))
	}
	return y
}

// A figure of ties that was turned over gets back the hand that a side, or custom, gives it; one whose
// hand an offset or a turn reads is left alone, and so is one that stands right.
func TestHandedTurnsTheFigureBack(t *testing.T) {
	ties := "A B, A r, B r, A s, B s, r s, A q, B q, q r"
	for _, c := range []struct {
		name string
		s    *scene
		back bool
	}{
		{"custom", scenery("A 0 0, B 8 0, r 3 4, s 6 5, q 2 6").ties(ties), true},
		{"a side", scenery("A 0 0, B 8 0, r 3 -4, s 6 -5, q 2 -6").ties(ties).say("{side: r, of: A B, hand: right}"), true},
		{"a turn", scenery("A 0 0, B 8 0, r 3 4, s 6 5, q 2 6").ties(ties).turns("A", "r", "B"), false},
		{"an offset", scenery("A 0 0, B 8 0, r 3 4, s 6 5, q 2 6").ties(ties).offsets("A", "B", "s"), false},
	} {
		r := c.s.find(t)
		if _, turned := locate.Handed(r.n, r.X); turned {
			t.Errorf("%s: what stands right is turned", c.name)
		}
		y, turned := locate.Handed(r.n, flipped(r.n, r.X))
		if turned != c.back {
			t.Errorf("%s: turned %v", c.name, turned)
		}
		for m := range r.n.Marks {
			if d := y.Point(m).Dist(r.X.Point(m)); c.back && !(d < 1e-9) {
				t.Errorf("%s: %s is %.3g m off", c.name, r.n.Marks[m], d)
			}
		}
	}
}
