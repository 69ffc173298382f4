package draft

import (
	"fmt"

	"brimline/plane"
	"brimline/sheet"
)

// titleCell is one field of the title block: a small name over its value, wide by share of the row.
type titleCell struct {
	name, value string
	share       float64
	height      float64 // of the value's lettering, 0: dimHeight
}

type titleRow struct {
	height float64
	cells  []titleCell
}

// titleBlock draws the block of a sheet: the large one on the first, a strip on the others. The
// fields are those of ISO 7200, as far as the book says them.
func (j *job) titleBlock(s sheet.Sheet, n, of int) []sheet.Item {
	page := fmt.Sprintf("%d of %d", n, of)
	if n > 1 {
		_, box := tableZones(s.Size)
		return titleRows(box, j.stripRows(s, page))
	}
	return titleRows(planZones(s.Size).title, j.blockRows(s, page))
}

func (j *job) unitsLine() string { return "all dimensions in " + j.fig.style.UnitName() }

// issued is the date of issue.
func (j *job) issued() string {
	if j.opt.Date.IsZero() {
		return none
	}
	return j.opt.Date.Format("2006-01-02")
}

// or puts a dash for what is not said.
func or(s string) string {
	if s == "" {
		return none
	}
	return s
}

func (j *job) jobName() string {
	if j.book.Job.Name != "" {
		return j.book.Job.Name
	}
	return or(j.book.Name)
}

func (j *job) program() string {
	if j.opt.Version == "" {
		return "brimline"
	}
	return "brimline " + j.opt.Version
}

func scaleOf(s sheet.Sheet) string {
	if len(s.Views) == 0 {
		return none
	}
	return s.Views[0].Scale.String()
}

// blockRows are the rows of the large block, which is 120 or 180 mm wide.
func (j *job) blockRows(s sheet.Sheet, page string) []titleRow {
	b := j.book.Job
	units := titleCell{"", j.unitsLine(), 1, dimHeight}
	name := titleCell{"job", j.jobName(), 1.7, 5}
	title := titleCell{"title", s.Title, 1.7, 0}
	ref, measured, by := titleCell{"reference", or(b.Ref), 1, 0}, titleCell{"measured on", or(b.Measured), 1, 0}, titleCell{"measured by", or(b.By), 1, 0}
	scale, paper, issued := titleCell{"scale", scaleOf(s), 1, 0}, titleCell{"paper", s.Size.Name, 0.9, 0}, titleCell{"date of issue", j.issued(), 1.2, 0}
	rev, sheetNo, drawn := titleCell{"revision", or(j.opt.Revision), 0.8, 0}, titleCell{"sheet", page, 1, 0}, titleCell{"drawn by", j.program(), 1, 0}
	if s.Size.Upright() {
		title.share, units.share = 1.4, 1.3
		return []titleRow{
			{13, []titleCell{name, units}},
			{11.5, []titleCell{title, ref, measured, by}},
			{11.5, []titleCell{scale, paper, issued, rev, sheetNo, drawn}},
		}
	}
	return []titleRow{
		{9.5, []titleCell{units}},
		{13, []titleCell{name}},
		{10.375, []titleCell{title, ref}},
		{10.375, []titleCell{measured, by}},
		{10.375, []titleCell{scale, paper, issued}},
		{10.375, []titleCell{rev, sheetNo, drawn}},
	}
}

// stripRows are the rows of the strip at the foot of the other sheets.
func (j *job) stripRows(s sheet.Sheet, page string) []titleRow {
	b := j.book.Job
	first := []titleCell{{"job", j.jobName(), 2, 0}, {"reference", or(b.Ref), 1, 0}, {"title", s.Title, 2.2, 0}}
	second := []titleCell{{"measured on", or(b.Measured), 1.1, 0}, {"date of issue", j.issued(), 1.1, 0}, {"revision", or(j.opt.Revision), 0.7, 0}, {"sheet", page, 0.8, 0}}
	units := titleCell{"units", j.fig.style.UnitName(), 1.2, 0}
	if s.Size.Upright() {
		return []titleRow{{11.5, first}, {11.5, append([]titleCell{units}, second...)}}
	}
	return []titleRow{{12, append(append(first, units), second...)}}
}

// titleRows draws rows of cells from the top of a box, with a rule over each row and between cells.
func titleRows(box plane.Box, rows []titleRow) []sheet.Item {
	thin := func(a, b plane.Point) sheet.Item {
		return sheet.Item{Layer: sheet.LayerTitle, Pen: sheet.PenThin, Shape: sheet.Line(a, b)}
	}
	items := []sheet.Item{{Layer: sheet.LayerTitle, Pen: sheet.PenEdge, Shape: sheet.Line(plane.Point{X: box.Min.X, Y: box.Max.Y}, box.Max)}}
	y := box.Max.Y
	for i, r := range rows {
		if i > 0 {
			items = append(items, thin(plane.Point{X: box.Min.X, Y: y}, plane.Point{X: box.Max.X, Y: y}))
		}
		total := 0.0
		for _, c := range r.cells {
			total += c.share
		}
		x := box.Min.X
		for k, c := range r.cells {
			w := (box.Max.X - box.Min.X) * c.share / total
			if k > 0 {
				items = append(items, thin(plane.Point{X: x, Y: y}, plane.Point{X: x, Y: y - r.height}))
			}
			items = append(items, c.draw(plane.Box{Min: plane.Point{X: x, Y: y - r.height}, Max: plane.Point{X: x + w, Y: y}})...)
			x += w
		}
		y -= r.height
	}
	return items
}

// draw sets the name small at the head of the cell and the value at its foot, smaller where it
// would not fit and cut with an ellipsis where even that is too wide.
func (c titleCell) draw(box plane.Box) []sheet.Item {
	h := c.height
	if h == 0 {
		h = dimHeight
	}
	room := box.Max.X - box.Min.X - 4
	value := sheet.Clean(c.value)
	for _, smaller := range []float64{dimHeight, smallHeight} {
		if h > smaller && sheet.Width(value, h, true) > room {
			h = smaller
		}
	}
	value = cut(value, h, room)
	at := plane.Point{X: box.Min.X + 2, Y: box.Min.Y + 1.7}
	if c.name == "" {
		at.Y = (box.Min.Y + box.Max.Y - h) / 2
	}
	items := []sheet.Item{{Layer: sheet.LayerTitle, Shape: sheet.Text{S: value, At: at, Height: h, Bold: true}}}
	if c.name != "" {
		items = append(items, sheet.Item{Layer: sheet.LayerTitle, Ink: sheet.Grey, Shape: sheet.Text{
			S: c.name, At: plane.Point{X: box.Min.X + 2, Y: box.Max.Y - 1.6 - smallHeight}, Height: smallHeight}})
	}
	return items
}

// cut shortens a text to a width, with an ellipsis for what is gone.
func cut(s string, h, width float64) string {
	if sheet.Width(s, h, true) <= width {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && sheet.Width(string(r)+"…", h, true) > width {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}
