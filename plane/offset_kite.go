package plane

import "math"

// kite is the point of a mitred corner, beyond the discs: corner, foot of the one side, point, foot
// of the other, counter-clockwise. at is the segment before the corner.
type kite struct {
	at int
	p  [4]Point
}

// cover takes what lies inside the kite from the rest of a strand.
func (k kite) cover(r *rest) {
	for i := range k.p {
		r.cut(k.side(i).curve())
	}
	r.lessWhere(func(t float64) bool { return k.hides(r.strand, t) })
}

func (k kite) side(i int) Segment { return Segment{A: k.p[i], B: k.p[(i+1)%4]} }

// hides says that the strand at share t lies inside, or on one of the two outer sides: back to back
// with it, or along it where the kite is to stand for both.
func (k kite) hides(s strand, t float64) bool {
	x, way := s.At(t), s.Tangent(t)
	for i := range k.p {
		side := k.side(i)
		along := side.Tangent(0)
		depth := along.Cross(x.Sub(side.A))
		if depth >= hairline {
			continue
		}
		if outer := i == 1 || i == 2; !outer || math.Abs(depth) > hairline {
			return false
		}
		backToBack := along.Dot(way) < -0.5
		double := along.Dot(way) > 0.5 && (s.of >= 0 || s.at > k.at)
		if !backToBack && !double {
			return false
		}
	}
	return true
}
