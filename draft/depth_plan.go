package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// depthPlanTitle is the title of its sheet.
const depthPlanTitle = "Depths and volume"

// depthZones divides the sheet: the plan with words in a column at the right of it, or on an upright
// sheet in two below.
func depthZones(s sheet.Size) (plan plane.Box, columns []plane.Box) {
	free, _ := tableZones(s)
	plan = free
	if s.Upright() {
		plan.Min.Y += 100
		below := free
		below.Max.Y = plan.Min.Y
		a, b := halves(below)
		return plan, []plane.Box{a, b}
	}
	plan.Max.X -= columnWidth
	return plan, []plane.Box{{Min: plane.Point{X: plan.Max.X, Y: free.Min.Y}, Max: free.Max}}
}

// depthCanvas is a plan of the floor in the making.
type depthCanvas struct {
	*canvas
	depths *Depths
	shown  depthSymbols
}

// depthSymbols says what stands on the plan, for its key.
type depthSymbols struct{ contours, breaks, tops, sections, nameless bool }

// depthPlan draws the sheet of depths, with what the pool holds in words.
func (p *pages) depthPlan(d *Depths) {
	zone, columns := depthZones(p.size)
	p.newPage()
	p.name(depthPlanTitle)
	bare := *p.job
	bare.marks = nil
	c, ok := bare.newCanvas(zone)
	dc := &depthCanvas{canvas: c, depths: d}
	s := &p.sheets[len(p.sheets)-1]
	if ok {
		dc.compose(zone)
		s.Views = append(s.Views, c.view)
		s.Items = append(s.Items, c.items...)
	}
	width := columns[0].Max.X - columns[0].Min.X - 2*inset
	items, left := pourAll(dc.words(width), columns)
	s.Items = append(s.Items, items...)
	p.wide, p.at = 0, plane.Point{X: p.free.Max.X, Y: p.free.Min.Y} // tables begin a new sheet
	if len(left) > 0 {
		p.words(left, width)
	}
}

// compose draws it: what cannot move first.
func (c *depthCanvas) compose(zone plane.Box) {
	c.edges()
	c.tops()
	c.breaks()
	c.dots()
	c.cuts()
	c.topNames()
	c.ends()
	c.deepest()
	c.contours()
	c.figures()
	c.north(zone)
	c.scaleBar(zone)
	c.clearGround()
}

// clearGround lays white under every word that may stand on a contour.
func (c *depthCanvas) clearGround() {
	var patches []sheet.Item
	for _, it := range c.items {
		if t, ok := it.Shape.(sheet.Text); ok && it.Layer != sheet.LayerUnder {
			r := roomOf(t, 0.3)
			patches = append(patches, sheet.Item{Layer: sheet.LayerUnder, Fill: sheet.Filled(sheet.White), Shape: sheet.Polyline(true, r[:]...)})
		}
	}
	c.draw(patches...)
}

// cutLetter is how far outside the rim a section line ends, cutInside how far in it begins (millimetres).
const (
	cutOutside = 9.0
	cutInside  = 4.0
)

// cuts mark where the sections run: the ends of their lines with their letters, an arrow in the direction
// of sight.
func (c *depthCanvas) cuts() {
	for _, s := range append([]Section{c.depths.Long}, c.depths.Across...) {
		if len(s.Pieces) == 0 {
			continue
		}
		c.shown.sections = true
		a, b := c.view.Point(s.From), c.view.Point(s.To)
		way := b.Sub(a).Unit()
		for k, end := range []plane.Point{a, b} {
			out := way.Mul(-1)
			if k == 1 {
				out = way
			}
			from, to := end.Sub(out.Mul(cutInside)), end.Add(out.Mul(cutOutside))
			sight := way.Left()
			tip := to.Add(sight.Mul(4))
			c.field.line(from, to, forbidden, crossThin)
			c.field.line(to, tip, forbidden, crossThin)
			arrow := sheet.Polyline(true, tip, tip.Sub(sight.Mul(2.4)).Add(out.Mul(0.6)), tip.Sub(sight.Mul(2.4)).Sub(out.Mul(0.6)))
			c.draw(
				sheet.Item{Layer: sheet.LayerAxes, Pen: sheet.PenAxis, Shape: sheet.Line(from, to)},
				sheet.Item{Layer: sheet.LayerAxes, Pen: sheet.PenThin, Shape: sheet.Line(to, tip)},
				sheet.Item{Layer: sheet.LayerAxes, Fill: sheet.Filled(sheet.Black), Shape: arrow})
			t := sheet.Text{S: s.Name, Height: dimHeight, Anchor: sheet.MidCentre, Bold: true}
			var list []candidate
			for _, d := range []float64{0, 1, 2, 4} {
				for _, turn := range []float64{0, -0.5, -1, -1.5, 0.6} {
					list = append(list, numberCandidate(sheet.LayerNumbers, t, to, out.Turn(turn), 1.6+d, d+abs(turn)))
				}
			}
			c.put(list, crossThin)
		}
	}
}
