package network

import (
	"math"
	"slices"

	"brimline/fieldbook"
	"brimline/finding"
)

// tracked gives a reading along or to a line its view of that line. soft is what unreached corners
// on the way, and an edge that is not sharp, add to its standard deviation; false where the line is
// missing or something of it that the reading needs is not read, which is a finding.
func (g *builder) tracked(o *Obs, r *fieldbook.Taken) (soft float64, ok bool) {
	if r.Line == "" {
		return 0, r.Until == ""
	}
	from, found := g.book.Parent(r.Line)
	if !found {
		g.waits(r, ", which is not in the book", nil)
		return 0, false
	}
	o.Track = &Track{Marks: slices.Clone(o.Marks), Outward: from.Outward, Mitre: from.Mitre}
	start, end := -1, -1
	if r.Kind == "along" {
		start, end = o.Marks[0], o.Marks[1]
	}
	for i := range g.n.Lines {
		l := &g.n.Lines[i]
		if l.Name != from.Root.Name {
			continue
		}
		soft, ok = g.track(o, l, start, end)
		if r.Kind == "clear" {
			soft = math.Hypot(l.Fuzz, from.Spread)
		} else {
			soft = math.Hypot(soft, from.Spread*l.turn(start, end))
		}
	}
	if !ok {
		g.waits(r, ", which has not all its marks", from.Root.MarkNames())
	}
	return soft, ok
}

// turn is about by how much a line turns over a stretch, radians, for saying how far the distance of
// a parallel bears on its length: a ring once round, shared evenly over its marks, an open line half
// of that. Common practice, no source.
func (l *Line) turn(from, to int) float64 {
	var marks []int
	for _, r := range l.Runs {
		marks = append(marks, r.Marks[1:]...)
	}
	a, b, n := slices.Index(marks, from), slices.Index(marks, to), len(marks)
	switch {
	case !l.Closed:
		return math.Pi
	case from < 0:
		return 2 * math.Pi
	case a < 0 || b < 0:
		return math.Pi
	}
	return 2 * math.Pi * float64((b-a+n)%n) / float64(n)
}

// waits says for which marks a reading waits, or else why.
func (g *builder) waits(r *fieldbook.Taken, why string, marks []string) {
	if r.Struck {
		return
	}
	f := finding.Finding{Code: "line-first", Readings: []string{r.N}, Lines: []string{r.Line}}
	for _, m := range marks {
		if _, read := g.n.ByName[m]; !read {
			f.Marks = append(f.Marks, m)
		}
	}
	if len(f.Marks) > 0 {
		why = ": unread are " + finding.List(f.Marks)
	}
	f.Words = map[string]string{"why": why}
	g.found = append(g.found, f)
}

// Beyond says that the foot of a clear reading lies past the end of an open line, where the shortest
// way is not square to it.
func Beyond(o *Obs, x State) bool {
	if _, ok := o.Kind.(Clear); !ok || o.Track.Whole {
		return false
	}
	path, _ := newTrace(o, x).drawn()
	f := path.Foot(x.Point(o.Marks[0]))
	n := len(path.Segs)
	if n == 0 || !(f.Seg == 0 && f.Share == 0 || f.Seg == n-1 && f.Share == 1) {
		return false
	}
	way := path.Segs[f.Seg].Tangent(f.Share)
	d := x.Point(o.Marks[0]).Sub(f.At)
	return math.Abs(way.Dot(d)) > 1e-6*d.Len()
}
