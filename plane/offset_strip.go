package plane

import "math"

// stripped is the stretch of a straight that lies within d of another straight: the discs about a
// straight make a convex strip with round ends, so that it is one. ok is false where there is none.
// Two that run side by side at d itself, to rounding, count as within.
func stripped(s, other *side, d float64) (stretch, bool) {
	size, u, v := s.size, s.way, other.way
	out := stretch{math.Inf(1), math.Inf(-1)}
	join := func(from, to float64) {
		if from <= to {
			out = stretch{min(out.from, from), max(out.to, to)}
		}
	}
	for _, end := range []Point{other.A, other.B} {
		w := end.Sub(s.A)
		if h := u.Cross(w); math.Abs(h) < d {
			mid, half := w.Dot(u), math.Sqrt((d-h)*(d+h))
			join(mid-half, mid+half)
		}
	}
	start := s.A.Sub(other.A)
	from, to := within(0, size, start.Dot(v), u.Dot(v), 0, other.size)
	off, drift := v.Cross(start), v.Cross(u)
	if math.Abs(drift)*size < hairline {
		if math.Abs(off) <= d+hairline {
			join(from, to)
		}
	} else {
		join(within(from, to, off, drift, -d, d))
	}
	from, to = max(out.from, 0), min(out.to, size)
	return stretch{from / size, to / size}, from < to
}

// within narrows [from, to] to where at + rate·t lies in [low, high].
func within(from, to, at, rate, low, high float64) (float64, float64) {
	if rate == 0 {
		if at < low || at > high {
			return 1, 0
		}
		return from, to
	}
	a, b := (low-at)/rate, (high-at)/rate
	return max(from, min(a, b)), min(to, max(a, b))
}
