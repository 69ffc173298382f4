package plane

import "math"

// Nearest is the point q of the segment that is nearest to p, at share t of the length. From
// the centre of an arc, where all are as near, it is the middle.
func (s Segment) Nearest(p Point) (q Point, t float64) {
	c := s.Chord()
	if c == 0 {
		return s.A, 0
	}
	if s.Bulge == 0 {
		d := s.B.Sub(s.A)
		t = math.Max(0, math.Min(1, p.Sub(s.A).Dot(d)/d.Dot(d)))
		return s.At(t), t
	}
	q, along, ok := s.curve().foot(p)
	if !ok {
		return s.At(0.5), 0.5
	}
	if t, ok = s.share(q, along); ok {
		return q, t
	}
	if p.Dist(s.A) <= p.Dist(s.B) {
		return s.A, 0
	}
	return s.B, 1
}

// share is the share of the length at which the point q of the whole circle lies, along being
// the direction of travel there; ok says that it is on the segment.
func (s Segment) share(q, along Point) (t float64, ok bool) {
	sweep := s.Sweep()
	d := s.B.Sub(s.A)
	turn := Between(d, along)
	if math.Abs(sweep) > 1e-3 {
		t = 0.5 + turn/sweep
		return t, t >= 0 && t <= 1
	}
	if math.Abs(turn) > 1 {
		return 0, false
	}
	// So flat an arc is told by the chord from A, since the turn has no figures left.
	r := math.Copysign(q.Dist(s.A), q.Sub(s.A).Dot(d)) / d.Len()
	if sweep == 0 {
		return r, r >= 0 && r <= 1
	}
	t = math.Asin(math.Sin(sweep/2)*r) / (sweep / 2)
	return t, t >= 0 && t <= 1
}
