package survey

import (
	"math"

	"brimline/fieldbook"
	"brimline/finding"
	"brimline/outline"
	"brimline/plane"
)

// derived is the parallel of a line in the inner datum.
type derived struct {
	book fieldbook.Line
	line *Line         // as it will be printed, without its vertices
	path plane.Path    // nothing where it waits or nothing is left
	runs []outline.Run // of the parent's pieces that it runs beside; First and Pieces are its own
	// Of the line that it comes from, and of itself.
	lengthSD, areaSD float64
}

// derive makes the parallels, parents first.
func (g *gather) derive() {
	g.derived = map[string]*derived{}
	for _, l := range g.book.Lines {
		if l.From != "" {
			g.parallel(l, len(g.book.Lines))
		}
	}
}

// parent gives the path, runs and sds of the line of a name; false where it waits or is missing.
func (g *gather) parent(name string, deep int) (path plane.Path, runs []outline.Run, lengthSD, areaSD float64, ok bool) {
	for _, l := range g.lines {
		if l.Name == name {
			return l.Path, l.Runs, l.LengthSD, l.AreaSD, len(l.Waits) == 0 && len(l.Path.Segs) > 0 && g.solved()
		}
	}
	l, found := g.book.Line(name)
	if !found || deep == 0 {
		return path, nil, 0, 0, false
	}
	d := g.parallel(l, deep-1)
	return d.path, d.runs, d.lengthSD, d.areaSD, len(d.path.Segs) > 0
}

// parallel makes one derived line, once.
func (g *gather) parallel(l fieldbook.Line, deep int) *derived {
	if d, ok := g.derived[l.Name]; ok {
		return d
	}
	d := &derived{book: l, line: emptyLine()}
	d.line.Edge, d.line.From = l.Edge, l.From
	if out := l.Outward; out < 0 {
		out = -out
		d.line.Inward = &out
	} else {
		d.line.Outward = &out
	}
	if root, ok := g.book.Parent(l.Name); ok {
		d.line.Closed = root.Root.Closed
	} else {
		g.found = append(g.found, finding.Finding{Code: "no-parent", Lines: []string{l.Name}, Words: map[string]string{"parent": l.From}})
		g.derived[l.Name] = d
		return d
	}
	path, runs, lengthSD, areaSD, ok := g.parent(l.From, deep)
	g.derived[l.Name] = d
	if ok {
		g.offset(d, path, runs, lengthSD, areaSD)
	}
	return d
}

// offset fills a derived line from the path it runs beside.
func (g *gather) offset(d *derived, path plane.Path, runs []outline.Run, lengthSD, areaSD float64) {
	l := d.book
	corners := plane.RoundCorners
	if l.Mitre {
		corners = plane.MitredCorners
	}
	p, err := path.Offset(l.Outward, corners)
	words := map[string]string{"parent": l.From}
	away := map[string]float64{"away": math.Abs(l.Outward)}
	if err != nil || len(p.Paths) == 0 {
		g.found = append(g.found, finding.Finding{Code: "no-parallel", Lines: []string{l.Name}, Words: words, Figures: away})
		return
	}
	if gone := vanished(p.Gone, runs); len(gone) > 0 {
		g.found = append(g.found, finding.Finding{Code: "piece-gone", Lines: []string{l.Name}, Marks: gone, Words: words, Figures: away})
	}
	if len(p.Paths) > 1 {
		g.found = append(g.found, finding.Finding{Code: "parallel-parts", Lines: []string{l.Name}, Words: words,
			Figures: map[string]float64{"parts": float64(len(p.Paths)), "away": away["away"]}})
	}
	var of []int
	d.path, of = drawnOn(p.Paths[0], p.Of[0])
	sigma := l.Spread()
	d.runs = runsBeside(d.path, of, runs, sigma)
	length, turn := d.path.Length(), turning(d.path)
	d.lengthSD = math.Hypot(lengthSD, turn*sigma)
	d.line.Length = some(length)
	if d.path.Closed {
		// A + d·L: area and length of an outline grow and shrink together.
		d.areaSD = math.Hypot(areaSD+math.Abs(l.Outward)*lengthSD, length*sigma)
		d.line.Area = some(math.Abs(d.path.Area()))
	}
}

// turning is by how much a path turns in all, a ring once round: how much longer its parallel grows
// for each metre outward (J. Steiner, Über parallele Flächen, 1840).
func turning(p plane.Path) float64 {
	if p.Closed {
		return 2 * math.Pi
	}
	sum := 0.0
	for i, s := range p.Segs {
		sum += s.Sweep()
		if i > 0 {
			sum += plane.Between(p.Segs[i-1].Tangent(1), s.Tangent(0))
		}
	}
	return math.Abs(sum)
}
