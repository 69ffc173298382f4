package draft

import (
	"math"

	"brimline/sheet"
	"brimline/survey"
)

// checkTable sets the check readings beside what the other readings say: measured, computed, their
// difference, the standard deviation expected of it, and the ratio of both.
func (j *job) checkTable() listing {
	u := j.fig.smallUnit()
	l := listing{
		title: "Checks",
		columns: []sheet.Column{
			column(sheet.End, "", "no."), column(sheet.Start, "", "kind"), column(sheet.Start, "", "from"), column(sheet.Start, "", "to"),
			column(sheet.End, "", "measured"), column(sheet.End, j.fig.lengthUnit(), "computed"), column(sheet.End, u, "difference"),
			column(sheet.End, u, "expected", "sd"), column(sheet.End, "", "ratio"), column(sheet.Start, "", "state"),
		},
		after: []string{"Checks move nothing: computed is what the other readings say, difference = computed less measured, and the expected standard deviation " +
			"is that of the check and of the computed figure together. A check agrees up to 3.29 times that."},
	}
	for _, r := range j.result.Readings {
		if r.State == "agrees" || r.State == "disagrees" {
			l.rows = append(l.rows, j.checkRows(r)...)
		}
	}
	return l
}

func (j *job) checkRows(r survey.Reading) [][]sheet.Cell {
	from, to := readingEnds(r)
	row := func(kind string, p survey.Part) []sheet.Cell {
		f := j.fig.of(r.Kind)
		line := cells(r.N, kind, from, to, j.asRead(r, p), f.ref(p.Adjusted), f.smallRef(p.Residual), f.smallRef(expected(p)), plain(p.W, 2))
		return append(line, stateCell(r.State))
	}
	if len(r.Parts) == 0 {
		return [][]sheet.Cell{row(r.Kind, whole(r))}
	}
	var rows [][]sheet.Cell
	for _, p := range r.Parts {
		rows = append(rows, row(r.Kind+" "+p.Part, p))
	}
	return rows
}

// whole is a reading of one value as its only part.
func whole(r survey.Reading) survey.Part {
	return survey.Part{Value: r.Value, Text: r.Text, Adjusted: r.Adjusted, Residual: r.Residual, SD: r.SD, W: r.W, Redundancy: r.Redundancy, Detectable: r.Detectable}
}

// expected is the standard deviation of a difference that is w of them; nil where w says nothing.
func expected(p survey.Part) *float64 {
	if p.W == nil || p.Residual == nil || *p.W == 0 {
		return nil
	}
	sd := math.Abs(*p.Residual / *p.W)
	return &sd
}
