package draft

import (
	"math"
	"slices"

	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
	"brimline/unit"
)

// dimensions writes the length of every run outside the outline. The printed members of a closed
// outline add up to its printed length.
func (c *canvas) dimensions() {
	for _, o := range c.paper {
		if o.derived {
			continue
		}
		texts := c.chain(o.line)
		for i, r := range o.runs {
			if len(r.segs) > 0 && c.seesAll(r) {
				c.dimension(o, r, texts[i])
			}
		}
	}
}

// chain prints the lengths of a line's runs so that the printed members add up to the printed
// total: unit.Chain rounds all of them down and gives the steps still lacking to those that lost
// most, the method of the largest remainder.
func (j *job) chain(l *survey.Line) []string {
	var parts []float64
	for _, r := range l.Runs {
		parts = append(parts, r.Length)
	}
	texts, _ := unit.Chain(parts, j.fig.style)
	for i := range texts {
		texts[i] = sheet.Typeset(texts[i])
	}
	return texts
}

// shortest run and shortest arc on paper, in millimetres, whose length gets a dimension line.
const (
	shortest    = 9.0
	shortestArc = 18.0
)

func (c *canvas) dimension(o outline, r run, text string) {
	length := plane.Path{Segs: r.segs}.Length()
	arc, isArc := r.arc()
	switch {
	case r.Kind == "straight" && length >= shortest:
		if c.putUnder(c.dimensionWays(o, r, plane.Segment{A: r.segs[0].A, B: r.segs[len(r.segs)-1].B}, text), crossDim, mostDim) {
			return
		}
	case r.Kind == "arc" && length < shortestArc:
		return // its length stands with its radius
	case r.Kind == "arc":
		if isArc && c.putUnder(c.dimensionWays(o, r, arc, text), crossDim, mostDim) {
			return
		}
		if c.withRadius(r, "arc "+text) {
			return
		}
		text = "arc " + text
	case r.Kind == "curve" && len(o.runs) == 1:
		return // its length is that of the outline, which stands inside
	case r.Kind == "curve", r.Kind == "soft":
		text = r.Kind + " " + text
	}
	c.later = append(c.later, pendingNote{o, r, []string{text}, 1})
}

// tabled enters a run whose length stands in the table only.
func (c *canvas) tabled(r run) { c.unplaced = append(c.unplaced, r.From+"–"+r.To) }

// lost enters a run whose figure found no room: a detail shall have it.
func (c *canvas) lost(r run) {
	c.tabled(r)
	at, _ := r.middle()
	length := plane.Path{Segs: r.segs}.Length() / c.view.Scale.PerMetre()
	c.cramped = append(c.cramped, place{p: c.view.Back(at), run: min(length, longestLost)})
}

// longestLost is the length in metres up to which a run is shown whole for its figure alone.
const longestLost = 1.5

// dimensionWays are dimension lines at growing distances outside the outline, the figure at
// several places along each; then inside it, close to the edge, where the outside has no room.
func (c *canvas) dimensionWays(o outline, r run, s plane.Segment, text string) []candidate {
	side := -1.0 // outside is to the right of a counter-clockwise ring
	if o.ring < 0 {
		side = 1
	}
	mid, dir := r.middle()
	in := dir.Left().Mul(-side)
	list := dimensionsAt(s, text, side, c.numberBand(o, r), []float64{0, 3, 6, 10, 14, 19, 25}, 0)
	if o.ring != 0 {
		list = append(list, dimensionsAt(s, text, -side, 6+figureRoom(in), []float64{0, 3, 6, 10}, insideCost)...)
	}
	return c.besideAxis(mid, list)
}

// skip is the paper between a measured point and its extension line: past the corner of its symbol's
// room, in millimetres.
const skip = 1.45 * (openR + 0.4)

// insideCost is what a dimension line inside the pool costs, where words have their place.
const insideCost = 40.0

// dimensionsAt are dimension lines on one side, at a base distance and more.
func dimensionsAt(s plane.Segment, text string, side, base float64, extras []float64, cost float64) []candidate {
	kind := sheet.DimStraight
	if s.Bulge != 0 {
		kind = sheet.DimArc
	}
	var list []candidate
	for i, extra := range extras {
		offset := side * (base + extra)
		if kind == sheet.DimArc {
			offset = arcOffset(s, offset)
			if math.Abs(s.Radius())+offset < 6 {
				continue
			}
		}
		for k, share := range []float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74} {
			d := sheet.Dimension{Kind: kind, A: s.A, B: s.B, Bulge: s.Bulge, Offset: offset, Skip: skip, Text: text, Height: dimHeight, Share: share}
			list = append(list, dimensionCandidate(d, cost+2.5*float64(i)+0.7*float64(k)))
		}
	}
	return list
}

// axisRoom is the paper beside the baseline in millimetres that only its own figure may use.
const axisRoom = 4.0

// besideAxis leaves out what would cross the baseline or, of a place on one side of it, stand on the
// other: a figure there would seem to belong to the baseline.
func (c *canvas) besideAxis(of plane.Point, list []candidate) []candidate {
	a, b, ok := c.axis()
	if !ok {
		return list
	}
	off := b.Sub(a).Unit().Left().Mul(axisRoom)
	near := func(r room) bool {
		return r.cutBy(a, b) || r.cutBy(a.Add(off), b.Add(off)) || r.cutBy(a.Sub(off), b.Sub(off))
	}
	return slices.DeleteFunc(list, func(d candidate) bool {
		return beyondAxis(a, b, of, middleOf(d.rooms[0].bounds())) ||
			slices.ContainsFunc(d.lines, func(l line) bool { return crossing(l.a, l.b, a, b) }) ||
			slices.ContainsFunc(d.rooms, near)
	})
}

// beyondAxis says that p lies over the straight from a to b as seen from q: on its other side, beside
// it and not past its ends.
func beyondAxis(a, b, q, p plane.Point) bool {
	u := b.Sub(a)
	share := p.Sub(a).Dot(u) / u.Dot(u)
	return u.Cross(q.Sub(a))*u.Cross(p.Sub(a)) < 0 && share > 0 && share < 1
}

// arcOffset turns a distance to the left of an arc into one added to its radius: the centre lies
// to the left of an arc that turns left.
func arcOffset(s plane.Segment, left float64) float64 { return -left * math.Copysign(1, s.Bulge) }

// numberBand is the paper that the numbers of a run's marks need between edge and dimension line:
// as many rows as their width asks of the room between two marks.
func (c *canvas) numberBand(o outline, r run) float64 {
	_, dir := r.middle()
	out := dir.Left().Mul(-1)
	if o.ring < 0 {
		out = out.Mul(-1)
	}
	n, widest := 0, 0.0
	path := plane.Path{Segs: r.segs}
	for _, m := range c.marks {
		p, ok := c.at(m)
		if ok && c.numbered(m) && path.Distance(p) < 2 {
			n++
			widest = max(widest, sheet.Width(m, smallHeight, false))
		}
	}
	if n == 0 {
		return 6 + figureRoom(out)
	}
	deep := abs(out.X)*widest + abs(out.Y)*smallHeight
	across := abs(out.Y)*widest + abs(out.X)*smallHeight + 1.2
	rows := 1.0
	if n > 1 {
		rows = math.Ceil(across * float64(n-1) / path.Length())
	}
	return math.Min(30, nearNumber+rows*(deep+1.2)+2) + figureRoom(out)
}

// figureRoom is the room between numbers and dimension line that the figure takes where it stands
// on the side of the edge: above a line that lies under the pool, left of one that lies right of it.
func figureRoom(out plane.Point) float64 {
	turn := sheet.Upright(plane.Angle(out.Left()))
	if (plane.Point{X: 1}).Turn(turn).Left().Dot(out) < 0 {
		return dimHeight + 1
	}
	return 0
}
