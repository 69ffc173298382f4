package fieldbook

// Line is an outline or another line through marks.
type Line struct {
	Name             string
	Closed           bool
	Edge             string // nose, back, track, tile, waterline, wall-foot, deck, other; "" not said
	State            string // found (default) or planned
	Runs             []Run
	Definition, Fuzz float64 // `definition` and `edge sharpness` for all its marks, metres
	Spacing          float64

	// Of a derived line, which has no runs of its own: the parallel of the line From at Outward
	// metres (negative inward; of an open line outward is the right of its direction).
	From    string
	Outward float64
	Profile bool    // Outward is not said: it is what the profiles read from the edge of From to its own say
	Sigma   float64 // sd of Outward, metres; 0 not said
	Mitre   bool    // corners stay sharp; else the parallel turns round them on an arc
}

// Run is a stretch of a line. Joint speaks of its first mark, where it leaves the run before.
type Run struct {
	Kind  string // straight, arc, curve, any, soft
	Marks []string
	Joint string  // "", tangent, kink
	Sigma float64 // soft: sd of the edge across the run, metres
	Slide float64 // sd of its two end marks along the edge, where they were set by eye, metres; 0 not said
}

// Corner is a corner that nobody could reach. Where a line names it, two straights meet: one
// through the marks Meet[0], one through the marks Meet[1].
type Corner struct {
	Name  string
	Meet  [2][2]string
	Round float64  // radius of its rounding, metres; 0 sharp, or as the corners Like
	Like  []string // corners whose rounding it shares
	Sigma float64  // sd of what the straights leave open, metres
}

// MarkNames lists the marks of a line in its order, each joint once; a closed line does not
// repeat its first mark. Unreached corners stand among them; a derived line has none.
func (l Line) MarkNames() []string {
	var out []string
	for _, r := range l.Runs {
		m := r.Marks
		if len(out) > 0 && len(m) > 0 && out[len(out)-1] == m[0] {
			m = m[1:]
		}
		out = append(out, m...)
	}
	if l.Closed && len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return out
}

// Line gives the line of that name.
func (b *Book) Line(name string) (Line, bool) {
	for _, l := range b.Lines {
		if l.Name == name {
			return l, true
		}
	}
	return Line{}, false
}

// Corner gives the unreached corner of that name.
func (b *Book) Corner(name string) (Corner, bool) {
	for _, c := range b.Corners {
		if c.Name == name {
			return c, true
		}
	}
	return Corner{}, false
}
