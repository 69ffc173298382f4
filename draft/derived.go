package draft

import (
	"brimline/fieldbook"
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// bookLine is a line as the book has it; nothing where the book does not name it.
func (j *job) bookLine(name string) fieldbook.Line {
	for _, l := range j.book.Lines {
		if l.Name == name {
			return l
		}
	}
	return fieldbook.Line{}
}

// derivedWords say what a derived line is: tile: face of the tile, 30 mm outward of rim.
func (j *job) derivedWords(o outline) string {
	t := o.name + ": "
	if o.line.Edge != "" {
		t += edgeWord(o.line.Edge) + ", "
	}
	if j.planned(o.name) {
		t += "planned, "
	}
	return t + j.step(o.line) + " of " + o.line.From
}

// step is how far a derived line runs from the other, and on which side.
func (j *job) step(l *survey.Line) string {
	switch {
	case l.Inward != nil:
		return j.fig.whole(*l.Inward) + " inward"
	case l.Outward != nil:
		return j.fig.whole(*l.Outward) + " outward"
	}
	return "beside"
}

// beside names the derived lines with an arrow, where there is room, else in the words beside the plan.
func (c *canvas) beside() {
	for _, o := range c.paper {
		if !o.derived {
			continue
		}
		c.symbols.derived = true
		if !c.put(lineWays(o, c.derivedWords(o)), crossThin) {
			c.unplaced = append(c.unplaced, "the name of "+o.name)
		}
	}
}

// lineWays are places of a line's name with an arrow to it, all along it, on both sides.
func lineWays(o outline, words string) []candidate {
	var list []candidate
	const steps = 24
	for i := 0; i < steps; i++ {
		at := along(o.path, (float64(i)+0.5)/steps)
		seg, t, _ := o.path.Nearest(at)
		out := o.outward(seg, t)
		for _, d := range []float64{9, 13, 18, 24, 31} {
			for _, a := range []float64{0, 0.5, -0.5, 1, -1} {
				cost := 0.4*d + 3*abs(a)
				list = append(list, namedLine(at, out.Turn(a), d, words, cost), namedLine(at, out.Turn(a).Mul(-1), d, words, cost+2))
			}
		}
	}
	return list
}

// namedLine sets a small text d from a place in a direction, with an arrow back to it.
func namedLine(at, dir plane.Point, d float64, words string, cost float64) candidate {
	t := sheet.Text{S: words, Height: smallHeight, Anchor: sheet.MidCentre}
	w := sheet.Width(words, smallHeight, false)
	t.At = at.Add(dir.Mul(d + reach(dir, w/2, tallHalf*smallHeight)))
	lead := sheet.Dimension{Kind: sheet.DimRadius, A: at.Add(dir.Mul(d - 1)), B: at}
	lines := append(heads(lead.Parts()), line{a: at.Add(dir.Mul(0.6)), b: lead.A, alone: true})
	return candidate{cost: cost, rooms: []room{roomOf(t, 0.5)}, lines: lines, draw: func() []sheet.Item {
		return []sheet.Item{{Layer: sheet.LayerDimensions, Pen: sheet.PenThin, Shape: lead}, {Layer: sheet.LayerDimensions, Shape: t}}
	}}
}
