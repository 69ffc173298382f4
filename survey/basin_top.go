package survey

import (
	"math"

	"brimline/basin"
	"brimline/fieldbook"
	"brimline/plane"
)

// stretches are where the wall goes on upward behind the rim, and where it ends at a lip: along the rim
// from the foot of one end of their line to that of the other, on the side where the line runs. A line
// none of whose marks has a height, or that lies elsewhere, says nothing of this basin.
func (y *body) stretches() {
	for _, r := range y.g.book.Raised {
		from, to, ok := y.stretch(r.Foot)
		if !ok {
			from, to, ok = y.stretch(r.Top)
		}
		if top := y.lineLevels(r.Top); ok && len(top) > 0 {
			y.spec.Raised = append(y.spec.Raised, basin.Raised{Name: r.Name, From: from, To: to, Top: top})
		}
	}
	for _, s := range y.g.book.Spills {
		from, to, ok := y.stretch(s.Lip)
		if lip := y.lineLevels(s.Lip); ok && len(lip) > 0 {
			y.spec.Spills = append(y.spec.Spills, basin.Spill{Name: s.Name, From: from, To: to, Lip: lip})
		}
	}
}

// lineMarks are the marks of a line, or of that which it derives from.
func (y *body) lineMarks(name string) (fieldbook.Line, bool) {
	root, ok := y.g.book.Parent(name)
	return root.Root, ok
}

// lineLevels are the heights of the marks of a line, at their feet on the rim.
func (y *body) lineLevels(name string) []basin.Level {
	l, _ := y.lineMarks(name)
	var out []basin.Level
	for _, m := range l.MarkNames() {
		h, ok := y.up.named(m)
		if s, _, placed := y.station(m); ok && placed {
			out = append(out, basin.Level{S: s, Height: h, Name: m})
		}
	}
	return out
}

// stretch is the part of the rim beside a line; all of it for a closed line. False where the line has no
// place or its ends do not lie at the rim.
func (y *body) stretch(name string) (from, to float64, ok bool) {
	l, ok := y.lineMarks(name)
	marks := l.MarkNames()
	if !ok || len(marks) < 2 {
		return 0, 0, false
	}
	if l.Closed {
		return 0, y.path.Length() - touching, l.Name == y.line.Name
	}
	from, off, placed := y.station(marks[0])
	to, far, too := y.station(marks[len(marks)-1])
	if !placed || !too || math.Max(off, far) > beside {
		return 0, 0, false
	}
	if y.goesOver(from, to, l.Name, marks) {
		return from, to, true
	}
	return to, from, true
}

// goesOver says that a line runs beside the rim from one station onward to another, and not the other
// way round.
func (y *body) goesOver(from, to float64, line string, marks []string) bool {
	whole := y.path.Length()
	ahead := math.Mod(to-from+whole, whole)
	middle, ok := y.middle(line, marks)
	if !ok {
		return ahead <= whole/2
	}
	s := y.path.Foot(middle).Along
	return math.Mod(s-from+whole, whole) <= ahead
}

// middle is the place half way along a line.
func (y *body) middle(line string, marks []string) (plane.Point, bool) {
	for _, l := range y.g.lines {
		if l.Name == line && len(l.Path.Segs) > 0 {
			seg, share, ok := l.Path.Place(l.Path.Length() / 2)
			return y.g.place.Apply(l.Path.Segs[seg].At(share)), ok
		}
	}
	return y.at(marks[len(marks)/2])
}
