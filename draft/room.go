package draft

import (
	"math"

	"brimline/plane"
	"brimline/sheet"
)

// room is a convex four-cornered patch of paper, corners counter-clockwise: what a text or a
// symbol takes.
type room [4]plane.Point

// roomOf is the room of a text, wider by pad on all sides.
func roomOf(t sheet.Text, pad float64) room {
	c := t.Corners()
	along := plane.Point{X: 1}.Turn(t.Turn).Mul(pad)
	up := along.Left()
	return room{
		c[0].Sub(along).Sub(up), c[1].Add(along).Sub(up),
		c[2].Add(along).Add(up), c[3].Sub(along).Add(up),
	}
}

// square is the room of a symbol of half width h about p.
func square(p plane.Point, h float64) room {
	return room{{X: p.X - h, Y: p.Y - h}, {X: p.X + h, Y: p.Y - h}, {X: p.X + h, Y: p.Y + h}, {X: p.X - h, Y: p.Y + h}}
}

func (r room) bounds() plane.Box { return plane.BoundsOf(r[:]...) }

// inside says that the whole room lies in the box.
func (r room) inside(b plane.Box) bool {
	k := r.bounds()
	return k.Min.X >= b.Min.X && k.Min.Y >= b.Min.Y && k.Max.X <= b.Max.X && k.Max.Y <= b.Max.Y
}

// meets says that two rooms share more than their rims: no side of either parts them.
func (r room) meets(o room) bool { return !r.parts(o) && !o.parts(r) }

// parts says that all of o lies beyond one side of r.
func (r room) parts(o room) bool {
	for i := range r {
		a, side := r[i], r[(i+1)%4].Sub(r[i])
		beyond := true
		for _, q := range o {
			if side.Cross(q.Sub(a)) > 1e-9 {
				beyond = false
				break
			}
		}
		if beyond {
			return true
		}
	}
	return false
}

// cutBy says that the straight from p to q passes through the inside of the room: what is left of
// it after the four sides have cut it (M. Cyrus and J. Beck, Generalized two- and three-dimensional
// clipping, Computers and Graphics 3, 1978).
func (r room) cutBy(p, q plane.Point) bool {
	d := q.Sub(p)
	t0, t1 := 0.0, 1.0
	for i := range r {
		side := r[(i+1)%4].Sub(r[i])
		at, slope := side.Cross(p.Sub(r[i])), side.Cross(d)
		switch {
		case slope == 0:
			if at <= 0 {
				return false
			}
		case slope > 0:
			t0 = math.Max(t0, -at/slope)
		default:
			t1 = math.Min(t1, -at/slope)
		}
	}
	return t1-t0 > 1e-9
}

// crossing says that two straights cross or touch inside both.
func crossing(a, b, c, d plane.Point) bool {
	ab, cd := b.Sub(a), d.Sub(c)
	return ab.Cross(c.Sub(a))*ab.Cross(d.Sub(a)) < 0 && cd.Cross(a.Sub(c))*cd.Cross(b.Sub(c)) < 0
}

// closeBy is the distance in millimetres under which a line beside another cannot be told from it.
const closeBy = 0.6

// beside says that the middle or the far end of a line lies on a straight or next to it.
func beside(l line, c, d plane.Point) bool {
	s := plane.Segment{A: c, B: d}
	for _, p := range []plane.Point{plane.Lerp(l.a, l.b, 0.5), l.b} {
		if q, _ := s.Nearest(p); q.Dist(p) < closeBy {
			return true
		}
	}
	return false
}
