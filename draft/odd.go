package draft

import (
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// overOdd is the cost of a text on the line of a reading that a person should look at.
const overOdd = 8.0

// stands says that the readings of a state stand out of the others on the plan.
func stands(state string) bool {
	switch state {
	case "suspect", "doubtful", "agrees", "disagrees":
		return true
	}
	return false
}

// oddTie is such a reading with its ends on paper.
type oddTie struct {
	survey.Reading
	a, b plane.Point
}

// oddTies are those between two marks that have a place.
func (c *canvas) oddTies() []oddTie {
	var out []oddTie
	for _, r := range c.result.Readings {
		if !stands(r.State) || !straightOf(r) {
			continue
		}
		a, okA := c.at(r.Marks[0])
		b, okB := c.at(r.Marks[1])
		if okA && okB && a.Dist(b) > 2*pegR {
			out = append(out, oddTie{r, a, b})
		}
	}
	return out
}

// straightOf says that a reading is of the straight between two marks.
func straightOf(r survey.Reading) bool { return len(r.Marks) == 2 && r.Setup == "" && r.Line == "" }

// oddLines draws them: broken in the colour of their state where a mistake shows, whole and grey
// where a check agrees.
func (c *canvas) oddLines() {
	for _, t := range c.oddTies() {
		c.field.line(t.a, t.b, overOdd, 0)
		item := sheet.Item{Layer: sheet.LayerReadings, Pen: sheet.PenUnder, Ink: look(t.State).ink, Shape: sheet.Line(t.a, t.b)}
		if t.State == "agrees" {
			item.Pen, item.Ink = sheet.PenHair, sheet.Grey
		}
		c.draw(item)
		c.symbols.odd = addWord(c.symbols.odd, t.State)
	}
}

// oddWords label them with number, word and shape; readings of other kinds beside their mark.
func (c *canvas) oddWords() {
	for _, t := range c.oddTies() {
		if !c.put(c.oddWays(t), 0) {
			c.unplaced = append(c.unplaced, "reading "+t.N)
		}
	}
	for _, r := range c.result.Readings {
		m, ok := oddMark(r)
		p, placed := c.at(m)
		if !ok || !placed {
			continue
		}
		c.symbols.odd = addWord(c.symbols.odd, r.State)
		if !c.put(c.besideWays(p, r), crossThin) {
			c.unplaced = append(c.unplaced, "reading "+r.N)
		}
	}
}

// oddMark is the mark beside which a reading is labelled that is no line between two marks.
func oddMark(r survey.Reading) (string, bool) {
	if !stands(r.State) || len(r.Marks) == 0 || straightOf(r) {
		return "", false
	}
	switch r.Kind {
	case "offset", "seen":
		return r.Marks[0], true
	case "turn":
		return r.Marks[len(r.Marks)-1], true
	}
	return r.Marks[len(r.Marks)/2], true
}

// oddWays are the places of a label: on its line, which then costs nothing, its middle first; beside
// it; further away with a leader.
func (c *canvas) oddWays(t oddTie) []candidate {
	across := t.b.Sub(t.a).Unit().Left()
	off := abs(across.X)*c.labelWidth(t.Reading)/2 + abs(across.Y)*smallHeight/2 + 1.2
	var list, led []candidate
	for i, share := range []float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.12, 0.88} {
		at := plane.Lerp(t.a, t.b, share)
		cost := float64(i)
		list = append(list, c.stateLabel(t.Reading, at, cost-overOdd), c.stateLabel(t.Reading, at.Add(across.Mul(off)), cost+1.5), c.stateLabel(t.Reading, at.Sub(across.Mul(off)), cost+1.5))
		for _, l := range c.besideWays(at, t.Reading) {
			l.cost += cost + 10
			led = append(led, l)
		}
	}
	return append(list, led...)
}

// besideWays are the places of a label round a mark, with a leader.
func (c *canvas) besideWays(p plane.Point, r survey.Reading) []candidate {
	half := plane.Point{X: c.labelWidth(r) / 2, Y: smallHeight}
	return ledWays(p, half, func(middle plane.Point, cost float64) candidate { return c.stateLabel(r, middle, cost) })
}

// ledWays are the places of a label of a half width and height round a point, with a leader to it.
func ledWays(p, half plane.Point, label func(middle plane.Point, cost float64) candidate) []candidate {
	var list []candidate
	for _, d := range []float64{4, 7, 10, 14, 18, 23, 29, 36, 44} {
		for _, turn := range round() {
			dir := plane.Point{Y: 1}.Turn(turn)
			l := label(p.Add(dir.Mul(d+reach(dir, half.X, half.Y))), 0.4*d)
			lead := line{p.Add(dir.Mul(1.1)), p.Add(dir.Mul(d - 0.5)), true}
			draw := l.draw
			l.lines = []line{lead}
			l.draw = func() []sheet.Item {
				return append(draw(), sheet.Item{Layer: sheet.LayerNumbers, Pen: sheet.PenHair, Shape: sheet.Line(lead.a, lead.b)})
			}
			list = append(list, l)
		}
	}
	return list
}

// Sizes of a state's label in millimetres: its shape, and the gap to its words.
const (
	labelShape = 2.2
	labelGap   = 1.1
)

// labelText is what stands beside the shape: the number of the reading and the word.
// Of a check also by how much it is off.
func (j *job) labelText(r survey.Reading) string {
	t := r.N + " " + r.State
	if r.Residual != nil && (r.State == "agrees" || r.State == "disagrees") {
		t += ", off " + j.fig.of(r.Kind).whole(abs(*r.Residual))
	}
	return t
}

func (j *job) labelWidth(r survey.Reading) float64 {
	return labelShape + labelGap + sheet.Width(j.labelText(r), smallHeight, false)
}

// stateLabel is the label about a middle.
func (c *canvas) stateLabel(r survey.Reading, middle plane.Point, cost float64) candidate {
	l := look(r.State)
	foot := middle.Sub(plane.Point{X: c.labelWidth(r) / 2, Y: labelShape / 2})
	text := sheet.Text{S: c.labelText(r), At: plane.Point{X: foot.X + labelShape + labelGap, Y: middle.Y}, Height: smallHeight, Anchor: sheet.MidLeft}
	patch := roomOf(text, 0.6)
	patch[0].X, patch[3].X = foot.X-1, foot.X-1
	return candidate{rooms: []room{patch}, cost: cost, draw: func() []sheet.Item {
		clear := sheet.Item{Layer: sheet.LayerReadings, Fill: sheet.Filled(sheet.White), Shape: sheet.Polyline(true, patch[:]...)}
		return append(append([]sheet.Item{clear}, l.symbol.Draw(sheet.LayerWords, l.ink, foot, labelShape)...),
			sheet.Item{Layer: sheet.LayerWords, Shape: text})
	}}
}

// addWord adds a word to a list once.
func addWord(list []string, word string) []string {
	for _, w := range list {
		if w == word {
			return list
		}
	}
	return append(list, word)
}
