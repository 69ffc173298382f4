package outline

import (
	"math"

	"brimline/plane"
)

// body is a closed line taken apart: its sides and free arcs, in order, and what stands at the
// corners between two sides.
type body struct {
	c       *chain
	hand    float64 // +1 where the line runs counter-clockwise
	side    []int   // pieces: sides and arcs that round no corner
	corner  []int   // piece between side i and the next, −1 none: a corner arc or a cut
	curved  bool    // a part is a fair curve
	kinked  []int   // pieces that do not begin tangent
	turning []float64
}

// A corner arc turns by this much, a cut corner at each of its ends by that: common practice, no
// source.
const (
	leastCorner, mostCorner = 40 * math.Pi / 180, 140 * math.Pi / 180
	leastCut, mostCut       = 20 * math.Pi / 180, 70 * math.Pi / 180
)

func (c *chain) body(out *Line) *body {
	b := &body{c: c, hand: 1}
	if out.Clockwise {
		b.hand = -1
	}
	n := len(c.pieces)
	drop := make([]bool, n)
	for i := range c.pieces {
		p := &c.pieces[i]
		b.curved = b.curved || p.kind == "curve"
		b.turning = append(b.turning, b.turn(c.q, i))
		if p.joint != "tangent" {
			b.kinked = append(b.kinked, i)
		}
	}
	for i := range c.pieces {
		drop[i] = n > 2 && !b.curved && (b.rounds(i) || b.cuts(i))
	}
	for i := range c.pieces {
		if drop[i] {
			continue
		}
		b.side = append(b.side, i)
		between := -1
		if drop[(i+1)%n] {
			between = (i + 1) % n
		}
		b.corner = append(b.corner, between)
	}
	return b
}

// turn at the start of piece i, to the left round a counter-clockwise line.
func (b *body) turn(q []float64, i int) float64 {
	p := b.c.pieces
	if p[i].kind == "curve" || p[b.c.before(i)].kind == "curve" {
		return 0
	}
	return b.hand * plane.Between(b.seg(q, b.c.before(i)).Tangent(1), b.seg(q, i).Tangent(0))
}

func (b *body) seg(q []float64, i int) plane.Segment { return b.c.segment(q, &b.c.pieces[i]) }

// rounds says that piece i is the arc of a corner between two straights.
func (b *body) rounds(i int) bool {
	n := len(b.c.pieces)
	p := b.c.pieces
	if p[i].kind != "arc" || p[b.c.before(i)].kind != "straight" || p[(i+1)%n].kind != "straight" {
		return false
	}
	sweep := math.Abs(b.seg(b.c.q, i).Sweep())
	const slight = 12 * math.Pi / 180
	return sweep > leastCorner && sweep < mostCorner && math.Abs(b.turning[i]) < slight && math.Abs(b.turning[(i+1)%n]) < slight
}

// cuts says that piece i is a straight that cuts a corner.
func (b *body) cuts(i int) bool {
	n := len(b.c.pieces)
	p, before, next := b.c.pieces, b.c.before(i), (i+1)%n
	if p[i].kind != "straight" || p[before].kind != "straight" || p[next].kind != "straight" {
		return false
	}
	in := func(a float64) bool { return a > leastCut && a < mostCut }
	l := b.seg(b.c.q, i).Chord()
	return in(b.turning[i]) && in(b.turning[next]) && l < b.seg(b.c.q, before).Chord() && l < b.seg(b.c.q, next).Chord()
}

// round says that the line turns one way throughout and has no corner.
func (b *body) round() bool {
	for i := range b.c.pieces {
		if b.c.pieces[i].kind == "arc" && b.hand*b.seg(b.c.q, i).Sweep() < 0 {
			return false
		}
	}
	return b.smoothJoints()
}

// pattern is the kinds of the sides: "ssss", "sasa".
func (b *body) pattern() string {
	out := ""
	for _, i := range b.side {
		out += b.c.pieces[i].kind[:1]
	}
	return out
}

// begin turns the sides so that the pattern reads as wanted.
func (b *body) begin(want string) bool {
	n := len(b.side)
	have := b.pattern()
	if b.curved || len(have) != len(want) {
		return false
	}
	for k := range n {
		if have[k:]+have[:k] == want {
			b.side = append(append([]int(nil), b.side[k:]...), b.side[:k]...)
			b.corner = append(append([]int(nil), b.corner[k:]...), b.corner[:k]...)
			return true
		}
	}
	return false
}

// angle is the turn from side i to side j less so many degrees, to the left round a
// counter-clockwise line, within half a turn.
func (b *body) angle(q []float64, i, j int, degrees float64) float64 {
	u, v := b.seg(q, b.side[i]), b.seg(q, b.side[j])
	turn := b.hand * plane.Between(u.B.Sub(u.A), v.B.Sub(v.A))
	return math.Remainder(turn-degrees*math.Pi/180, 2*math.Pi)
}

// smooth gives the turns at joints that were not held tangent.
func (b *body) smooth(q []float64) []float64 {
	var out []float64
	for _, i := range b.kinked {
		out = append(out, b.turn(q, i))
	}
	return out
}

// radius of a side that is an arc, or of a corner; 0 of none and of a cut.
func (b *body) radius(q []float64, piece int) float64 {
	if piece < 0 || b.c.pieces[piece].kind != "arc" {
		return 0
	}
	return math.Abs(b.seg(q, piece).Radius())
}
