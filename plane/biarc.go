package plane

import "math"

// biarc is a pair of arcs, tangent to each other, from a in direction t to b in direction u
// (unit vectors). Of the one-parameter family it is the pair with tangents of one length d:
// a + d·t and b − d·u lie 2d apart and the arcs join midway, so that with v = b − a
//
//	|t − u|²·d² + 2 v·(t + u)·d − |v|² = 0.
//
// It is one circle cut in two where both ends lie on one, and two straights where both run
// along v. Source: K. M. Bolton, Biarc curves, Computer-Aided Design 7 (1975) 89–92.
func biarc(a, t, b, u Point) (first, second Segment) {
	v, turn := b.Sub(a), t.Sub(u)
	along := v.Dot(t.Add(u))
	d := v.Dot(v) / (along + math.Sqrt(along*along+v.Dot(v)*turn.Dot(turn)))
	m := Lerp(a, b, 0.5)
	if math.IsInf(d, 0) || math.IsNaN(d) { // both ends look straight back: no such pair
		return Segment{A: a, B: m}, Segment{A: m, B: b}
	}
	m = m.Add(turn.Mul(d / 2))
	return ArcTangent(a, t, m), ArcTangent(b, u.Mul(-1), m).Reverse()
}
