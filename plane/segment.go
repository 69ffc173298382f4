package plane

import "math"

// Segment is a straight or one circular arc from A to B. Bulge is tan(sweep/4): positive turns
// left (counter-clockwise), 0 is a straight, ±1 a half circle; a full circle has no bulge and
// is two segments.
type Segment struct {
	A, B  Point
	Bulge float64
}

// Straight says that the rise is below 5·10⁻¹³ of the chord.
func (s Segment) Straight() bool { return math.Abs(s.Bulge) <= 1e-12 }

// Chord is the distance from A to B.
func (s Segment) Chord() float64 { return s.A.Dist(s.B) }

// Sweep is the turn from A to B, positive to the left, in (−2π, 2π).
func (s Segment) Sweep() float64 { return 4 * math.Atan(s.Bulge) }

// Curvature is 1/Radius, 0 for a straight; positive when turning left.
func (s Segment) Curvature() float64 {
	c := s.Chord()
	if c == 0 {
		return 0
	}
	return 4 * s.Bulge / ((1 + s.Bulge*s.Bulge) * c)
}

// Radius is signed as Bulge is: positive when turning left; +Inf for a straight.
func (s Segment) Radius() float64 {
	if s.Bulge == 0 {
		return math.Inf(1)
	}
	return s.Chord() * (1 + s.Bulge*s.Bulge) / (4 * s.Bulge)
}

// Centre is the centre of the arc, left of the path when turning left. A straight has none:
// its coordinates come out NaN or infinite.
func (s Segment) Centre() Point {
	h := (1 - s.Bulge*s.Bulge) / (4 * s.Bulge)
	return Lerp(s.A, s.B, 0.5).Add(s.B.Sub(s.A).Left().Mul(h))
}

// Sagitta is the rise of the arc over the middle of its chord, positive to the right of A→B,
// which is the side an arc turning left lies on.
func (s Segment) Sagitta() float64 { return s.Bulge * s.Chord() / 2 }

// Length is measured along the arc.
func (s Segment) Length() float64 {
	b := s.Bulge
	if math.Abs(b) < 1e-8 {
		return s.Chord() // the next term is 2b²/3, below one part in 10¹⁶
	}
	return s.Chord() * (1 + b*b) * math.Atan(b) / b
}

// At is the point at share t of the length, t = 0 at A and 1 at B; t outside runs on along
// the same straight or circle.
func (s Segment) At(t float64) Point {
	switch t {
	case 0:
		return s.A
	case 1:
		return s.B
	}
	half := s.Sweep() / 2
	if half == 0 {
		return Lerp(s.A, s.B, t)
	}
	// The chord from A to the point is turned (t−1)·half from A→B.
	return s.A.Add(s.B.Sub(s.A).Turn((t - 1) * half).Mul(math.Sin(t*half) / math.Sin(half)))
}

// Tangent is the unit direction of travel at share t; zero when A = B.
func (s Segment) Tangent(t float64) Point {
	way := s.B.Sub(s.A).Unit()
	switch {
	case s.Bulge == 0:
		return way
	case t == 0:
		return way.by(halfSweep(-s.Bulge))
	case t == 1:
		return way.by(halfSweep(s.Bulge))
	}
	return way.Turn((t - 0.5) * s.Sweep())
}

// halfSweep is the unit direction at half the sweep of a bulge from +x: with b = tan(sweep/4) its
// coordinates are (1−b²)/(1+b²) and 2b/(1+b²).
func halfSweep(b float64) Point {
	if math.Abs(b) > 1 {
		c := 1 / b
		return Point{(c*c - 1) / (c*c + 1), 2 * c / (1 + c*c)}
	}
	return Point{(1 - b*b) / (1 + b*b), 2 * b / (1 + b*b)}
}

// Reverse is the same piece travelled from B to A.
func (s Segment) Reverse() Segment { return Segment{s.B, s.A, -s.Bulge} }

// Part is the piece from share t0 to share t1 of the length.
func (s Segment) Part(t0, t1 float64) Segment {
	return Segment{s.At(t0), s.At(t1), math.Tan((t1 - t0) * math.Atan(s.Bulge))}
}

// Bounds is the smallest upright box round the piece.
func (s Segment) Bounds() Box {
	b := Box{Point{min(s.A.X, s.B.X), min(s.A.Y, s.B.Y)}, Point{max(s.A.X, s.B.X), max(s.A.Y, s.B.Y)}}
	if s.Straight() || s.A == s.B {
		return b
	}
	sweep := s.Sweep()
	start := Angle(s.B.Sub(s.A)) - sweep/2
	lo, hi := math.Min(start, start+sweep), math.Max(start, start+sweep)
	// An arc reaches furthest where it runs along an axis.
	for k := math.Ceil(lo / (math.Pi / 2)); k*math.Pi/2 < hi; k++ {
		p := s.At((k*math.Pi/2 - start) / sweep)
		b = b.Join(Box{p, p})
	}
	return b
}

// SignedArea is what the piece adds to ½∮(x dy − y dx): the area swept by the line from the
// origin, positive when counter-clockwise. Round a ring the pieces add up to its area, and
// equal ∮ x dy.
func (s Segment) SignedArea() float64 { return s.A.Cross(s.B)/2 + s.capArea() }

// capArea lies between chord and arc, R²(θ − sin θ)/2, positive when turning left. For a small bulge b
// that is the chord's square times b/3 + b³/15 − b⁵/105 + b⁷/315 − …, the next term below one part in 10¹⁶.
func (s Segment) capArea() float64 {
	way, b := s.B.Sub(s.A), s.Bulge
	if math.Abs(b) < 0.1 {
		q := b * b
		return way.Dot(way) * b * (1.0/3 + q*(1.0/15-q*(1.0/105-q*(1.0/315-q*(1.0/693-q*(1.0/1287-q/2145))))))
	}
	r := s.Radius()
	return r * r * lessSine(s.Sweep()) / 2
}

// lessSine is t − sin t without loss for small t (Taylor series of the sine).
func lessSine(t float64) float64 {
	if math.Abs(t) > 0.6 {
		return t - math.Sin(t)
	}
	q := t * t
	return t * q / 6 * (1 - q/20*(1-q/42*(1-q/72*(1-q/110*(1-q/156*(1-q/210))))))
}
