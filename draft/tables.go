package draft

import (
	"strconv"

	"brimline/plane"
	"brimline/sheet"
)

// Lettering and row height of tables in millimetres.
const (
	tableText = smallHeight
	tableRow  = 5.0
	tableHead = 9.0 // its title
)

// listing is a table before it is dealt out over sheets, with what stands under its end.
type listing struct {
	title   string
	columns []sheet.Column
	rows    [][]sheet.Cell
	after   []string
}

// tableSheets deals the tables out over as many sheets as they take, side by side where the paper
// is wide enough. A table that goes on repeats its header.
// Words that found no room on the plan come first.
func (j *job) tableSheets(left []row, width float64) []sheet.Sheet {
	p := &pages{job: j}
	p.words(left, width)
	for _, l := range []listing{j.checkTable(), j.runTable(), j.tieTable(), j.markTable()} {
		if len(l.rows) > 0 {
			p.add(l)
		}
	}
	return p.sheets
}

// pages fills sheets from the left: the cursor is the upper left corner of what is free.
type pages struct {
	*job
	sheets []sheet.Sheet
	free   plane.Box
	at     plane.Point
	wide   float64 // of the strip being filled
	titles []string
}

// Gaps between tables and between columns of words side by side, in millimetres.
const (
	stripGap = 9.0
	wordGap  = 4.0
)

// newPage begins a sheet.
func (p *pages) newPage() {
	free, _ := tableZones(p.size)
	p.free = shrink(free, 5)
	p.at = plane.Point{X: p.free.Min.X, Y: p.free.Max.Y}
	p.wide = 0
	p.titles = nil
	p.sheets = append(p.sheets, sheet.Sheet{Size: p.size, Items: p.size.Frame()})
}

// add sets a table, in as many strips as it takes.
func (p *pages) add(l listing) {
	columns := sheet.Fitted(l.columns, l.rows, tableText)
	t := sheet.Table{Columns: columns, Height: tableText, Row: tableRow}
	rows, part := l.rows, 0
	for len(rows) > 0 {
		n := p.room(t, len(rows))
		title := l.title
		if part > 0 {
			title += " (continued)"
		}
		p.name(l.title)
		t.Rows = rows[:n]
		p.set(t, title)
		rows = rows[n:]
		part++
	}
	p.under(l.after)
}

// words sets rows of words in columns as wide as their lines, side by side as far as they fill
// more than a few lines.
func (p *pages) words(rows []row, width float64) {
	if len(rows) > 0 && !rows[0].head {
		rows = append(heading("Notes to the plan", width), rows...)
	}
	for len(rows) > 0 {
		p.newPage()
		p.name("Notes")
		beside := max(1, int((p.free.Max.X-p.free.Min.X+wordGap)/(width+wordGap)))
		depth := columnDepth(rows, beside, p.free.Max.Y-p.free.Min.Y)
		used := 0.0
		for i := 0; i < beside && len(rows) > 0; i++ {
			x := p.free.Min.X + float64(i)*(width+wordGap)
			box := plane.Box{Min: plane.Point{X: x, Y: p.free.Max.Y - depth}, Max: plane.Point{X: x + width, Y: p.free.Max.Y}}
			items, deep, left := pour(rows, box)
			p.sheets[len(p.sheets)-1].Items = append(p.sheets[len(p.sheets)-1].Items, items...)
			used, rows = max(used, deep), left
		}
		p.free.Max.Y -= used + 8
		p.at.Y = p.free.Max.Y
	}
}

// columnDepth is the least depth of so many columns that takes all the rows, up to most; fewer
// columns than offered when the rows are few.
func columnDepth(rows []row, columns int, most float64) float64 {
	const few = 45.0
	for depth := min(few, most); depth < most; depth += 5 {
		left := rows
		for i := 0; i < columns && len(left) > 0; i++ {
			_, _, left = pour(left, plane.Box{Max: plane.Point{X: 1, Y: depth}})
		}
		if len(left) == 0 {
			return depth
		}
	}
	return most
}

// least is the fewest rows that begin a table.
const least = 4

// room makes room for at least the beginning of a table and gives the rows that go in: under what
// stands there, else in a new strip to the right, else on a new sheet.
func (p *pages) room(t sheet.Table, rows int) int {
	if len(p.sheets) == 0 {
		p.newPage()
	}
	fits := func() int {
		return int((p.at.Y - p.free.Min.Y - tableHead - t.Head()) / tableRow)
	}
	if p.at.Y < p.free.Max.Y && fits() < min(rows, least) || p.wide > 0 && p.at.X+t.Width() > p.free.Max.X {
		p.at = plane.Point{X: p.at.X + p.wide + stripGap, Y: p.free.Max.Y}
		p.wide = 0
	}
	if p.at.X > p.free.Min.X && p.at.X+t.Width() > p.free.Max.X {
		p.newPage()
	}
	return max(1, min(rows, fits()))
}

// set draws a piece of a table at the cursor and moves it down.
func (p *pages) set(t sheet.Table, title string) {
	back := p.at.X
	if over := t.Width() - (p.free.Max.X - p.free.Min.X); over > 0 { // into both margins alike
		p.at.X -= over / 2
	}
	p.draw(sheet.Item{Layer: sheet.LayerTables, Shape: sheet.Text{
		S: title, At: p.at.Sub(plane.Point{Y: 1.4 * dimHeight}), Height: dimHeight, Bold: true}})
	t.At = p.at.Sub(plane.Point{Y: tableHead})
	p.draw(sheet.Item{Layer: sheet.LayerTables, Shape: t})
	p.at.X = back
	p.at.Y -= tableHead + t.Depth() + 4
	p.wide = max(p.wide, t.Width())
}

// under writes sentences under a table, as wide as it is.
func (p *pages) under(sentences []string) {
	width := min(max(p.wide, 60), p.free.Max.X-p.free.Min.X)
	for _, s := range sentences {
		for _, l := range sheet.Wrap(glued(sheet.Clean(s)), tableText, false, width) {
			if p.at.Y-linePitch*tableText < p.free.Min.Y {
				p.at = plane.Point{X: p.at.X + p.wide + stripGap, Y: p.free.Max.Y}
				if p.at.X+width > p.free.Max.X {
					p.newPage()
				}
				p.wide = width
			}
			p.draw(sheet.Item{Layer: sheet.LayerTables, Shape: sheet.Text{S: l, At: p.at.Sub(plane.Point{Y: 1.25 * tableText}), Height: tableText}})
			p.at.Y -= linePitch * tableText
		}
	}
	p.at.Y -= 5
}

func (p *pages) draw(it sheet.Item) {
	s := &p.sheets[len(p.sheets)-1]
	s.Items = append(s.Items, it)
}

// name adds a table to the title of the sheet.
func (p *pages) name(title string) {
	for _, t := range p.titles {
		if t == title {
			return
		}
	}
	p.titles = append(p.titles, title)
	text := ""
	if len(p.titles) == 1 {
		text = title
	} else {
		text = p.titles[0]
		for _, t := range p.titles[1:] {
			text += ", " + lower(t)
		}
	}
	p.sheets[len(p.sheets)-1].Title = text
}

func lower(s string) string { return string(s[0]|0x20) + s[1:] }

// column with its unit, "" for none, and a title in lines.
func column(align sheet.Align, unit string, title ...string) sheet.Column {
	return sheet.Column{Title: title, Unit: unit, Align: align}
}

// cells are plain texts.
func cells(texts ...string) []sheet.Cell {
	out := make([]sheet.Cell, len(texts))
	for i, t := range texts {
		out[i].Text = t
	}
	return out
}

func itoa(n int) string { return strconv.Itoa(n) }
