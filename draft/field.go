package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// field is the paper on which things are placed: what is there already, and what it costs to come
// in its way. The cost of a candidate decides; forbidden is never taken.
type field struct {
	area  plane.Box
	rooms []takenRoom
	lines []takenLine
}

// forbidden is the cost that no other can balance.
const forbidden = 1e6

type takenRoom struct {
	room
	box   plane.Box
	text  float64 // cost of a text on it
	line  float64 // cost of a line through it
	owner int     // 0: nobody's, stays for good
}

type takenLine struct {
	a, b  plane.Point
	box   plane.Box
	text  float64 // cost of a text on it
	line  float64 // cost of a line across it
	owner int
}

// candidate is one way to place a thing.
type candidate struct {
	rooms []room
	lines []line
	cost  float64 // its own, before what it meets
	draw  func() []sheet.Item
}

// line is a straight to place. Alone: it may not run along another, as a leader may not and the
// extension lines of two dimensions at one joint rightly do.
type line struct {
	a, b  plane.Point
	alone bool
}

// room takes a patch for good.
func (f *field) room(r room, text, line float64) {
	f.rooms = append(f.rooms, takenRoom{r, r.bounds(), text, line, 0})
}

// line takes a straight for good.
func (f *field) line(a, b plane.Point, text, cross float64) {
	f.lines = append(f.lines, takenLine{a, b, plane.BoundsOf(a, b), text, cross, 0})
}

// path takes a path for good, arcs by chords within a twentieth of a millimetre.
func (f *field) path(p plane.Path, text, cross float64) {
	pts := p.Flatten(0.05)
	for i := 1; i < len(pts); i++ {
		f.line(pts[i-1], pts[i], text, cross)
	}
	if p.Closed && len(pts) > 1 && pts[0] != pts[len(pts)-1] {
		f.line(pts[len(pts)-1], pts[0], text, cross)
	}
}

// price is what a candidate costs for the owner, whose own earlier things do not count. It stops
// counting above most.
func (f *field) price(c candidate, owner int, most float64) float64 {
	cost := c.cost
	for _, r := range c.rooms {
		if !r.inside(f.area) {
			return forbidden
		}
		if cost += f.roomPrice(r, owner, most-cost); cost > most {
			return cost
		}
	}
	for _, l := range c.lines {
		if !holds(f.area, l.a) || !holds(f.area, l.b) {
			return forbidden
		}
		if cost += f.linePrice(l, owner, most-cost); cost > most {
			return cost
		}
	}
	return cost
}

func (f *field) roomPrice(r room, owner int, most float64) float64 {
	cost := 0.0
	box := r.bounds()
	for i := range f.rooms {
		t := &f.rooms[i]
		if (t.owner == 0 || t.owner != owner) && t.text > 0 && box.Meets(t.box, 0) && r.meets(t.room) {
			cost += t.text
		}
		if cost > most {
			return cost
		}
	}
	for i := range f.lines {
		t := &f.lines[i]
		if (t.owner == 0 || t.owner != owner) && t.text > 0 && box.Meets(t.box, 0) && r.cutBy(t.a, t.b) {
			cost += t.text
		}
		if cost > most {
			return cost
		}
	}
	return cost
}

func (f *field) linePrice(l line, owner int, most float64) float64 {
	cost := 0.0
	box := grow(plane.BoundsOf(l.a, l.b), closeBy)
	for i := range f.rooms {
		t := &f.rooms[i]
		if (t.owner == 0 || t.owner != owner) && t.line > 0 && box.Meets(t.box, 0) && t.cutBy(l.a, l.b) {
			cost += t.line
		}
		if cost > most {
			return cost
		}
	}
	for i := range f.lines {
		t := &f.lines[i]
		if (t.owner == 0 || t.owner != owner) && t.line > 0 && box.Meets(t.box, 0) && (crossing(l.a, l.b, t.a, t.b) || l.alone && beside(l, t.a, t.b)) {
			cost += t.line
		}
	}
	return cost
}

// best is the cheapest candidate below most, the first among equals; false when there is none.
func (f *field) best(list []candidate, owner int, most float64) (candidate, bool) {
	least, at := most, -1
	for i, c := range list {
		if p := f.price(c, owner, least); p < least {
			least, at = p, i
		}
	}
	if at < 0 {
		return candidate{}, false
	}
	return list[at], true
}

// keep enters a placed candidate: its texts forbid texts and lines, its lines forbid texts.
func (f *field) keep(c candidate, owner int, cross float64) {
	for _, r := range c.rooms {
		f.rooms = append(f.rooms, takenRoom{r, r.bounds(), forbidden, forbidden, owner})
	}
	for _, l := range c.lines {
		f.lines = append(f.lines, takenLine{l.a, l.b, plane.BoundsOf(l.a, l.b), forbidden, cross, owner})
	}
}

// release takes an owner's things off the paper.
func (f *field) release(owner int) {
	rooms := f.rooms[:0]
	for _, r := range f.rooms {
		if r.owner != owner {
			rooms = append(rooms, r)
		}
	}
	lines := f.lines[:0]
	for _, l := range f.lines {
		if l.owner != owner {
			lines = append(lines, l)
		}
	}
	f.rooms, f.lines = rooms, lines
}
