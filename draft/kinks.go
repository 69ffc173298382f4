package draft

import (
	"math"
	"strconv"

	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// kinks writes the inside angle at each corner of an outline, inside the pool.
func (c *canvas) kinks() {
	for _, o := range c.paper {
		for i, r := range o.runs {
			if !kinked(r.LineRun) || r.Turn == nil || len(r.segs) == 0 || i == 0 && !o.line.Closed || o.derived || !c.sees(r.segs[0].A) {
				continue
			}
			turn := *r.Turn
			if o.ring < 0 {
				turn = -turn
			}
			c.angle(o, r, 180-turn)
		}
	}
}

// plainTurn is the turn in degrees from which a joint of which the book says nothing is drawn as a
// corner (common practice, no source).
const plainTurn = 10.0

// kinked says that a run begins in a corner: as the book says, else as is plain to see.
func kinked(r survey.LineRun) bool {
	return r.Joint == "kink" || r.Joint == "" && r.Turn != nil && abs(*r.Turn) > plainTurn
}

// angle writes degrees near a corner on the inner side.
func (c *canvas) angle(o outline, r run, degrees float64) {
	seg, t, p := o.path.Nearest(r.segs[0].A)
	in := c.corner(o, seg, t).Mul(-1)
	text := sheet.Text{S: minus(strconv.FormatFloat(degrees, 'f', 1, 64)) + "°", Height: smallHeight, Anchor: sheet.MidCentre}
	w := sheet.Width(text.S, text.Height, false)
	var list []candidate
	for _, d := range []float64{2, 3, 4.5, 6, 8, 10} {
		for _, a := range []float64{0, 0.4, -0.4, 0.8, -0.8} {
			dir := in.Turn(a)
			text.At = p.Add(dir.Mul(d + reach(dir, w/2, tallHalf*text.Height)))
			list = append(list, wordCandidate(text, sheet.LayerDimensions, d+abs(a)))
		}
	}
	if !c.put(list, 0) {
		c.tabled(r)
	}
}

// wordCandidate is a text alone.
func wordCandidate(t sheet.Text, layer sheet.Layer, cost float64) candidate {
	return candidate{cost: cost, rooms: []room{roomOf(t, 0.6)}, draw: func() []sheet.Item {
		return []sheet.Item{{Layer: layer, Shape: t}}
	}}
}

// ends writes the shallow and the deep end inside the pool, and the house.
func (c *canvas) ends() {
	for _, e := range [][2]string{{c.book.Place.Shallow, "shallow end"}, {c.book.Place.Deep, "deep end"}} {
		if p, ok := c.at(e[0]); ok && e[0] != "" {
			c.end(p, e[1])
		}
	}
	if wall := c.wall(); len(wall) > 0 {
		c.house(wall)
	}
}

// wall is the house as far as its marks have places.
func (c *canvas) wall() []plane.Point {
	var wall []plane.Point
	for _, m := range c.book.Place.House {
		if p, ok := c.at(m); ok {
			wall = append(wall, p)
		}
	}
	return wall
}

// walls draws the house.
func (c *canvas) walls() {
	wall := c.wall()
	for i := 1; i < len(wall); i++ {
		c.field.line(wall[i-1], wall[i], forbidden, crossEdge)
	}
	if len(wall) > 1 {
		c.draw(sheet.Item{Layer: sheet.LayerAround, Pen: sheet.PenThin, Shape: sheet.Polyline(false, wall...)})
	}
}

// end writes a word as near inside a mark as there is room.
func (c *canvas) end(p plane.Point, word string) {
	in := plane.Point{Y: -1}
	if i, seg, t, _ := c.nearest(p); i >= 0 {
		in = c.corner(c.paper[i], seg, t).Mul(-1)
	}
	text := sheet.Text{S: word, Height: dimHeight, Anchor: sheet.MidCentre}
	w := sheet.Width(word, dimHeight, false)
	var list []candidate
	for d := 3.0; d <= 60; d += 1.5 {
		for _, a := range []float64{0, 0.25, -0.25, 0.5, -0.5, 0.8, -0.8, 1.1, -1.1} {
			dir := in.Turn(a)
			text.At = p.Add(dir.Mul(d + reach(dir, w/2, tallHalf*dimHeight)))
			if c.inPool(text.At) {
				list = append(list, wordCandidate(text, sheet.LayerWords, d+6*abs(a)))
			}
		}
	}
	c.put(list, 0)
}

// house names the house on the side away from the pool.
func (c *canvas) house(wall []plane.Point) {
	a, b := wall[0], wall[len(wall)-1]
	text := sheet.Text{S: "house", Height: dimHeight, Anchor: sheet.MidCentre}
	if a.Dist(b) > 20 {
		text.Turn = sheet.Upright(plane.Angle(b.Sub(a)))
	}
	mid := plane.Lerp(a, b, 0.5)
	away := plane.Point{Y: 1}
	switch i, seg, t, foot := c.nearest(mid); {
	case i >= 0 && foot.Dist(mid) < 3:
		away = c.corner(c.paper[i], seg, t)
	case i >= 0:
		away = mid.Sub(foot).Unit()
	}
	var list []candidate
	for _, d := range []float64{4, 5.5, 7, 9, 11, 14, 18} {
		for k := 0; k < 16; k++ {
			turn := float64(k) * math.Pi / 8
			text.At = mid.Add(away.Turn(turn).Mul(d))
			list = append(list, wordCandidate(text, sheet.LayerWords, d+3*min(turn, 2*math.Pi-turn)))
		}
	}
	c.put(list, 0)
}
