package plane

import "math"

// Fair is the fair curve through the points in their order, as arcs that meet in common
// tangents: two arcs (a biarc) between each two neighbours, segments 2i and 2i+1 for the span
// from point i. Closed runs come back to the first point. startDir and endDir, where not nil,
// are the directions of travel at the ends of an open run.
//
// The tangents are those of the curve whose curvature is continuous and runs linearly along
// each span (a cubic spline in the angle, spans measured along the arc). Points of one circle,
// at whatever spacing, give that circle; points in line give that line; three in line among
// others are met without being held straight. An open end without a direction keeps the
// curvature of its neighbour point over the last span. The curve moves smoothly with every
// point, a point's pull fading to about a quarter from each neighbour to the next.
//
// A point equal to the one before is left out. With two distinct points and no direction the
// result is straight (closed: there and back); with fewer it is empty. Work is O(n).
func Fair(pts []Point, closed bool, startDir, endDir *Point) Path {
	pts = distinct(pts, closed)
	n := len(pts)
	if n < 2 {
		return Path{Closed: closed}
	}
	var tangents []Point
	switch {
	case n == 2 && closed:
		return Polyline(pts, true)
	case closed:
		tangents = ringTangents(pts)
	default:
		tangents = openTangents(pts, startDir, endDir)
	}
	path := Path{Closed: closed}
	spans := n - 1
	if closed {
		spans = n
	}
	for i := range spans {
		j := (i + 1) % n
		a, b := biarc(pts[i], tangents[i], pts[j], tangents[j])
		path.Segs = append(path.Segs, a, b)
	}
	return path
}

// distinct leaves out points equal to the one before, round the ring when closed.
func distinct(pts []Point, closed bool) []Point {
	var out []Point
	for _, p := range pts {
		if len(out) == 0 || p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	for closed && len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return out
}

// spans holds what the tangent equations are made of: for each chord its vector and the length
// of the arc over it, for each point the turn between the chords that meet there.
type spans struct {
	chord []Point
	arc   []float64
	turn  []float64 // at the point where the chord begins
}

// measure makes the spans of n points; at(i) must answer for every i it is asked for.
func measure(pts []Point, closed bool) spans {
	n := len(pts)
	m := n - 1
	if closed {
		m = n
	}
	s := spans{make([]Point, m), make([]float64, m), make([]float64, m)}
	at := func(i int) Point { return pts[(i+n)%n] }
	for i := range m {
		s.chord[i] = at(i + 1).Sub(at(i))
	}
	for i := range m {
		if closed || i > 0 {
			s.turn[i] = Between(s.chord[(i-1+m)%m], s.chord[i])
		}
		half, seen := 0.0, 0.0
		if closed || i > 0 {
			half, seen = half+subtended(at(i-1), at(i), at(i+1)), seen+1
		}
		if closed || i+2 < n {
			half, seen = half+subtended(at(i+2), at(i), at(i+1)), seen+1
		}
		s.arc[i] = s.chord[i].Len()
		if seen > 0 {
			s.arc[i] *= arcOverChord(half / seen)
		}
	}
	return s
}

// subtended is the angle at eye between a and b: on a circle half the sweep from a to b
// (Euclid III.20), whatever the spacing.
func subtended(eye, a, b Point) float64 {
	return math.Abs(Between(a.Sub(eye), b.Sub(eye)))
}

// arcOverChord is γ/sin γ for half a sweep γ, held where a span would be nearly a full circle.
func arcOverChord(half float64) float64 {
	half = math.Min(half, 3)
	if half < 1e-8 {
		return 1
	}
	return half / math.Sin(half)
}

// ringTangents are the unit tangents at the points of a closed run of at least three points.
func ringTangents(pts []Point) []Point {
	s := measure(pts, true)
	lower, diag, upper, right := fairEquations(s, true, nil, nil)
	return turned(s.chord, solveRing(lower, diag, upper, right))
}

// openTangents are the unit tangents at the points of an open run.
func openTangents(pts []Point, startDir, endDir *Point) []Point {
	s := measure(pts, false)
	lower, diag, upper, right := fairEquations(s, false, startDir, endDir)
	return turned(append(s.chord, s.chord[len(s.chord)-1]), solveBand(lower, diag, upper, right))
}

// fairEquations are those of the tangents. Unknown i is the turn from chord i to the tangent at its
// beginning; of an open run the last one is that from the last chord to its end.
func fairEquations(s spans, closed bool, startDir, endDir *Point) (lower, diag, upper, right []float64) {
	m := len(s.chord)
	n := m + 1
	if closed {
		n = m
	}
	lower, diag, upper, right = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	turn := func(i int) float64 {
		if i < m || closed {
			return s.turn[i%m]
		}
		return 0
	}
	for i := range n {
		if !closed && (i == 0 || i == m) {
			continue
		}
		before, after := 1/s.arc[(i-1+m)%m], 1/s.arc[i]
		lower[i], diag[i], upper[i] = before, 2*(before+after), after
		right[i] = -(2*turn(i)*before + turn(i+1)*after)
	}
	if closed {
		return lower, diag, upper, right
	}
	diag[0], diag[m] = 1, 1
	if startDir != nil {
		right[0] = Between(s.chord[0], *startDir)
	} else {
		upper[0], right[0] = 1, -turn(1)
	}
	if endDir != nil {
		right[m] = Between(s.chord[m-1], *endDir)
	} else {
		lower[m] = 1
	}
	if m == 1 && startDir == nil && endDir == nil {
		diag[0], upper[0], right[0] = 1, 0, 0 // two points and nothing else: straight
	}
	return lower, diag, upper, right
}

func turned(chords []Point, by []float64) []Point {
	out := make([]Point, len(by))
	for i, a := range by {
		out[i] = chords[i].Unit().Turn(a)
	}
	return out
}
