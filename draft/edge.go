package draft

import (
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// Costs of coming in the way, on a scale where one millimetre further from a mark costs 0.4.
const (
	crossEdge  = 60.0 // a leader or dimension line across the edge
	crossThin  = 6.0  // across another leader
	crossDim   = 20.0 // across a dimension line
	mostDim    = 56.0 // above this a length stands in a note and not on a dimension line
	crossAxis  = 90.0 // across the baseline, to which the figure would seem to belong
	throughDot = 40.0 // a line through a mark
	overFaint  = 5.0  // a text on an ellipse
	overTie    = 0.3  // a text on a reading's hairline
)

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
	c.field.line(from, to, forbidden, crossAxis)
	c.draw(sheet.Item{Layer: sheet.LayerAxes, Pen: sheet.PenAxis, Shape: sheet.Line(from, to)})
	pa, _ := c.place(pegs[0])
	pb, _ := c.place(pegs[1])
	c.along(a, b, pegs[0]+"–"+pegs[1]+"  "+c.fig.length(pa.Dist(pb)))
}

// axisNear is the paper in millimetres between outline and baseline under which both need it.
const axisNear = 30.0

// along writes a figure along an axis, on the side away from the outline first, whose own figures
// stand on the other.
func (c *canvas) along(a, b plane.Point, s string) {
	turn := sheet.Upright(plane.Angle(b.Sub(a)))
	up := plane.Point{X: 1}.Turn(turn).Left()
	gaps := []float64{1.8, -1.5 - dimHeight}
	mid := plane.Lerp(a, b, 0.5)
	if i, _, _, foot := c.nearest(mid); i >= 0 && foot.Sub(mid).Dot(up) > 0 && foot.Dist(mid) < axisNear {
		gaps[0], gaps[1] = gaps[1], gaps[0]
	}
	var list []candidate
	for _, gap := range gaps {
		for i, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
			text := sheet.Text{S: s, At: plane.Lerp(a, b, t).Add(up.Mul(gap)), Height: 3.5, Anchor: sheet.FootCentre, Turn: turn}
			list = append(list, candidate{rooms: []room{roomOf(text, 0.4)}, cost: float64(i), draw: func() []sheet.Item {
				return []sheet.Item{{Layer: sheet.LayerDimensions, Shape: text}}
			}})
		}
	}
	c.put(list, 0)
}
