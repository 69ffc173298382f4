package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// heightSheets are the sheets of depths, sections and levels, in that order: what is cut from first.
func (j *job) heightSheets(h Heights) []sheet.Sheet {
	p := &pages{job: j}
	if h.Depths != nil {
		p.depthPlan(h.Depths)
		p.add(j.depthTable(h.Depths))
		if l := j.stageTable(h.Depths); len(l.rows) > 0 {
			p.addWhole(l)
		}
		p.sections(h.Depths)
	}
	if h.Levels != nil && len(h.Levels.Profiles) > 0 {
		p.levels(h.Levels)
	}
	return p.sheets
}

// levels draws a profile of each line, then the tables.
func (p *pages) levels(v *Levels) {
	first := len(p.sheets)
	p.newPage()
	p.name("Levels")
	for _, x := range v.Profiles {
		if len(x.Stations) == 0 {
			continue
		}
		c, deep := p.newProfileChart(x, p.free)
		if deep > p.free.Max.Y-p.free.Min.Y && p.free.Max.Y < p.top() {
			p.newPage()
			p.name("Levels")
			c, deep = p.newProfileChart(x, p.free)
		}
		c.compose()
		p.take(c.items, deep+4)
	}
	rows := listed(p.levelWords(v), smallHeight, wordColumn)
	p.besideOrUnder(rows, wordColumn)
	for _, l := range []listing{p.loopTable(v), p.waterTable(v), p.stationTable(v)} {
		if len(l.rows) > 0 {
			p.addWhole(l)
		}
	}
	for i := first; i < len(p.sheets); i++ {
		p.sheets[i].Title = "Levels"
	}
}

// addWhole sets a table that does not go in whole under what stands there into the next strip, where that
// takes it.
func (p *pages) addWhole(l listing) {
	t := sheet.Table{Columns: sheet.Fitted(l.columns, l.rows, tableText), Rows: l.rows, Height: tableText, Row: tableRow}
	need := tableHead + t.Depth() + 4 + 3*linePitch*tableText*float64(len(l.after))
	next := p.at.X + p.wide + stripGap
	if p.wide > 0 && p.at.Y-need < p.free.Min.Y && p.free.Max.Y-need >= p.free.Min.Y && next+t.Width() <= p.free.Max.X {
		p.at, p.wide = plane.Point{X: next, Y: p.free.Max.Y}, 0
	}
	p.add(l)
}

// wordColumn is the width of columns of words on these sheets.
const wordColumn = 112.0

// top of what is free on a fresh sheet.
func (p *pages) top() float64 {
	free, _ := tableZones(p.size)
	return shrink(free, 5).Max.Y
}

// take puts items at the head of what is free and moves it down.
func (p *pages) take(items []sheet.Item, deep float64) {
	s := &p.sheets[len(p.sheets)-1]
	s.Items = append(s.Items, items...)
	p.free.Max.Y -= deep
	p.at = plane.Point{X: p.free.Min.X, Y: p.free.Max.Y}
	p.wide = 0
}

// besideOrUnder sets rows of words at the cursor as the first strip; tables follow beside them.
func (p *pages) besideOrUnder(rows []row, width float64) {
	for len(rows) > 0 {
		if p.free.Max.Y-p.free.Min.Y < 20 {
			p.newPage()
			p.name("Levels")
		}
		items, deep, left := pour(rows, plane.Box{Min: plane.Point{X: p.at.X, Y: p.free.Min.Y}, Max: plane.Point{X: p.at.X + width, Y: p.at.Y}})
		s := &p.sheets[len(p.sheets)-1]
		s.Items = append(s.Items, items...)
		p.at.Y -= deep + 6
		p.wide = width
		if rows = left; len(rows) > 0 {
			p.newPage()
			p.name("Levels")
		}
	}
}
