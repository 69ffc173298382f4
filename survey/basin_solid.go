package survey

import (
	"cmp"
	"slices"

	"brimline/basin"
	"brimline/fieldbook"
	"brimline/finding"
	"brimline/outline"
	"brimline/plane"
)

// front is the edge of a tread or a ledge as fitted, in the book's frame, with the height of its top.
type front struct {
	edge plane.Path
	z    basin.Height
	away float64 // from the opening
}

// steps gives the flights. Inside the pool a tread reaches from its front edge to the opening, or to the
// wall where no opening is said; the higher one counts where two overlap. In a bay it reaches from its edge
// towards the opening as far as the edge before it.
func (y *body) steps() {
	for _, s := range y.g.book.Steps {
		bay := s.Where == "bay"
		var list []front
		for _, t := range s.Treads {
			if f, ok := y.front("steps "+s.Name, t.Runs, t.Down); ok {
				list = append(list, f)
			}
		}
		shut := y.opening(s.Opening)
		out := basin.Step{Name: s.Name, Bay: bay}
		if bay && len(shut) == 2 {
			middle := plane.Lerp(shut[0], shut[1], 0.5)
			for k := range list {
				_, _, q := list[k].edge.Nearest(middle)
				list[k].away = q.Dist(middle)
			}
			slices.SortStableFunc(list, func(a, b front) int { return cmp.Compare(a.away, b.away) })
		}
		for _, f := range list {
			ring := y.shut(f.edge, shut)
			if bay && !f.edge.Closed {
				shut = []plane.Point{f.edge.Segs[0].A, f.edge.Segs[len(f.edge.Segs)-1].B}
			}
			out.Treads = append(out.Treads, basin.Tread{Ring: ring, Height: f.z})
		}
		if len(out.Treads) > 0 {
			y.spec.Steps = append(y.spec.Steps, out)
		}
	}
}

// opening are the places of its two marks; nothing where they are not known.
func (y *body) opening(marks [2]string) []plane.Point {
	p, ok := y.at(marks[0])
	q, too := y.at(marks[1])
	if !ok || !too || p == q {
		return nil
	}
	return []plane.Point{p, q}
}

func (y *body) ledges() {
	for _, l := range y.g.book.Ledges {
		if f, ok := y.front("ledge "+l.Name, l.Runs, l.Down); ok {
			y.spec.Ledges = append(y.spec.Ledges, basin.Ledge{Name: l.Name, Kind: l.Kind, Ring: y.shut(f.edge, nil), Height: f.z})
		}
	}
}

// front fits the edge of a top and finds its height; false where either is open.
func (y *body) front(name string, runs []fieldbook.Run, down fieldbook.Down) (front, bool) {
	marks := fieldbook.MarksOf(runs)
	for _, m := range marks {
		if _, ok := y.at(m); !ok {
			return front{}, false // said when the book was read
		}
	}
	last := runs[len(runs)-1].Marks
	line := fieldbook.Line{Name: name, Runs: runs, Closed: len(marks) > 2 && last[len(last)-1] == runs[0].Marks[0]}
	fitted, found := outline.Fit(y.g.sol, y.g.spec(line), y.g.net.Edge)
	for _, f := range found {
		if f.Code != "clockwise" {
			y.g.found = append(y.g.found, f)
		}
	}
	z, ok := y.down(down, marks, fitted.Path)
	if !ok {
		y.g.found = append(y.g.found, finding.Finding{Code: "top-open", Words: map[string]string{"name": name}, Marks: marks})
	}
	return front{edge: fitted.Path.Move(y.g.place), z: z}, ok && len(fitted.Path.Segs) > 0
}

// down is the height of a top: so far below what it says, else in the mean of its marks.
func (y *body) down(d fieldbook.Down, marks []string, edge plane.Path) (basin.Height, bool) {
	if d.Below == "" {
		return y.meanHeight(marks)
	}
	var from basin.Height
	ok := false
	switch y.g.book.BelowIs(d.Below) {
	case "water":
		from, ok = y.up.other("water", d.Below)
	case "line":
		root, _ := y.g.book.Parent(d.Below)
		if root.Root.Name == y.line.Name && len(edge.Segs) > 0 {
			middle := edge.Segs[len(edge.Segs)/2]
			from, ok = y.rimHeight(y.path.Foot(y.g.place.Apply(middle.At(0.5))).Along)
		} else {
			from, ok = y.meanHeight(root.Root.MarkNames())
		}
	default:
		from, ok = y.up.named(d.Below)
	}
	if !ok {
		return from, false
	}
	sd := y.g.book.Rules.Sigma["depth"]
	if sd == 0 {
		sd = fieldbook.DefaultSigma("depth", "is", "", d.Depth, 0)
	}
	return y.up.under(from, d.Depth, sd), true
}

// meanHeight is the mean of those of the marks that have a height.
func (y *body) meanHeight(marks []string) (basin.Height, bool) {
	var list []basin.Height
	for _, m := range marks {
		if h, ok := y.up.named(m); ok {
			list = append(list, h)
		}
	}
	if len(list) == 0 {
		return basin.Height{}, false
	}
	weights := make([]float64, len(list))
	for k := range weights {
		weights[k] = 1 / float64(len(list))
	}
	return y.up.mix(list, weights), true
}

// shut closes an open edge: over the straight of an opening, else along the rim the shorter way.
func (y *body) shut(edge plane.Path, opening []plane.Point) plane.Path {
	if edge.Closed {
		return edge
	}
	start, end := edge.Segs[0].A, edge.Segs[len(edge.Segs)-1].B
	back := slices.Clone(opening)
	if len(back) == 0 {
		back = y.alongRim(end, start)
	} else if end.Dist(back[0]) > end.Dist(back[1]) {
		slices.Reverse(back)
	}
	ring := plane.Path{Closed: true, Segs: slices.Clone(edge.Segs)}
	at := end
	for _, p := range append(back, start) {
		if p.Dist(at) > touching {
			ring.Segs = append(ring.Segs, plane.Segment{A: at, B: p})
			at = p
		}
	}
	ring.Segs[len(ring.Segs)-1].B = start
	return ring
}

// rimStep is the length of the straights by which an arc of the rim is followed, metres.
const rimStep = 0.1

// alongRim are places of the rim from the foot of one place to that of another, the shorter way.
func (y *body) alongRim(from, to plane.Point) []plane.Point {
	a, b := y.path.Foot(from), y.path.Foot(to)
	path := y.path
	if ahead, round := path.Between(from, to); ahead > round/2 {
		path = path.Reverse()
	}
	ahead, _ := path.Between(from, to)
	start := path.Foot(from).Along
	out := []plane.Point{a.At}
	place := func(s float64) plane.Point {
		seg, share, _ := path.Place(start + s)
		return path.Segs[seg].At(share)
	}
	var stops []float64
	sum, whole := 0.0, path.Length()
	for _, s := range path.Segs {
		n := 1
		if s.Bulge != 0 {
			n = 1 + int(s.Length()/rimStep)
		}
		for k := range n {
			d := sum + s.Length()*float64(k)/float64(n) - start
			if d < 0 {
				d += whole
			}
			if d > touching && d < ahead-touching {
				stops = append(stops, d)
			}
		}
		sum += s.Length()
	}
	slices.Sort(stops)
	for _, d := range stops {
		out = append(out, place(d))
	}
	return append(out, b.At)
}
