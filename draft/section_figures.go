package draft

import (
	"math"

	"brimline/plane"
	"brimline/sheet"
	"brimline/unit"
)

// kinks are the corners of all that is under water, in order along, with the ends of the section.
func (c *sectionCanvas) kinks() []plane.Point {
	var out []plane.Point
	for _, p := range c.section.Pieces {
		if p.Part == "walls" {
			continue
		}
		for _, q := range corners(p.Points, 0.015) {
			if len(out) == 0 || out[len(out)-1].Dist(q) > 0.01 {
				out = append(out, q)
			}
		}
	}
	return out
}

// chain dimensions the lengths between the corners under the section, and the whole.
func (c *sectionCanvas) chain() {
	low, high := c.section.reach()
	k := c.view.Scale.PerMetre()
	stops := []float64{low}
	for _, q := range c.kinks() {
		if q.X-stops[len(stops)-1] > 0.02 && (q.X-stops[len(stops)-1])*k >= 15 && (high-q.X)*k >= 15 {
			stops = append(stops, q.X)
		}
	}
	stops = append(stops, high)
	var parts []float64
	for i := 1; i < len(stops); i++ {
		parts = append(parts, stops[i]-stops[i-1])
	}
	texts, total := unit.Chain(parts, c.fig.style)
	y := c.spot(plane.Point{Y: c.section.box().Min.Y}).Y - 13
	for i, t := range texts {
		if len(texts) > 1 {
			c.dimension(stops[i], stops[i+1], y, sheet.Typeset(t))
		}
	}
	if len(texts) > 1 {
		y -= 7
	}
	c.dimension(low, high, y, sheet.Typeset(total))
}

func (c *sectionCanvas) dimension(from, to, y float64, text string) {
	a, b := c.spot(plane.Point{X: from}), c.spot(plane.Point{X: to})
	a.Y, b.Y = y, y
	d := sheet.Dimension{A: a, B: b, Text: text, Height: smallHeight, Share: 0.5}
	if b.X-a.X < 3 {
		return
	}
	c.field.room(boxRoom(plane.Box{Min: a.Sub(plane.Point{Y: 1}), Max: b.Add(plane.Point{Y: 4.4})}), forbidden, forbidden)
	c.draw(sheet.Item{Layer: sheet.LayerDimensions, Pen: sheet.PenThin, Shape: d})
	for _, q := range []plane.Point{a, b} {
		c.draw(sheet.Item{Layer: sheet.LayerDimensions, Pen: sheet.PenThin, Shape: sheet.Line(q.Sub(plane.Point{Y: 1.5}), q.Add(plane.Point{Y: 3}))})
	}
}

// rimHeights say how high the wall stands above the water at both ends.
func (c *sectionCanvas) rimHeights() {
	n := len(c.section.Pieces)
	ends := []plane.Point{c.section.Pieces[0].Points[0], last(c.section.Pieces[n-1].Points)}
	for i, q := range ends {
		up := q.Y - c.depths.Level
		if up <= 0.002 {
			continue
		}
		words := signed(c.fig.length(up))
		if math.Abs(up-unreadWall) < 1e-9 {
			words = "top not read"
		}
		var list []candidate
		for k, off := range []plane.Point{{X: 1.6}, {X: 2.4}, {X: 2.4, Y: 1.5}, {X: 3.4, Y: 2.5}, {X: 4}, {X: 5}} {
			t := sheet.Text{S: words, At: c.spot(q).Add(off), Height: smallHeight, Anchor: sheet.MidLeft}
			if i == 0 {
				t.At, t.Anchor = c.spot(q).Add(plane.Point{X: -off.X, Y: off.Y}), sheet.MidRight
			}
			list = append(list, textCandidate(sheet.LayerNumbers, t, float64(k)))
		}
		c.put(list, 0)
	}
}

func last[T any](list []T) T { return list[len(list)-1] }

// depthFigures write the depth at each corner, under the floor.
func (c *sectionCanvas) depthFigures() {
	var said []plane.Point
	for _, q := range c.kinks() {
		at := c.spot(q)
		if q.Y > c.depths.Level || len(said) > 0 && abs(last(said).Y-at.Y) < 0.1 && at.X-last(said).X < 15 {
			continue // over the surface, or the other end of a tread
		}
		said = append(said, at)
		t := sheet.Text{S: c.fig.length(c.depths.Level - q.Y), Height: smallHeight, Anchor: sheet.MidCentre}
		var list []candidate
		for _, d := range []float64{2.6, 3.4, 4.4, 6, 8} {
			for _, aside := range []float64{0, 2, -2, 5, -5, 8, -8} {
				p := t
				p.At = at.Add(plane.Point{X: aside, Y: -d})
				list = append(list, textCandidate(sheet.LayerNumbers, p, d+0.6*abs(aside)))
			}
		}
		c.put(list, 0)
	}
}
