package plane

import "math"

// steepest is the largest bulge made here: a sweep short of a full circle by 4·10⁻⁸.
const steepest = 1e8

// ArcThrough is the arc from a over m to b; a straight when the three are in line with m
// between. The turn from chord a–m to chord m–b is half the sweep (Euclid III.20).
func ArcThrough(a, m, b Point) Segment {
	return Segment{a, b, halfTan(m.Sub(a), b.Sub(m))}
}

// ArcTangent is the arc from a to b that leaves a in direction t (of any length). The angle
// between tangent and chord is half the sweep (Euclid III.32). With t straight away from b it
// is nearly a full circle, to the left.
func ArcTangent(a, t, b Point) Segment {
	return Segment{a, b, halfTan(t, b.Sub(a))}
}

// halfTan is the tangent of half the turn from u to v, within ±steepest; 0 when either is zero.
func halfTan(u, v Point) float64 {
	cross, along := u.Cross(v), u.Dot(v)
	size := u.Len() * v.Len()
	if size == 0 {
		return 0
	}
	var b float64
	if along >= 0 {
		b = cross / (size + along)
	} else if cross == 0 {
		return steepest
	} else {
		b = (size - along) / cross
	}
	return math.Max(-steepest, math.Min(steepest, b))
}

// ChordRise gives radius, sweep, arc length and the area between arc and chord of an arc with
// chord c and rise h over its middle: R = c²/(8h) + h/2. h = 0 is a straight (radius +Inf);
// h > c/2 is more than a half circle; a negative h gives negative radius, sweep and area.
// Source: Euclid III.35 (intersecting chords) and the area of a circular segment.
func ChordRise(c, h float64) (r, sweep, arc, segmentArea float64) {
	if c <= 0 {
		return math.NaN(), math.NaN(), math.NaN(), math.NaN()
	}
	s := Segment{A: Point{}, B: Point{X: c}, Bulge: 2 * h / c}
	return s.Radius(), s.Sweep(), s.Length(), s.capArea()
}
