package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// tops draws treads and ledges.
func (c *depthCanvas) tops() {
	for _, t := range c.depths.Tops {
		path := c.view.Path(plane.Polyline(t.Ring, true))
		c.shown.tops = true
		c.field.path(path, forbidden, crossThin)
		c.draw(sheet.Item{Layer: sheet.LayerAround, Pen: sheet.PenThin, Shape: sheet.Path{Path: path}})
	}
}

// topNames name them with their depth, inside where there is room.
func (c *depthCanvas) topNames() {
	for _, t := range c.depths.Tops {
		path := c.view.Path(plane.Polyline(t.Ring, true))
		name := t.Name
		if name == "" {
			name = t.Kind
		}
		words := []string{name, c.fig.length(t.Depth)}
		o := outline{path: path}
		joined := []string{name + " " + words[1]}
		if !c.put(smallBlocks(o, words, 0), 0) && !c.put(smallBlocks(o, joined, quarterTurn), 0) &&
			!c.put(smallBlocks(o, words[1:], 0), 0) && !c.put(smallBlocks(o, words[1:], quarterTurn), 0) {
			c.shown.nameless = true
		}
	}
}

// smallBlocks are the places for lines of words in an outline, turned so far.
func smallBlocks(o outline, words []string, turn float64) []candidate {
	var list []candidate
	box := o.path.Bounds()
	mid := middleOf(box)
	step := max(0.5, box.Diagonal()/60)
	for y := box.Min.Y; y < box.Max.Y; y += step {
		for x := box.Min.X; x < box.Max.X; x += step {
			at := plane.Point{X: x, Y: y}
			if !o.path.Contains(at) {
				continue
			}
			cand := candidate{cost: at.Dist(mid)}
			within := true
			var items []sheet.Item
			for i, w := range words {
				down := plane.Point{Y: (float64(len(words)-1)/2 - float64(i)) * 4.2}.Turn(turn)
				t := sheet.Text{S: w, At: at.Add(down), Height: smallHeight, Anchor: sheet.MidCentre, Turn: turn}
				r := roomOf(t, 0.3)
				within = within && o.path.Contains(r[0]) && o.path.Contains(r[1]) && o.path.Contains(r[2]) && o.path.Contains(r[3])
				cand.rooms = append(cand.rooms, r)
				items = append(items, sheet.Item{Layer: sheet.LayerWords, Shape: t})
			}
			cand.draw = func() []sheet.Item { return items }
			if within {
				list = append(list, cand)
			}
		}
	}
	return list
}

// breaks draws the lines along which the slope changes.
func (c *depthCanvas) breaks() {
	for _, line := range c.depths.Breaks {
		var pts []plane.Point
		for _, q := range line {
			pts = append(pts, c.view.Point(q.Plan()))
		}
		if len(pts) < 2 {
			continue
		}
		path := sheet.Polyline(false, pts...)
		c.shown.breaks = true
		c.field.path(path.Path, forbidden, 0)
		c.draw(sheet.Item{Layer: sheet.LayerUnder, Pen: sheet.PenUnder, Shape: path})
	}
}

// dots mark where depths were read.
func (c *depthCanvas) dots() {
	for _, s := range c.depths.Soundings {
		at := c.view.Point(s.At)
		c.field.room(square(at, dotR+0.3), forbidden, throughDot)
		c.draw(sheet.Item{Layer: sheet.LayerMarks, Fill: sheet.Filled(sheet.Black), Shape: sheet.Circle{Centre: at, R: dotR}})
	}
}

// figures are the depths beside the dots; at the deepest it stands with its word.
func (c *depthCanvas) figures() {
	for _, s := range c.depths.Soundings {
		if s.At == c.depths.Deepest.At {
			continue
		}
		at := c.view.Point(s.At)
		t := sheet.Text{S: c.depth(s.Depth), Height: smallHeight, Anchor: sheet.MidCentre}
		var list []candidate
		for _, d := range []float64{0, 0.5, 1, 2, 3.5, 5, 7, 9, 12} {
			for _, turn := range round() {
				list = append(list, numberCandidate(sheet.LayerNumbers, t, at, plane.Point{X: 1}.Turn(turn), 1.1+d, d+0.3*abs(turn)))
			}
		}
		if !c.put(list, crossThin) {
			c.shown.nameless = true
		}
	}
}

// depth is a depth on the plan: in metres to the centimetre, which is what a rod can read.
func (c *canvas) depth(m float64) string { return c.fig.rounded(m, 1) }

// deepest names the deepest place.
func (c *depthCanvas) deepest() {
	d := c.depths.Deepest
	at := c.view.Point(d.At)
	text := "deepest " + c.depth(d.Depth)
	var list []candidate
	for _, far := range []float64{7, 9, 12, 15, 19, 24} {
		for _, turn := range round() {
			list = append(list, noteCandidate(at, plane.Point{X: 1}.Turn(turn+0.3), far, text, far+abs(turn)))
		}
	}
	c.put(list, crossThin)
}
