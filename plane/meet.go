package plane

import "math"

// MeetCircles gives the points at distance ra from a and rb from b, left and right of the
// direction a→b. gap is 0 when the circles meet; else it is the distance by which they miss
// each other, positive when they lie apart and negative when one lies inside the other, and
// both points are the place on the line ab midway between the two circles where they come
// nearest. Without a direction (a = b) that of +x is taken. Radii must not be negative.
// The height over ab is that of the triangle with sides ra, rb, |ab|, by Heron's formula in
// factors, which keeps its figures when the triangle is flat.
func MeetCircles(a Point, ra float64, b Point, rb float64) (left, right Point, gap float64) {
	d := a.Dist(b)
	u := b.Sub(a).Unit()
	if d == 0 {
		u = Point{X: 1}
	}
	onLine := func(x, gap float64) (Point, Point, float64) {
		p := a.Add(u.Mul(x))
		return p, p, gap
	}
	switch {
	case d > ra+rb:
		return onLine((ra+d-rb)/2, d-(ra+rb))
	case d < ra-rb:
		return onLine((ra+d+rb)/2, d-(ra-rb))
	case d < rb-ra:
		return onLine((d-ra-rb)/2, d-(rb-ra))
	case d == 0: // the same circle twice
		return a.Add(Point{0, ra}), a.Sub(Point{0, ra}), 0
	}
	x := ((ra-rb)*(ra+rb)/d + d) / 2
	y := math.Sqrt(math.Max(0, (ra+rb+d)*(ra+rb-d)*(d+ra-rb)*(d-ra+rb))) / (2 * d)
	foot, up := a.Add(u.Mul(x)), u.Left().Mul(y)
	return foot.Add(up), foot.Sub(up), 0
}

// MeetLines is the point common to the endless lines ab and cd; ok is false when they are
// parallel (to rounding) or one has no direction.
func MeetLines(a, b, c, d Point) (Point, bool) {
	u, v := b.Sub(a), d.Sub(c)
	cross := u.Cross(v)
	if math.Abs(cross) <= 1e-14*u.Len()*v.Len() {
		return Point{}, false
	}
	return a.Add(u.Mul(c.Sub(a).Cross(v) / cross)), true
}

// MeetLineCircle gives the points where the endless line ab meets the circle, first and last
// in the direction a→b. gap is 0 when they meet, else the distance by which the line passes
// the circle, and both points are midway between them. Without a direction (a = b) that of +x
// is taken.
func MeetLineCircle(a, b Point, c Circle) (first, last Point, gap float64) {
	u := b.Sub(a).Unit()
	if a == b {
		u = Point{X: 1}
	}
	foot := a.Add(u.Mul(c.Centre.Sub(a).Dot(u)))
	h := u.Cross(c.Centre.Sub(a)) // the centre lies h left of the line
	if gap = math.Abs(h) - c.R; gap > 0 {
		p := foot.Add(u.Left().Mul(math.Copysign(gap/2, h)))
		return p, p, gap
	}
	s := u.Mul(math.Sqrt((c.R - h) * (c.R + h)))
	return foot.Sub(s), foot.Add(s), 0
}
