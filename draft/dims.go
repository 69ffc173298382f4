package draft

import (
	"math"
	"slices"

	"brimline/plane"
	"brimline/sheet"
	"brimline/unit"
)

// dimensions writes the length of every run outside the outline. The printed members of a closed
// outline add up to its printed length.
func (c *canvas) dimensions() {
	for _, o := range c.paper {
		var parts []float64
		for _, r := range o.runs {
			parts = append(parts, r.Length)
		}
		texts, _ := unit.Chain(parts, c.fig.style)
		for i, r := range o.runs {
			if len(r.segs) > 0 {
				c.dimension(o, r, sheet.Typeset(texts[i]))
			}
		}
	}
}

// shortest run on paper, in millimetres, whose length gets a dimension line.
const shortest = 9.0

func (c *canvas) dimension(o outline, r run, text string) {
	length := plane.Path{Segs: r.segs}.Length()
	arc, isArc := r.arc()
	switch {
	case r.Kind == "straight" && length >= shortest:
		if c.put(c.dimensionWays(o, r, plane.Segment{A: r.segs[0].A, B: r.segs[len(r.segs)-1].B}, text), crossThin) {
			return
		}
	case r.Kind == "arc" && isArc && length >= 2*shortest:
		if c.put(c.dimensionWays(o, r, arc, text), crossThin) {
			return
		}
		c.tabled(r)
		return
	case r.Kind == "arc":
		c.tabled(r) // its radius stands on the drawing, its length in the table
		return
	case r.Kind == "curve" && len(o.runs) == 1:
		return // its length is that of the outline, which stands inside
	case r.Kind == "curve":
		text = "curve " + text
	}
	c.note(o, r, text)
}

func (c *canvas) tabled(r run) { c.unplaced = append(c.unplaced, r.From+"–"+r.To) }

// dimensionWays are dimension lines at growing distances outside the outline, the figure at
// several places along each.
func (c *canvas) dimensionWays(o outline, r run, s plane.Segment, text string) []candidate {
	side := -1.0 // outside is to the right of a counter-clockwise ring
	if o.ring < 0 {
		side = 1
	}
	base := c.numberBand(o, r)
	kind := sheet.DimStraight
	if s.Bulge != 0 {
		kind = sheet.DimArc
	}
	var list []candidate
	for i, extra := range []float64{0, 3, 6, 10, 14, 19, 25} {
		offset := side * (base + extra)
		if kind == sheet.DimArc {
			offset = arcOffset(s, offset)
			if math.Abs(s.Radius())+offset < 6 {
				continue
			}
		}
		for k, share := range []float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74} {
			d := sheet.Dimension{Kind: kind, A: s.A, B: s.B, Bulge: s.Bulge, Offset: offset, Skip: 1.6, Text: text, Height: dimHeight, Share: share}
			list = append(list, dimensionCandidate(d, 2.5*float64(i)+0.7*float64(k)))
		}
	}
	return c.besideAxis(list)
}

// besideAxis leaves out what would cross the baseline: a dimension there would seem to belong to it.
func (c *canvas) besideAxis(list []candidate) []candidate {
	a, b, ok := c.axis()
	if !ok {
		return list
	}
	return slices.DeleteFunc(list, func(d candidate) bool {
		return slices.ContainsFunc(d.lines, func(l line) bool { return crossing(l.a, l.b, a, b) }) ||
			slices.ContainsFunc(d.rooms, func(r room) bool { return r.cutBy(a, b) })
	})
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
