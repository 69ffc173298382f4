package parallels

import (
	"math"

	"brimline/plane"
)

// bendy is the turn at a corner, in radians, from which a ring counts as rough.
const bendy = 0.2

// Area is that of the parallel of one of the rings at d, outside for d > 0, with round corners. Of a
// smooth one it is Steiner's formula (J. Steiner, Über parallele Flächen, 1840): A + Ld + d²/2·Σ turns,
// where a corner turned away from the parallel counts with twice the tangent of half its turn. Of a
// rough one, where no formula holds, it is summed up direction by direction.
func Area(p plane.Path, d float64) float64 {
	sum := p.Area() + p.Length()*d
	for i, s := range p.Segs {
		turn := plane.Between(s.Tangent(1), p.Segs[(i+1)%len(p.Segs)].Tangent(0))
		if math.Abs(turn) > bendy {
			return byReach(p, d)
		}
		if turn*d < 0 {
			turn = 2 * math.Tan(turn/2)
		}
		sum += (turn + s.Sweep()) / 2 * d * d
	}
	return sum
}

// byReach is ½∫r²dφ by the midpoint rule, r being the furthest place of the ray at φ within d of the
// ring, or for d < 0 the nearest. What lies within d of a ring seen whole from the middle is seen whole
// too; inside that holds while d is large beside the noise.
func byReach(p plane.Path, d float64) float64 {
	n := len(p.Segs)
	steps := max(100000, 10*n)
	sum := 0.0
	for k := range steps {
		way := plane.Point{X: 1}.Turn(2 * math.Pi * (float64(k) + 0.5) / float64(steps))
		// Corners stand in order of their directions, and d reaches less than a tenth of a radian.
		mid, wide := k*n/steps, n/60+2
		best := math.Inf(-1)
		for i := mid - wide; i <= mid+wide; i++ {
			best = math.Max(best, reach(p.Segs[(i+n)%n], way, d))
		}
		sum += best * best
	}
	return sum / 2 * 2 * math.Pi / float64(steps)
}

// reach is where the ray from the origin leaves what lies within d of a straight; for d < 0 where it
// enters it, negated. −Inf where it passes by.
func reach(s plane.Segment, way plane.Point, d float64) float64 {
	sign := math.Copysign(1, d)
	best := math.Inf(-1)
	if across := way.Cross(s.A); math.Abs(across) < math.Abs(d) {
		best = sign*way.Dot(s.A) + math.Sqrt((d-across)*(d+across))
	}
	u := s.Tangent(0)
	right := s.A.Sub(u.Left().Mul(d))
	if sine := way.Cross(u); sine != 0 {
		at := right.Cross(u) / sine
		if along := way.Mul(at).Sub(right).Dot(u); along >= 0 && along <= s.Chord() {
			best = math.Max(best, sign*at)
		}
	}
	return best
}
