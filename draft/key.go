package draft

import (
	"slices"
	"strconv"

	"brimline/plane"
	"brimline/sheet"
)

// keySymbols says which symbols stand on the plan.
type keySymbols struct {
	mark, peg, benchmark, tangent, kink, centre, ellipse, inferred, ties, other bool
	next, edge, soft, derived, corner, detail                                   bool
	odd                                                                         []string // states of readings that stand out
	baseline                                                                    string
	tooLarge                                                                    []string // marks whose ellipse is too large to draw
}

// keyLine is a symbol with its words.
type keyLine struct {
	draw  func(at plane.Point) []sheet.Item
	words string
}

// keyRow is the height of a line of the key; keyTogether how many stay together at its head and its
// end where it is parted over columns.
const (
	keyRow      = 5.0
	keyTogether = 4
)

// key explains the symbols that stand on the plan, and no others.
func (c *canvas) key(width float64) []row {
	var rows []row
	for _, l := range c.keyLines() {
		rows = append(rows, keyRows(l, width)...)
	}
	if len(rows) == 0 {
		return nil
	}
	for i := range rows[:len(rows)-1] {
		rows[i].joined = rows[i].joined || i+1 < keyTogether || i+keyTogether >= len(rows)
	}
	return append(heading("Key", width), rows...)
}

// keyRows are a symbol and its words beside it.
func keyRows(l keyLine, width float64) []row {
	var rows []row
	wrapped := sheet.Wrap(glued(l.words), smallHeight, false, width-16)
	for i, text := range wrapped {
		r := textRow(text, smallHeight, false)
		set, symbol := r.draw, l.draw
		first := i == 0
		r.height = keyRow
		r.joined = i+1 < len(wrapped)
		r.draw = func(at plane.Point) []sheet.Item {
			items := set(at.Add(plane.Point{X: 16, Y: -0.3}))
			if first {
				items = append(symbol(at.Add(plane.Point{X: 6, Y: -2.2})), items...)
			}
			return items
		}
		rows = append(rows, r)
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
	ellipse := sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenHair, Shape: sheet.Ellipse{A: 4, B: 1.6, Turn: 0.3}}
	add(s.ellipse, "error ellipse: the mark lies inside with 95 % probability; drawn "+c.enlargement("the plan"), ellipse)
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
	add(s.edge, "edge", stroke(sheet.PenEdge))
	add(s.inferred, "edge that nobody touched, inferred", stroke(sheet.PenInferred))
	add(s.soft, "soft edge, that has no sharp line", stroke(sheet.PenSoft))
	add(s.derived, "line derived from the edge by a stated step", stroke(sheet.PenThin))
	add(s.corner, "corner that could not be reached", cornerSymbol(plane.Point{})...)
	add(s.detail, "part drawn larger, with the letter of its detail", frameSymbol()...)
	add(s.ties, "reading between two marks", sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenHair, Ink: sheet.Grey, Shape: stroke(sheet.PenHair).Shape})
	for _, o := range oddKeys {
		add(slices.ContainsFunc(o.states, func(w string) bool { return slices.Contains(s.odd, w) }), o.words, o.items()...)
	}
	add(s.next, "reading proposed next", longDashes()...)
	add(s.other, "another place that the readings allow", open)
	return out
}

// oddKey explains the readings that stand out and look alike.
type oddKey struct {
	states []string
	words  string
}

// oddKeys are all of them.
var oddKeys = []oddKey{
	{[]string{"suspect", "disagrees"}, "a mistake shows in this reading, or this check disagrees"},
	{[]string{"doubtful"}, "one of several such readings is wrong"},
	{[]string{"agrees"}, "check reading that agrees"},
}

// longDashes are two strokes of the pen of the reading proposed next, about the origin.
func longDashes() []sheet.Item {
	a, b := stroke(sheet.PenEdge), stroke(sheet.PenEdge)
	a.Shape = sheet.Line(plane.Point{X: -6}, plane.Point{X: -0.75})
	b.Shape = sheet.Line(plane.Point{X: 0.75}, plane.Point{X: 6})
	return []sheet.Item{a, b}
}

// items are the line with the shape of the state in its middle, about the origin.
func (o oddKey) items() []sheet.Item {
	l := look(o.states[0])
	s := stroke(sheet.PenUnder)
	s.Ink = l.ink
	if o.states[0] == "agrees" {
		s.Pen, s.Ink = sheet.PenHair, sheet.Grey
	}
	ground := sheet.Item{Fill: sheet.Filled(sheet.White), Shape: sheet.Rect(grow(plane.BoundsOf(plane.Point{}), labelShape/2+0.5))}
	return append([]sheet.Item{s, ground}, l.symbol.Draw(sheet.LayerWords, l.ink, plane.Point{X: -labelShape / 2, Y: -labelShape / 2}, labelShape)...)
}

// enlargement says the exaggeration of the ellipses in words: 20 times larger than the plan.
func (c *canvas) enlargement(than string) string {
	if c.factor == 1 {
		return "at the scale of the plan"
	}
	t := strconv.FormatFloat(c.factor, 'f', -1, 64) + " times larger"
	if than != "" {
		t += " than " + than
	}
	return t
}

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
