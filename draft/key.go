package draft

import (
	"strconv"

	"brimline/plane"
	"brimline/sheet"
)

// keySymbols says which symbols stand on the plan.
type keySymbols struct {
	mark, peg, benchmark, tangent, kink, centre, ellipse, inferred, ties, other bool
	baseline                                                                    string
	tooLarge                                                                    []string // marks whose ellipse is too large to draw
}

// keyLine is a symbol with its words.
type keyLine struct {
	draw  func(at plane.Point) []sheet.Item
	words string
}

// key explains the symbols that stand on the plan, and no others.
func (c *canvas) key(width float64) []row {
	lines := c.keyLines()
	if len(lines) == 0 {
		return nil
	}
	rows := heading("Key", width)
	for k, l := range lines {
		wrapped := sheet.Wrap(glued(l.words), smallHeight, false, width-16)
		for i, text := range wrapped {
			r := textRow(text, smallHeight, false)
			set, symbol := r.draw, l.draw
			first := i == 0
			r.height = 5
			r.joined = i+1 < len(wrapped) || k+1 < len(lines)
			r.draw = func(at plane.Point) []sheet.Item {
				items := set(at.Add(plane.Point{X: 16, Y: -0.3}))
				if first {
					items = append(symbol(at.Add(plane.Point{X: 6, Y: -2.2})), items...)
				}
				return items
			}
			rows = append(rows, r)
		}
	}
	return rows
}

func (c *canvas) keyLines() []keyLine {
	s := c.symbols
	var out []keyLine
	add := func(there bool, words string, items ...sheet.Item) {
		if there {
			out = append(out, keyLine{moved(items), words})
		}
	}
	dot := sheet.Item{Layer: sheet.LayerWords, Fill: sheet.Filled(sheet.Black), Shape: sheet.Circle{R: dotR}}
	open := sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenThin, Fill: sheet.Filled(sheet.White), Shape: sheet.Circle{R: openR}}
	add(s.mark, "mark on the edge, with its number outside the pool", dot)
	add(s.peg, "peg", pegSymbol(plane.Point{})...)
	add(s.benchmark, "lasting mark", benchmarkSymbol(plane.Point{Y: -1})...)
	switch {
	case s.tangent && s.kink:
		add(true, "two runs meet: tangent, or in a corner where an angle is written (inside angle)", open)
	case s.tangent:
		add(true, "two runs meet: tangent", open)
	case s.kink:
		add(true, "two runs meet in a corner, with its inside angle", open)
	}
	add(s.centre, "centre of an arc", plus()...)
	add(s.baseline != "", "baseline "+s.baseline, stroke(sheet.PenAxis))
	add(len(c.paper) > 0, "edge", stroke(sheet.PenEdge))
	add(s.inferred, "edge that nobody touched, inferred", stroke(sheet.PenInferred))
	add(s.ties, "reading between two marks", sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenHair, Ink: sheet.Grey, Shape: stroke(sheet.PenHair).Shape})
	add(s.other, "another place that the readings allow", open)
	ellipse := sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenHair, Shape: sheet.Ellipse{A: 4, B: 1.6, Turn: 0.3}}
	add(s.ellipse, "error ellipse: the mark lies inside with 95 % probability; drawn "+c.times()+" larger than the plan", ellipse)
	return out
}

// times says the exaggeration of the ellipses in words.
func (c *canvas) times() string { return strconv.FormatFloat(c.factor, 'f', -1, 64) + " times" }

// stroke is a short piece of a pen's line about the origin.
func stroke(p sheet.Pen) sheet.Item {
	return sheet.Item{Layer: sheet.LayerWords, Pen: p, Shape: sheet.Line(plane.Point{X: -6}, plane.Point{X: 6})}
}

func plus() []sheet.Item {
	a := stroke(sheet.PenThin)
	a.Shape = sheet.Line(plane.Point{X: -1.5}, plane.Point{X: 1.5})
	b := stroke(sheet.PenThin)
	b.Shape = sheet.Line(plane.Point{Y: -1.5}, plane.Point{Y: 1.5})
	return []sheet.Item{a, b}
}

// moved shifts symbols drawn about the origin to their place, all on the layer of words.
func moved(items []sheet.Item) func(plane.Point) []sheet.Item {
	return func(at plane.Point) []sheet.Item {
		out := make([]sheet.Item, 0, len(items))
		for _, it := range items {
			switch s := it.Shape.(type) {
			case sheet.Circle:
				s.Centre = s.Centre.Add(at)
				it.Shape = s
			case sheet.Ellipse:
				s.Centre = s.Centre.Add(at)
				it.Shape = s
			case sheet.Path:
				it.Shape = sheet.Path{Path: s.Move(plane.Turned(0, at))}
			}
			it.Layer = sheet.LayerWords
			out = append(out, it)
		}
		return out
	}
}
