package locate

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// takeHand gives the figure its hand when all placed marks stand nearly in one line: the waiting
// mark that stands clearest off it goes to the side that this attempt tries. Which side is right
// is settled at the end (settleHand), for the figure as a whole.
func (g *growth) takeHand() bool {
	if g.gauged || g.pinned || !g.inLine() {
		return false
	}
	var best *candidate
	value := -1.0
	for m, c := range g.waiting {
		if c == nil || g.placed[m] || len(c.places) < 2 || c.places[0].pair[0] < 0 {
			continue
		}
		apart := math.Min(c.places[0].p.Dist(c.places[1].p), 4)
		v := c.places[0].angle * apart * (1 + 0.1*float64(len(g.of[m])))
		if v > value {
			best, value = c, v
		}
	}
	if best == nil {
		return false
	}
	m := best.mark
	p := best.places[0]
	a, b := g.pos[p.pair[0]], g.pos[p.pair[1]]
	at := p.p
	if (b.Sub(a).Cross(at.Sub(a)) > 0) != g.left {
		at = reflect(at, a, b)
	}
	g.gauged, g.gauge = true, m
	g.place(m, at)
	return true
}

// said finds a `side` entry of a mark whose line is placed.
func (g *growth) said(m int) (network.Side, bool) {
	for _, s := range g.n.Sides {
		if s.Mark == m && g.placed[s.A] && g.placed[s.B] {
			return s, true
		}
	}
	return network.Side{}, false
}

// nearLine: marks this close to one line say little of the hand (metres).
const nearLine = 0.25

// inLine says that all placed marks lie near one line.
func (g *growth) inLine() bool {
	var a, b plane.Point
	n := 0
	for m, ok := range g.placed {
		if !ok {
			continue
		}
		p := g.pos[m]
		switch n {
		case 0:
			a = p
		default:
			if p.Dist(a) > b.Dist(a) || n == 1 {
				b = p
			}
		}
		n++
	}
	if n < 3 {
		return n > 0
	}
	d := b.Sub(a).Unit()
	for m, ok := range g.placed {
		if ok && math.Abs(d.Cross(g.pos[m].Sub(a))) > nearLine {
			return false
		}
	}
	return true
}

func reflect(p, a, b plane.Point) plane.Point {
	d := b.Sub(a).Unit()
	v := p.Sub(a)
	return a.Add(d.Mul(2 * d.Dot(v))).Sub(v)
}

// settleHand turns a figure whose hand nothing read decides to the side that `side` entries say,
// else so that the first mark off the base lies to its left.
func (g *growth) settleHand() {
	if g.wrongHand() {
		g.mirrorAll(g.n.Base[0], g.n.Base[1])
	}
}

// wrongHand says whether such a figure stands on the other hand.
func (g *growth) wrongHand() bool {
	if g.pinned {
		return false
	}
	a, b := g.n.Base[0], g.n.Base[1]
	if a < 0 || b < 0 || !g.placed[a] || !g.placed[b] {
		return false
	}
	votes := g.votes()
	if votes == 0 {
		votes = g.wantedHand()
	}
	if votes == 0 {
		votes = g.most(a, b)
	}
	if votes == 0 {
		if m := g.firstOff(a, b); m >= 0 && !g.leftOf(m, a, b) {
			votes = -1
		}
	}
	return votes < 0
}

// wantedHand compares the hand of the first three places wanted that are clearly not in line with
// that of the figure: 1 the same, -1 the other, 0 nothing to compare.
func (g *growth) wantedHand() int {
	w := g.n.Wanted
	for i := 2; i < len(w); i++ {
		a, b, c := w[0], w[1], w[i]
		if !g.placed[a.Mark] || !g.placed[b.Mark] || !g.placed[c.Mark] {
			continue
		}
		base := b.At.Sub(a.At)
		side := base.Unit().Cross(c.At.Sub(a.At))
		if math.Abs(side) < nearLine {
			continue
		}
		if (side > 0) == g.leftOf(c.Mark, a.Mark, b.Mark) {
			return 1
		}
		return -1
	}
	return 0
}

// votes counts the `side` entries that the places satisfy, less those that they do not.
func (g *growth) votes() int {
	n := 0
	for _, s := range g.n.Sides {
		if !g.placed[s.Mark] || !g.placed[s.A] || !g.placed[s.B] {
			continue
		}
		if g.leftOf(s.Mark, s.A, s.B) == s.Left {
			n++
		} else {
			n--
		}
	}
	return n
}

func (g *growth) leftOf(m, a, b int) bool {
	return g.pos[b].Sub(g.pos[a]).Cross(g.pos[m].Sub(g.pos[a])) > 0
}

// most is how many more marks, pegs apart, lie left of a–b than right of it: one wrong tape must not
// turn the figure.
func (g *growth) most(a, b int) int {
	n := 0
	for m, ok := range g.placed {
		if !ok || g.n.Pegs[m] {
			continue
		}
		if g.leftOf(m, a, b) {
			n++
		} else {
			n--
		}
	}
	return n
}

// firstOff is the first mark of the book clearly off the line a–b.
func (g *growth) firstOff(a, b int) int {
	d := g.pos[b].Sub(g.pos[a]).Unit()
	for m, ok := range g.placed {
		if ok && m != a && m != b && math.Abs(d.Cross(g.pos[m].Sub(g.pos[a]))) > 0.1 {
			return m
		}
	}
	return -1
}

func (g *growth) mirrorAll(a, b int) {
	pa, pb := g.pos[a], g.pos[b]
	for m := range g.pos {
		if !g.placed[m] {
			continue
		}
		g.pos[m] = reflect(g.pos[m], pa, pb)
		for k := range g.other[m] {
			g.other[m][k] = reflect(g.other[m][k], pa, pb)
		}
	}
	for s := range g.pose { // set-ups that know no hand follow
		g.pose[s] = nil
	}
	g.poseSetups()
}
