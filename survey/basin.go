package survey

import (
	"brimline/basin"
	"brimline/fieldbook"
	"brimline/finding"
	"brimline/outline"
	"brimline/plane"
)

// body puts a basin together from a solved book, in the book's frame.
//
// Its rim is the line at which the walls begin: of the closed lines of the book that are found, have runs
// of their own and whose edge is the nose, the track, the tiles, the waterline or not said, the first.
// Where a track, tile or waterline runs beside it as a derived line, that one.
type body struct {
	g     *gather
	up    *ups
	line  *outline.Line // with runs of its own
	edge  string        // of that line
	base  plane.Path    // its path
	path  plane.Path    // the rim: base, or the line derived from it
	back  float64       // distance of the rim outward of base, metres
	loose float64       // its standard deviation
	spec  basin.Spec
	point map[string]int // of breaks: floor points, then feet of walls
}

// begins are the edges at which a wall may begin.
var begins = []string{"track", "tile", "waterline"}

// basin fills the basin and the water in it; both stay empty where no depth is read.
func (g *gather) basin(r *Result) {
	said := len(g.book.Floor.MarkNames()) > 0
	if !g.solved() || !said && !g.depthsRead() {
		return
	}
	if r.Levels == nil {
		g.found = append(g.found, finding.Finding{Code: "floor-unread"})
		return
	}
	y, ok := g.body()
	if !ok {
		return
	}
	y.fill()
	b, found, err := basin.New(y.spec)
	g.found = append(g.found, found...)
	if err != nil {
		g.found = append(g.found, finding.Finding{Code: "basin-odd", Lines: []string{y.line.Name}, Words: map[string]string{"why": err.Error()}})
		return
	}
	if b == nil {
		return
	}
	r.Basin = b
	g.water(r, y)
}

// depthsRead says that some reading in force is of the floor or of the foot of a wall.
func (g *gather) depthsRead() bool {
	for i := range g.book.Readings {
		if t := &g.book.Readings[i]; (t.Kind == "depth" || t.Kind == "wall") && counts(t) {
			return true
		}
	}
	return false
}

// counts says that a reading is in force: not struck, no check, nobody's word and from no drawing.
func counts(t *fieldbook.Taken) bool {
	return !t.Struck && !t.Check && t.Class != "owner" && t.Class != "drawing"
}

// body finds the rim; false where there is none yet, which is a finding.
func (g *gather) body() (*body, bool) {
	y := &body{g: g, up: newUps(g), point: map[string]int{}}
	for _, l := range g.book.Lines {
		if !l.Closed || l.From != "" || planned(l.State) || !rimEdge(l.Edge) {
			continue
		}
		for _, fitted := range g.lines {
			if fitted.Name != l.Name {
				continue
			}
			if len(fitted.Waits) > 0 || len(fitted.Path.Segs) == 0 {
				return nil, false
			}
			y.line, y.edge, y.base = fitted, l.Edge, fitted.Path.Move(g.place)
		}
		break
	}
	if y.line == nil {
		g.found = append(g.found, finding.Finding{Code: "rimless"})
		return nil, false
	}
	y.path = y.base
	for _, l := range g.book.Lines {
		d := g.derived[l.Name]
		if l.From == y.line.Name && among(begins, l.Edge) && !planned(l.State) && d != nil && d.path.Closed && len(d.path.Segs) > 0 {
			y.path, y.back, y.loose = d.path.Move(g.place), l.Outward, l.Spread()
			break
		}
	}
	return y, true
}

func rimEdge(edge string) bool { return edge == "" || edge == "nose" || among(begins, edge) }

func among(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// fill fills the spec.
func (y *body) fill() {
	y.spec.Rim = y.path
	y.levels()
	y.soundings()
	faces := y.faces()
	y.feet(faces)
	y.profiles(faces)
	y.creases()
	y.coves()
	y.steps()
	y.ledges()
	y.stretches()
	y.surfaces()
	y.spec.Shallow, y.spec.Deep = y.placeOf(y.g.book.Place.Shallow), y.placeOf(y.g.book.Place.Deep)
	y.spec.Cov = y.up.cov()
	y.spec.Outline = y.outlined()
}

// at is the place of a mark in the book's frame; false where nothing holds it.
func (y *body) at(mark string) (plane.Point, bool) {
	i, ok := y.g.net.ByName[mark]
	if !ok {
		return plane.Point{}, false
	}
	p := y.g.place.Apply(y.g.sol.X.Point(i))
	return p, p.Finite()
}

func (y *body) placeOf(mark string) *plane.Point {
	if p, ok := y.at(mark); ok {
		return &p
	}
	return nil
}

// station is the length along the rim to the foot of a mark, and how far that lies off the rim.
func (y *body) station(mark string) (s, off float64, ok bool) {
	p, ok := y.at(mark)
	if !ok {
		return 0, 0, false
	}
	f := y.path.Foot(p)
	return f.Along, p.Dist(f.At), true
}

// levels are the heights of the marks of the rim; where none has one, that of the line taken as level.
func (y *body) levels() {
	for i, m := range y.line.Names {
		h, ok := y.up.mark(y.line.Marks[i])
		if s, _, placed := y.station(m); ok && placed {
			y.spec.Levels = append(y.spec.Levels, basin.Level{S: s, Height: h, Name: m})
		}
	}
	if len(y.spec.Levels) > 0 {
		return
	}
	for _, l := range y.g.book.Lines {
		if root, ok := y.g.book.Parent(l.Name); l.Name == y.line.Name || ok && root.Root.Name == y.line.Name {
			if h, ok := y.up.other("rim", l.Name); ok {
				y.spec.Levels = append(y.spec.Levels, basin.Level{Height: h, Name: l.Name})
				return
			}
		}
	}
}

// surfaces are the water surfaces whose height is held, in book order.
func (y *body) surfaces() {
	for _, name := range y.g.book.Surfaces() {
		if h, ok := y.up.other("water", name); ok {
			y.spec.Waters = append(y.spec.Waters, basin.Surface{Name: name, Height: h})
		}
	}
}
