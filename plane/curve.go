package plane

import "math"

// curve is the whole straight or circle that a segment lies on, as the zero set of
//
//	F(p) = ½κ|p − a|² + g·(p − a),   |g| = 1,
//
// where a is a point of it, κ its signed curvature and g points right of the travel. F has no
// singular place as κ goes to 0, unlike centre and radius. The signed distance d (positive to
// the right) satisfies F = d + κd²/2.
type curve struct {
	k float64
	g Point
	a Point
}

func (s Segment) curve() curve {
	return curve{s.Curvature(), s.Tangent(0).Left().Mul(-1), s.A}
}

func (c curve) value(p Point) float64 {
	q := p.Sub(c.a)
	return c.k/2*q.Dot(q) + c.g.Dot(q)
}

func (c curve) grad(p Point) Point { return c.g.Add(p.Sub(c.a).Mul(c.k)) }

// distance is the signed distance of p, positive to the right of the travel; the stable root
// of F = d + κd²/2.
func (c curve) distance(p Point) float64 {
	f := c.value(p)
	return 2 * f / (1 + math.Sqrt(math.Max(0, 1+2*c.k*f)))
}

// foot is the nearest point of the whole curve to p, and the direction of travel there; ok is
// false at the centre, from where every point is as near.
func (c curve) foot(p Point) (q, along Point, ok bool) {
	n := c.grad(p)
	l := n.Len()
	if l < 1e-14 {
		return c.a, c.g.Left(), false
	}
	n = n.Mul(1 / l)
	return p.Sub(n.Mul(c.distance(p))), n.Left(), true
}
