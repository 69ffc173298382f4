package sheet

import "brimline/plane"

// Table is rows of cells under fixed columns. At is its upper left corner. Every row is as high as
// Row; the header has as many rows as the longest column title has lines.
type Table struct {
	Columns []Column
	Rows    [][]Cell
	At      plane.Point
	Height  float64 // of the lettering
	Row     float64
}

// Column is as wide as Width, with its title in Title, one entry a line, and its unit under it.
type Column struct {
	Title []string
	Unit  string
	Width float64
	Align Align
}

// lines of the head: the title and the unit.
func (c Column) lines() []string {
	if c.Unit == "" {
		return c.Title
	}
	return append(append([]string(nil), c.Title...), c.Unit)
}

// Cell is one figure or word. Symbol stands before the text.
type Cell struct {
	Text   string
	Bold   bool
	Struck bool
	Ink    Ink
	Symbol Symbol
}

// cellPad is the room left and right inside a column.
const cellPad = 1.5

// Fitted widens the columns to what stands in them and in their titles, at the lettering height h.
func Fitted(columns []Column, rows [][]Cell, h float64) []Column {
	out := append([]Column(nil), columns...)
	for i := range out {
		for _, t := range out[i].lines() {
			out[i].Width = max(out[i].Width, Width(t, h, true)+2*cellPad)
		}
		for _, r := range rows {
			if i < len(r) {
				out[i].Width = max(out[i].Width, r[i].width(h)+2*cellPad)
			}
		}
	}
	return out
}

func (c Cell) width(h float64) float64 {
	w := Width(Clean(c.Text), h, c.Bold)
	if c.Symbol != NoSymbol {
		w += 1.9 * h
	}
	return w
}

// Width is the sum of the columns.
func (t Table) Width() float64 {
	w := 0.0
	for _, c := range t.Columns {
		w += c.Width
	}
	return w
}

// Head is the height of the header.
func (t Table) Head() float64 {
	n := 1
	for _, c := range t.Columns {
		n = max(n, len(c.lines()))
	}
	return float64(n)*1.6*t.Height + 0.6*t.Height
}

// Depth is the height of the whole.
func (t Table) Depth() float64 { return t.Head() + float64(len(t.Rows))*t.Row }

func (t Table) flat(it Item) []Item {
	w := t.Width()
	top, foot := t.At.Y, t.At.Y-t.Head()
	out := []Item{t.rule(it, PenThin, top, w), t.rule(it, PenThin, foot, w)}
	out = append(out, t.header(it, foot)...)
	for i, r := range t.Rows {
		y := foot - float64(i)*t.Row
		x := t.At.X
		for k, c := range t.Columns {
			if k < len(r) {
				out = append(out, t.cell(it, r[k], c, x, y-t.Row/2)...)
			}
			x += c.Width
		}
		pen := PenHair
		if i == len(t.Rows)-1 {
			pen = PenThin
		}
		out = append(out, t.rule(it, pen, y-t.Row, w))
	}
	return out
}

func (t Table) rule(it Item, pen Pen, y, w float64) Item {
	ink := it.Ink
	if pen == PenHair {
		ink = Grey
	}
	return Item{Layer: it.Layer, Pen: pen, Ink: ink, Shape: Line(plane.Point{X: t.At.X, Y: y}, plane.Point{X: t.At.X + w, Y: y})}
}

// header sets the titles with their last lines level with each other.
func (t Table) header(it Item, foot float64) []Item {
	var out []Item
	x := t.At.X
	for _, c := range t.Columns {
		lines := c.lines()
		for i, line := range lines {
			y := foot + 0.7*t.Height + float64(len(lines)-1-i)*1.6*t.Height
			text := Text{S: line, At: plane.Point{X: c.anchor(x), Y: y}, Height: t.Height, Anchor: Anchor{c.Align, Start}, Bold: i < len(c.Title)}
			out = append(out, it.with(text).flat()...)
		}
		x += c.Width
	}
	return out
}

// anchor is where the texts of a column that begins at x stand.
func (c Column) anchor(x float64) float64 {
	switch c.Align {
	case Middle:
		return x + c.Width/2
	case End:
		return x + c.Width - cellPad
	}
	return x + cellPad
}

func (t Table) cell(it Item, c Cell, col Column, x, middle float64) []Item {
	var out []Item
	at := plane.Point{X: col.anchor(x), Y: middle - t.Height/2}
	if c.Symbol != NoSymbol {
		out = append(out, c.Symbol.Draw(it.Layer, c.Ink, plane.Point{X: at.X, Y: middle - 0.45*t.Height}, 0.9*t.Height)...)
		at.X += 1.9 * t.Height
	}
	ink := c.Ink
	if c.Symbol != NoSymbol {
		ink = Black
	}
	text := Text{S: c.Text, At: at, Height: t.Height, Anchor: Anchor{col.Align, Start}, Bold: c.Bold, Struck: c.Struck}
	return append(out, Item{Layer: it.Layer, Ink: ink, Shape: text}.flat()...)
}
