package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// inside names each closed outline in the middle of the pool: its edge and state, its area and
// its length; where there is no room for all that, its name alone.
func (c *canvas) inside() {
	for i, o := range c.paper {
		if o.ring == 0 || o.derived {
			continue
		}
		words := c.named(c.metres[i])
		if !c.put(blocks(o, words), 0) {
			c.put(blocks(o, words[:1]), 0)
		}
	}
}

// blockSteps is how many places are tried over the diagonal of an outline.
const blockSteps = 120

// blocks are the places for lines of words all over an outline, those near its middle first.
func blocks(o outline, words []string) []candidate {
	var list []candidate
	box := o.path.Bounds()
	mid := middleOf(box)
	step := max(2, box.Diagonal()/blockSteps)
	for y := box.Min.Y + 4; y < box.Max.Y; y += step {
		for x := box.Min.X + 4; x < box.Max.X; x += step {
			if at := (plane.Point{X: x, Y: y}); o.path.Contains(at) {
				list = append(list, blockCandidate(words, at, at.Dist(mid)))
			}
		}
	}
	return list
}

// named is what is written in an outline.
func (c *canvas) named(o outline) []string {
	head := o.name
	if o.line.Edge != "" {
		head += ": " + edgeWord(o.line.Edge)
	}
	words := []string{head}
	if c.planned(o.name) {
		words[0] += ", planned"
	}
	if o.line.Area != nil {
		words = append(words, "area "+c.fig.area(*o.line.Area, o.line.AreaSD))
	}
	if o.line.Length != nil {
		t := "length " + c.fig.withUnit(*o.line.Length)
		if o.line.LengthSD != nil {
			t += " ± " + c.fig.whole(cover**o.line.LengthSD)
		}
		words = append(words, t)
	}
	return words
}

// planned says that the book calls a line planned and not found.
func (j *job) planned(name string) bool {
	return j.bookLine(name).State == "planned"
}

// edgeWord says in words which edge a line is.
func edgeWord(edge string) string {
	switch edge {
	case "nose":
		return "nose of the coping"
	case "back":
		return "back of the coping"
	case "track":
		return "liner track"
	case "tile":
		return "face of the tile"
	case "wall-foot":
		return "foot of the wall"
	case "deck":
		return "edge of the deck"
	}
	return edge
}

// blockCandidate sets lines of words about a middle, the first one larger.
func blockCandidate(words []string, middle plane.Point, cost float64) candidate {
	const pitch = 5.2
	cand := candidate{cost: cost}
	var texts []sheet.Text
	for i, w := range words {
		y := (float64(len(words)-1)/2 - float64(i)) * pitch
		t := sheet.Text{S: w, At: middle.Add(plane.Point{Y: y}), Height: smallHeight, Anchor: sheet.MidCentre}
		if i == 0 {
			t.Height = dimHeight
			t.At.Y += 0.6
		}
		texts = append(texts, t)
		cand.rooms = append(cand.rooms, roomOf(t, 0.8))
	}
	cand.draw = func() []sheet.Item {
		var items []sheet.Item
		for _, t := range texts {
			items = append(items, sheet.Item{Layer: sheet.LayerWords, Shape: t})
		}
		return items
	}
	return cand
}
