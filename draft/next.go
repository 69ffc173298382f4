package draft

import (
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// nextTape is the first proposal that can be drawn as a straight between two marks, with its ends
// on paper.
func (c *canvas) nextTape() (n survey.Next, a, b plane.Point, ok bool) {
	if len(c.result.Next) == 0 || len(c.result.Next[0].Marks) != 2 {
		return n, a, b, false
	}
	n = c.result.Next[0]
	a, okA := c.at(n.Marks[0])
	b, okB := c.at(n.Marks[1])
	return n, a, b, okA && okB && a.Dist(b) > 4*pegR
}

// nextLine draws the reading proposed next, from symbol to symbol.
func (c *canvas) nextLine() {
	n, a, b, ok := c.nextTape()
	if !ok {
		return
	}
	u := b.Sub(a).Unit()
	a, b = a.Add(u.Mul(c.symbolRoom(n.Marks[0]))), b.Sub(u.Mul(c.symbolRoom(n.Marks[1])))
	c.symbols.next = true
	c.field.line(a, b, forbidden, crossThin)
	c.draw(sheet.Item{Layer: sheet.LayerNext, Pen: sheet.PenNext, Shape: sheet.Line(a, b)})
}

// symbolRoom is how far from its middle a mark's symbol reaches.
func (c *canvas) symbolRoom(m string) float64 {
	if c.lasting(m) {
		return pegR + 0.4
	}
	return openR + 0.3
}

// nextWords label it beside its line: what to read, between which marks, about how much; smaller
// or further away where there is no room.
func (c *canvas) nextWords() {
	n, a, b, ok := c.nextTape()
	if !ok {
		return
	}
	full := c.nextText(n)
	for _, ways := range [][]candidate{nextWays(full, dimHeight, a, b), nextWays(full, smallHeight, a, b), nextLed(full, a, b), nextWays("next", smallHeight, a, b)} {
		if c.put(ways, crossThin) {
			return
		}
	}
	c.unplaced = append(c.unplaced, "the reading proposed next")
}

// nextLed are places further away, with a leader to the middle of the line.
func nextLed(s string, a, b plane.Point) []candidate {
	half := plane.Point{X: sheet.Width(s, smallHeight, false) / 2, Y: smallHeight}
	return ledWays(plane.Lerp(a, b, 0.5), half, func(middle plane.Point, cost float64) candidate {
		text := sheet.Text{S: s, At: middle, Height: smallHeight, Anchor: sheet.MidCentre}
		return candidate{rooms: []room{roomOf(text, 0.4)}, cost: cost, draw: func() []sheet.Item {
			return []sheet.Item{{Layer: sheet.LayerWords, Shape: text}}
		}}
	})
}

// nextText is the label: next: A–r9 about 7.61.
func (c *canvas) nextText(n survey.Next) string {
	t := "next: " + n.Marks[0] + "–" + n.Marks[1]
	if n.About != nil {
		t += " about " + c.fig.rounded(*n.About, coarse)
	}
	return t
}

// coarse is a doubt with which a figure in metres has two decimals: a proposal is no reading.
const coarse = 0.01

// nextWays are places along the line, above it and below, then upright beside it.
func nextWays(s string, h float64, a, b plane.Point) []candidate {
	turn := sheet.Upright(plane.Angle(b.Sub(a)))
	up := plane.Point{X: 1}.Turn(turn).Left()
	var list []candidate
	for k, gap := range []float64{0.45 * h, -1.45 * h} {
		for i, share := range []float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82} {
			text := sheet.Text{S: s, At: plane.Lerp(a, b, share).Add(up.Mul(gap)), Height: h, Anchor: sheet.FootCentre, Turn: turn}
			list = append(list, candidate{rooms: []room{roomOf(text, 0.3)}, cost: float64(i) + 0.5*float64(k), draw: func() []sheet.Item {
				return []sheet.Item{{Layer: sheet.LayerWords, Shape: text}}
			}})
		}
	}
	return list
}
