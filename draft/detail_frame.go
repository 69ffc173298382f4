package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// letter is the n-th of A to Z, AA, AB and so on that no mark has as its name.
func (c *canvas) letter(n int) string {
	for i := 0; ; i++ {
		if s := letters(i); c.result.Marks[s] == nil {
			if n == 0 {
				return s
			}
			n--
		}
	}
}

func letters(n int) string {
	s := string(rune('A' + n%26))
	if n >= 26 {
		return letters(n/26-1) + s
	}
	return s
}

// frames draws the windows on the plan with their letters, under everything else.
func (c *canvas) frames() {
	for _, d := range c.details {
		b := plane.Box{Min: c.view.Point(d.box.Min), Max: c.view.Point(d.box.Max)}
		c.draw(sheet.Item{Layer: sheet.LayerDetails, Pen: sheet.PenThin, Ink: sheet.Grey, Shape: sheet.Rect(b)})
		c.symbols.detail = true
		if !c.put(letterWays(d.letter, b, dimHeight), crossThin) && !c.put(letterWays(d.letter, b, smallHeight), crossThin) && !c.put(letterLed(d.letter, b), crossThin) {
			c.unplaced = append(c.unplaced, "the letter of detail "+d.letter)
		}
	}
}

// letterWays are places of a letter along the sides of its frame, outside and inside.
func letterWays(letter string, b plane.Box, h float64) []candidate {
	var list []candidate
	add := func(x, y, cost float64) {
		t := sheet.Text{S: letter, At: plane.Point{X: x, Y: y}, Height: h, Anchor: sheet.MidCentre, Bold: true}
		list = append(list, wordCandidate(t, sheet.LayerNumbers, cost))
	}
	for i, share := range []float64{0, 1, 0.05, 0.95, 0.1, 0.9, 0.15, 0.85, 0.2, 0.8, 0.25, 0.75, 0.3, 0.7, 0.35, 0.65, 0.4, 0.6, 0.45, 0.55, 0.5} {
		x, y := b.Min.X+share*(b.Max.X-b.Min.X), b.Min.Y+share*(b.Max.Y-b.Min.Y)
		for k, out := range []float64{0.9 * h, -0.9 * h, 1.8 * h, -1.8 * h} {
			cost := 0.5*float64(i) + 3*float64(k)
			add(x, b.Max.Y+out, cost)
			add(x, b.Min.Y-out, cost)
			add(b.Max.X+out, y, cost)
			add(b.Min.X-out, y, cost)
		}
	}
	return list
}

// letterLed are places further away, with a leader to a corner or the middle of a side.
func letterLed(letter string, b plane.Box) []candidate {
	mid := middleOf(b)
	half := plane.Point{X: dimHeight, Y: dimHeight}
	var list []candidate
	for _, p := range []plane.Point{b.Min, b.Max, {X: b.Min.X, Y: b.Max.Y}, {X: b.Max.X, Y: b.Min.Y},
		{X: mid.X, Y: b.Max.Y}, {X: mid.X, Y: b.Min.Y}, {X: b.Min.X, Y: mid.Y}, {X: b.Max.X, Y: mid.Y}} {
		list = append(list, ledWays(p, half, func(middle plane.Point, cost float64) candidate {
			return wordCandidate(sheet.Text{S: letter, At: middle, Height: dimHeight, Anchor: sheet.MidCentre, Bold: true}, sheet.LayerNumbers, cost)
		})...)
	}
	return list
}

// frameSymbol is a small frame for the key.
func frameSymbol() []sheet.Item {
	return []sheet.Item{{Layer: sheet.LayerWords, Pen: sheet.PenThin, Ink: sheet.Grey, Shape: sheet.Rect(plane.Box{Min: plane.Point{X: -5, Y: -1.6}, Max: plane.Point{X: 5, Y: 1.6}})}}
}
