package draft

import (
	"math"

	"brimline/plane"
	"brimline/sheet"
)

// markTable lists the places of all marks. The column x + y is the sum of the two printed figures,
// for whoever types them again.
func (j *job) markTable() listing {
	u, lu := j.fig.smallUnit(), j.fig.lengthUnit()
	l := listing{
		title: "Marks",
		columns: []sheet.Column{
			column(sheet.Start, "", "mark"), column(sheet.End, lu, "x"), column(sheet.End, lu, "y"), column(sheet.End, lu, "x + y"),
			column(sheet.End, u, "sd x"), column(sheet.End, u, "sd y"), column(sheet.End, u, "ellipse", "long"), column(sheet.End, u, "ellipse", "short"),
			column(sheet.End, "", "long axis", "at"), column(sheet.End, u, "could", "hide"), column(sheet.Start, "", "a mistake", "would show"),
		},
		after: []string{j.datum(), "Marks: ellipse, half axes of the 95 % region, relative to the origin and the baseline; long axis clockwise from +y. " +
			"Could hide: how far the mark may move by an error in one reading that the tests miss. x + y is there to check what is typed again."},
	}
	for _, m := range j.marks {
		if p, ok := j.place(m); ok {
			l.rows = append(l.rows, j.markRow(m, p))
		}
	}
	return l
}

// datum says what the coordinates hang on.
func (j *job) datum() string {
	pegs := j.pegs()
	if len(pegs) < 2 {
		return "x to the right, y up the sheet."
	}
	return "x to the right, y up the sheet; " + pegs[0] + " and " + pegs[1] + " give the place and the direction of the figure."
}

func (j *job) markRow(name string, p plane.Point) []sheet.Cell {
	m := j.result.Marks[name]
	step := j.fig.style.Step()
	sum := math.Round(p.X/step)*step + math.Round(p.Y/step)*step
	long, short, at := none, none, none
	if e := m.Ellipse95; e != nil && e.Major > 0 {
		long, short, at = j.fig.small(e.Major), j.fig.small(e.Minor), bearing(e.Bearing)
	}
	row := cells(name, j.fig.length(p.X), j.fig.length(p.Y), j.fig.length(sum), j.fig.smallRef(m.SX), j.fig.smallRef(m.SY), long, short, at, j.fig.smallRef(m.Hidden))
	shows := sheet.Cell{Text: "yes"}
	switch {
	case m.Ellipse95 == nil || m.Ellipse95.Major == 0:
		shows.Text = none
	case !m.Controlled:
		shows = sheet.Cell{Text: "no", Symbol: sheet.HalfSquare, Ink: sheet.Open}
	}
	return append(row, shows)
}
