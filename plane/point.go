package plane

import "math"

// Point is a place in plan or a vector between two places, in metres.
type Point struct{ X, Y float64 }

// Add is p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub is p − q, the vector from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul is s·p.
func (p Point) Mul(s float64) Point { return Point{s * p.X, s * p.Y} }

// Dot is the scalar product. Products are rounded before they are added, so that every
// processor gives the same sign.
func (p Point) Dot(q Point) float64 { return float64(p.X*q.X) + float64(p.Y*q.Y) }

// Cross is p.X·q.Y − p.Y·q.X: positive when q lies counter-clockwise of p.
func (p Point) Cross(q Point) float64 { return float64(p.X*q.Y) - float64(p.Y*q.X) }

// Len is the length of p.
func (p Point) Len() float64 { return math.Hypot(p.X, p.Y) }

// Dist is the distance from p to q.
func (p Point) Dist(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// Left is p turned a quarter counter-clockwise.
func (p Point) Left() Point { return Point{-p.Y, p.X} }

// Unit is p scaled to length 1; the zero vector stays zero.
func (p Point) Unit() Point {
	l := p.Len()
	if l == 0 {
		return Point{}
	}
	return Point{p.X / l, p.Y / l}
}

// Turn is p turned counter-clockwise by angle about the origin.
func (p Point) Turn(angle float64) Point {
	s, c := math.Sincos(angle)
	return Point{c*p.X - s*p.Y, s*p.X + c*p.Y}
}

// by is p turned by the direction of the unit vector w from +x.
func (p Point) by(w Point) Point { return Point{w.X*p.X - w.Y*p.Y, w.Y*p.X + w.X*p.Y} }

// Finite says that neither coordinate is NaN or infinite.
func (p Point) Finite() bool {
	return !math.IsNaN(p.X-p.X) && !math.IsNaN(p.Y-p.Y)
}

// Lerp is the point at share t of the way from a to b; exactly b at t = 1.
func Lerp(a, b Point, t float64) Point {
	return Point{a.X*(1-t) + b.X*t, a.Y*(1-t) + b.Y*t}
}

// Angle is the direction of d counter-clockwise from +x, in (−π, π]; 0 for the zero vector.
func Angle(d Point) float64 { return math.Atan2(d.Y, d.X) }

// Bearing is the direction of d clockwise from +y, in [0, 2π); 0 for the zero vector.
func Bearing(d Point) float64 {
	b := math.Atan2(d.X, d.Y)
	if b < 0 {
		b += 2 * math.Pi
	}
	if b >= 2*math.Pi {
		b = 0 // a negative angle too small to be told from a full turn
	}
	return b
}

// Between is the turn from direction u to direction v, counter-clockwise, in (−π, π].
func Between(u, v Point) float64 { return math.Atan2(u.Cross(v), u.Dot(v)) }
