package locate

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// ray is where a mark may lie by a turn, a square or a straight: along a direction from a point,
// or both ways. sd is across it in metres, swing the uncertainty of the direction in radians.
type ray struct {
	from, along plane.Point
	both        bool
	sd, swing   float64
	lent        bool
}

// sdAt is the uncertainty across the ray at a distance.
func (r ray) sdAt(d float64) float64 { return math.Hypot(r.sd, r.swing*d) }

// turnRay is the direction of one end of a turn or square whose corner and other end are placed.
// A turn runs clockwise from its first mark to its last.
func (g *growth) turnRay(c *candidate, o *network.Obs) {
	corner, other, hand := o.Marks[1], o.Marks[0], -1.0
	if o.Marks[0] == c.mark {
		other, hand = o.Marks[2], 1
	}
	if c.mark == corner || !g.placed[corner] || !g.placed[other] {
		return
	}
	_, square := o.Kind.(network.Square)
	from := g.pos[corner]
	dir := g.pos[other].Sub(from)
	if dir.Len() < shortest {
		return
	}
	swing := math.Hypot(3*o.SD[0], nearness/dir.Len())
	c.rays = append(c.rays, ray{from, dir.Unit().Turn(hand * o.Values[0]), square, nearness, swing, lent(o)})
}

// straightRay is the line through the other marks of a straight that are placed.
func (g *growth) straightRay(c *candidate, o *network.Obs) {
	var pts []plane.Point
	for _, m := range o.Marks {
		if m != c.mark && g.placed[m] {
			pts = append(pts, g.pos[m])
		}
	}
	a, b := farthest(pts)
	if len(pts) < 2 || a.Dist(b) < shortest {
		return
	}
	sd := widened(o.SD[0])
	c.rays = append(c.rays, ray{a, b.Sub(a).Unit(), true, sd, sd / a.Dist(b), lent(o)})
}

// fromRays proposes where rays cross circles and each other.
func (c *candidate) fromRays(all bool) {
	for i, r := range c.rays {
		if r.lent && !all {
			continue
		}
		for _, k := range spread(c.circles) {
			if !k.lent || all {
				c.crossCircle(r, k)
			}
		}
		for _, s := range c.rays[i+1:] {
			if !s.lent || all {
				c.crossRay(r, s)
			}
		}
	}
}

func (c *candidate) crossCircle(r ray, k circle) {
	v := k.centre.Sub(r.from)
	mid, miss := v.Dot(r.along), math.Abs(r.along.Cross(v))
	if miss-k.r > 6*math.Hypot(r.sdAt(mid), k.sd) {
		return
	}
	half := math.Sqrt(math.Max(k.r*k.r-miss*miss, 0))
	for _, t := range []float64{mid + half, mid - half} {
		if t < 0 && !r.both {
			continue
		}
		p := r.from.Add(r.along.Mul(t))
		c.places = append(c.places, place{p: p, angle: math.Abs(r.along.Dot(p.Sub(k.centre).Unit())), pair: [2]int{-1, -1}})
		if half == 0 {
			break
		}
	}
}

func (c *candidate) crossRay(r, s ray) {
	sine := r.along.Cross(s.along)
	if math.Abs(sine) < flatCrossing {
		return
	}
	v := s.from.Sub(r.from)
	t, u := v.Cross(s.along)/sine, v.Cross(r.along)/sine
	if t < 0 && !r.both || u < 0 && !s.both {
		return
	}
	c.places = append(c.places, place{p: r.from.Add(r.along.Mul(t)), angle: math.Abs(sine), pair: [2]int{-1, -1}})
}

// flatCrossing is the sine below which two rays give no place.
const flatCrossing = 0.02
