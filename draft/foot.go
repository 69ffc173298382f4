package draft

import (
	"math"
	"strconv"

	"brimline/plane"
	"brimline/sheet"
)

// scaleBar draws the bar at the foot of the plan zone, with the scale in figures beside it: a bar
// survives a copy that figures do not.
func (c *canvas) scaleBar(zone plane.Box) {
	foot := plane.Point{X: zone.Min.X + 8, Y: zone.Min.Y + 6}
	end, ok := c.bar(foot, 4, 22)
	if !ok {
		return
	}
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{
		S: c.view.Scale.String(), At: plane.Point{X: end + 16, Y: foot.Y}, Height: 5, Bold: true}})
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{
		S: "viewed from above", At: plane.Point{X: zone.Max.X - 8, Y: foot.Y}, Height: smallHeight, Anchor: sheet.FootRight}})
	if c.symbols.ellipse {
		c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{
			S: "error ellipses " + c.enlargement(""), At: plane.Point{X: zone.Max.X - 8, Y: foot.Y + linePitch*smallHeight}, Height: smallHeight, Anchor: sheet.FootRight}})
	}
}

// bar draws so many parts from foot to the right, each up to so many millimetres long, and says where
// they end; false where the scale leaves none.
func (c *canvas) bar(foot plane.Point, parts int, most float64) (end float64, ok bool) {
	unitLength, name := 1.0, " m"
	if c.fig.feet() {
		unitLength, name = 0.3048, " ft"
	}
	k := c.view.Scale.PerMetre() * unitLength
	step := sheet.Round(most / k)
	if step == 0 {
		return foot.X, false
	}
	const height = 1.6
	for i := 0; i < parts; i++ {
		box := plane.Box{Min: foot.Add(plane.Point{X: float64(i) * step * k}), Max: foot.Add(plane.Point{X: float64(i+1) * step * k, Y: height})}
		item := sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenThin, Shape: sheet.Rect(box)}
		if i%2 == 0 {
			item.Fill = sheet.Filled(sheet.Black)
		}
		c.draw(item)
		c.draw(barText(box.Min.X, foot.Y+height, strconv.FormatFloat(float64(i)*step, 'g', 6, 64)))
	}
	whole := float64(parts) * step
	end = foot.X + whole*k
	c.draw(barText(end, foot.Y+height, strconv.FormatFloat(whole, 'g', 6, 64)+name))
	return end, true
}

func barText(x, y float64, s string) sheet.Item {
	return sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: s, At: plane.Point{X: x, Y: y + 1.4}, Height: smallHeight, Anchor: sheet.FootCentre}}
}

// north draws the arrow where the book says how a line of the figure lies to north, in the corner
// of the plan that costs least.
func (c *canvas) north(zone plane.Box) {
	line := c.book.Place.NorthLine
	a, okA := c.place(line[0])
	b, okB := c.place(line[1])
	if line[0] == "" || !okA || !okB || a == b {
		return
	}
	turn := plane.Angle(b.Sub(a)) + c.book.Place.NorthBearing
	const half = 12.0
	area := shrink(zone, 4+half)
	var list []candidate
	for i, p := range []plane.Point{{X: area.Min.X, Y: area.Max.Y}, area.Max, {X: area.Max.X, Y: area.Min.Y + 10}, {X: area.Min.X, Y: area.Min.Y + 10}} {
		for k := 0.0; k < 4; k++ {
			at := p.Add(middleOf(area).Sub(p).Unit().Mul(k * 6))
			list = append(list, candidate{rooms: []room{square(at, half)}, cost: float64(i) + 2*k,
				draw: func() []sheet.Item { return northArrow(at, turn) }})
		}
	}
	c.put(list, 0)
}

// northArrow points along turn: a shaft, a head half filled, and an upright N beyond it.
func northArrow(at plane.Point, turn float64) []sheet.Item {
	u := plane.Point{X: 1}.Turn(turn)
	tail, tip := at.Sub(u.Mul(9)), at.Add(u.Mul(6))
	base, side := tip.Sub(u.Mul(6)), u.Left().Mul(1.8)
	thin := sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenThin}
	shaft, left, right := thin, thin, thin
	shaft.Shape = sheet.Line(tail, tip)
	left.Shape = sheet.Polyline(true, tip, base.Add(side), base)
	right.Shape, right.Fill = sheet.Polyline(true, tip, base, base.Sub(side)), sheet.Filled(sheet.Black)
	n := sheet.Text{S: "N", At: tip.Add(u.Mul(3.6)), Height: dimHeight, Anchor: sheet.MidCentre, Bold: true}
	return []sheet.Item{shaft, left, right, {Layer: sheet.LayerWords, Shape: n}}
}

// bearing of a direction in words, degrees clockwise from +y.
func bearing(degrees float64) string {
	d := math.Mod(math.Mod(degrees, 360)+360, 360)
	return strconv.FormatFloat(d, 'f', 0, 64) + "°"
}
