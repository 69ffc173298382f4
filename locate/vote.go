package locate

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// lent says that a reading votes between places and proposes none while others do: a check stays
// independent of what it checks, and a computed correction is no reading.
func lent(o *network.Obs) bool { return o.Check || o.Computed }

// misread is how far a distance is off that of a tie, in standard deviations of sd; a tie round
// something may well be too long.
func misread(o *network.Obs, d, sd float64) float64 {
	e := d - length(o)
	if e < 0 && o.Long > 0 {
		sd = math.Hypot(sd, o.Long)
	}
	return e / sd
}

// off is how far places are off a reading, in its widened standard deviations: of a tie, a turn,
// a square and a straight. It is 0 for other kinds, and where a mark that it needs has no place.
func (g *growth) off(o *network.Obs, known func(m int) bool, at func(m int) plane.Point) float64 {
	switch o.Kind.(type) {
	case network.Tie:
		if known(o.Marks[0]) && known(o.Marks[1]) {
			return misread(o, at(o.Marks[0]).Dist(at(o.Marks[1])), widened(o.SD[0]))
		}
	case network.Turn, network.Square:
		if known(o.Marks[0]) && known(o.Marks[1]) && known(o.Marks[2]) {
			return offAngle(o, at(o.Marks[0]), at(o.Marks[1]), at(o.Marks[2]))
		}
	case network.Straight:
		return offStraight(o, known, at)
	}
	return 0
}

// shortest keeps the direction of a mark close by from counting more than it can (metres).
const shortest = 0.05

// offAngle is that of an angle at b between the directions of a and c.
func offAngle(o *network.Obs, a, b, c plane.Point) float64 {
	u, v := a.Sub(b), c.Sub(b)
	angle := plane.Angle(u) - plane.Angle(v) // clockwise from a to c
	if _, square := o.Kind.(network.Square); square {
		angle = math.Abs(math.Remainder(angle, 2*math.Pi))
	}
	near := math.Max(math.Min(u.Len(), v.Len()), shortest)
	return math.Remainder(angle-o.Values[0], 2*math.Pi) / math.Hypot(3*o.SD[0], nearness/near)
}

// offStraight is the worst distance of a mark from the line through the two that stand farthest apart.
func offStraight(o *network.Obs, known func(m int) bool, at func(m int) plane.Point) float64 {
	var pts []plane.Point
	for _, m := range o.Marks {
		if known(m) {
			pts = append(pts, at(m))
		}
	}
	a, b := farthest(pts)
	if len(pts) < 3 || a == b {
		return 0
	}
	worst, u := 0.0, b.Sub(a).Unit()
	for _, p := range pts {
		worst = math.Max(worst, math.Abs(u.Cross(p.Sub(a))))
	}
	return worst / widened(o.SD[0])
}

// farthest gives the two points that stand farthest apart.
func farthest(pts []plane.Point) (a, b plane.Point) {
	most := -1.0
	for i, p := range pts {
		for _, q := range pts[i:] {
			if d := p.Dist(q); d > most {
				a, b, most = p, q, d
			}
		}
	}
	return a, b
}

// readByTurn says that a turn between placed marks, clearly not in line, shows the figure's hand.
func (g *growth) readByTurn() bool {
	for i := range g.n.Obs {
		o := &g.n.Obs[i]
		if _, ok := o.Kind.(network.Turn); !ok || !o.Use || !g.knowsHand(o) {
			continue
		}
		u, v := g.pos[o.Marks[0]].Sub(g.pos[o.Marks[1]]), g.pos[o.Marks[2]].Sub(g.pos[o.Marks[1]])
		if far := math.Max(u.Len(), v.Len()); far > 0 && math.Abs(u.Cross(v))/far > handFrom {
			return true
		}
	}
	return false
}
