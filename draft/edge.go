package draft

import (
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// Costs of coming in the way, on a scale where one millimetre further from a mark costs 0.4.
const (
	crossEdge  = 60.0 // a leader or dimension line across the edge
	crossThin  = 6.0  // across another leader or dimension line
	throughDot = 40.0 // a line through a mark
	overFaint  = 5.0  // a text on an ellipse
	overTie    = 0.3  // a text on a reading's hairline
)

// edges draws the outlines: the edge wide, where nobody touched it dashed; other lines narrow.
func (c *canvas) edges() {
	for i, o := range c.paper {
		layer, pen := sheet.LayerAround, sheet.PenThin
		if o.line.Closed || o.line.Edge != "" {
			layer, pen = sheet.LayerEdge, sheet.PenEdge
		}
		c.field.path(o.path, forbidden, crossEdge)
		gaps := c.gaps(i)
		if pen != sheet.PenEdge || len(gaps) == 0 {
			c.draw(sheet.Item{Layer: layer, Pen: pen, Shape: sheet.Path{Path: o.path}})
			continue
		}
		c.symbols.inferred = true
		c.broken(o, gaps)
	}
}

// span is a stretch of a path from one place to a later one, in segments and shares of them
// together: 3.25 is a quarter along segment 3.
type span struct{ from, to float64 }

// gaps are the spans of an outline that rest on no reading.
func (c *canvas) gaps(i int) []span {
	o := c.paper[i]
	var out []span
	for _, g := range o.line.Gaps {
		a, okA := c.where(o, g.From)
		b, okB := c.where(o, g.To)
		if !okA || !okB {
			continue
		}
		if b <= a {
			if !o.line.Closed {
				continue
			}
			b += float64(len(o.path.Segs))
		}
		out = append(out, span{a, b})
	}
	return out
}

// where is the place of a mark along an outline.
func (c *canvas) where(o outline, mark string) (float64, bool) {
	p, ok := c.at(mark)
	if !ok {
		return 0, false
	}
	seg, t, _ := o.path.Nearest(p)
	return float64(seg) + t, seg >= 0
}

// broken draws an outline with dashed gaps: every segment is cut where a gap begins or ends.
func (c *canvas) broken(o outline, gaps []span) {
	n := float64(len(o.path.Segs))
	for i, s := range o.path.Segs {
		cuts := []float64{0, 1}
		for _, g := range gaps {
			for _, x := range []float64{g.from - float64(i), g.to - float64(i), g.from - n - float64(i), g.to - n - float64(i)} {
				if x > 0 && x < 1 {
					cuts = insert(cuts, x)
				}
			}
		}
		for k := 1; k < len(cuts); k++ {
			mid := float64(i) + (cuts[k-1]+cuts[k])/2
			item := sheet.Item{Layer: sheet.LayerEdge, Pen: sheet.PenEdge}
			if within(gaps, mid) || within(gaps, mid+n) {
				item = sheet.Item{Layer: sheet.LayerInferred, Pen: sheet.PenInferred}
			}
			item.Shape = sheet.Path{Path: plane.Path{Segs: []plane.Segment{s.Part(cuts[k-1], cuts[k])}}}
			c.draw(item)
		}
	}
}

// insert puts x into a rising list.
func insert(list []float64, x float64) []float64 {
	out := make([]float64, 0, len(list)+1)
	done := false
	for _, y := range list {
		if !done && x < y {
			out, done = append(out, x), true
		}
		out = append(out, y)
	}
	return out
}

func within(gaps []span, x float64) bool {
	for _, g := range gaps {
		if x > g.from && x < g.to {
			return true
		}
	}
	return false
}

// ties draws the readings between two marks as grey hairlines.
func (c *canvas) ties() {
	if !c.opt.ShowTies {
		return
	}
	for _, r := range c.result.Readings {
		if !tied(r) {
			continue
		}
		a, okA := c.at(r.Marks[0])
		b, okB := c.at(r.Marks[1])
		if !okA || !okB || a == b {
			continue
		}
		c.symbols.ties = true
		c.field.line(a, b, overTie, 0)
		c.draw(sheet.Item{Layer: sheet.LayerReadings, Pen: sheet.PenHair, Ink: sheet.Grey, Shape: sheet.Line(a, b)})
	}
}

// tied says that a reading is a tie in force that does not stand out.
func tied(r survey.Reading) bool {
	return r.Kind == "tie" && len(r.Marks) == 2 && r.State != "struck" && !stands(r.State)
}

// axis is the baseline on paper: through the first two pegs, a little past both.
func (c *canvas) axis() (from, to plane.Point, ok bool) {
	pegs := c.pegs()
	if len(pegs) < 2 {
		return from, to, false
	}
	a, _ := c.at(pegs[0])
	b, _ := c.at(pegs[1])
	if a.Dist(b) < 1 {
		return from, to, false
	}
	u := b.Sub(a).Unit().Mul(7)
	return a.Sub(u), b.Add(u), true
}

// baseline draws the axis with the distance of its pegs.
func (c *canvas) baseline() {
	from, to, ok := c.axis()
	if !ok {
		return
	}
	pegs := c.pegs()
	a, _ := c.at(pegs[0])
	b, _ := c.at(pegs[1])
	c.symbols.baseline = pegs[0] + "–" + pegs[1]
	c.field.line(from, to, forbidden, crossThin)
	c.draw(sheet.Item{Layer: sheet.LayerAxes, Pen: sheet.PenAxis, Shape: sheet.Line(from, to)})
	pa, _ := c.place(pegs[0])
	pb, _ := c.place(pegs[1])
	c.along(a, b, pegs[0]+"–"+pegs[1]+"  "+c.fig.length(pa.Dist(pb)))
}

// along writes a figure along an axis, above or below it.
func (c *canvas) along(a, b plane.Point, s string) {
	turn := sheet.Upright(plane.Angle(b.Sub(a)))
	up := plane.Point{X: 1}.Turn(turn).Left()
	var list []candidate
	for _, gap := range []float64{1.8, -1.5 - 3.5} {
		for i, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
			text := sheet.Text{S: s, At: plane.Lerp(a, b, t).Add(up.Mul(gap)), Height: 3.5, Anchor: sheet.FootCentre, Turn: turn}
			list = append(list, candidate{rooms: []room{roomOf(text, 0.4)}, cost: float64(i), draw: func() []sheet.Item {
				return []sheet.Item{{Layer: sheet.LayerDimensions, Shape: text}}
			}})
		}
	}
	c.put(list, 0)
}
