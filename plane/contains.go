package plane

// Contains says that pt lies inside a closed path: that the path winds round it. Of points on
// the boundary itself each counts as in or out, consistently for straights. An open path
// contains nothing.
func (p Path) Contains(pt Point) bool { return p.Winding(pt) != 0 }

// Winding is how often a closed path runs counter-clockwise round pt; 0 for an open path. The
// ring of chords is counted by its crossings of the ray to the right, then each arc adds its
// turn where pt lies between chord and arc.
func (p Path) Winding(pt Point) int {
	if !p.Closed {
		return 0
	}
	n := 0
	for _, s := range p.Segs {
		n += s.turnAbout(pt)
	}
	return n
}

// turnAbout is what the segment adds to the winding round pt: nothing unless it reaches the level
// ray to the right.
func (s Segment) turnAbout(pt Point) int {
	left := leftOf(s.A, s.B, pt)
	n := s.capTurn(pt, left)
	switch {
	case s.A.Y <= pt.Y && pt.Y < s.B.Y && left:
		n++
	case s.B.Y <= pt.Y && pt.Y < s.A.Y && !left:
		n--
	}
	return n
}

// leftOf says that pt lies left of a→b. On the line itself it answers as for a point just
// right of pt, and on a level line as for one just above, as the crossing count does.
func leftOf(a, b, pt Point) bool {
	d := b.Sub(a)
	switch side := d.Cross(pt.Sub(a)); {
	case side != 0:
		return side > 0
	case d.Y != 0:
		return d.Y < 0
	}
	return d.X > 0
}

// capTurn is ±1 when pt lies between the chord and the arc, by the arc's turn. The arc lies
// right of the chord when it turns left, whatever its sweep.
func (s Segment) capTurn(pt Point, left bool) int {
	if s.Bulge == 0 || s.A == s.B || left == (s.Bulge > 0) {
		return 0
	}
	f := s.curve().value(pt)
	switch {
	case s.Bulge > 0 && f < 0:
		return 1
	case s.Bulge < 0 && f > 0:
		return -1
	}
	return 0
}
