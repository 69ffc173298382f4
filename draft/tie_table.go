package draft

import (
	"brimline/fieldbook"
	"brimline/sheet"
	"brimline/survey"
)

// tieTable lists every reading in the order of the book, as read beside what it was adjusted to.
// A reading of several values has a line for each.
func (j *job) tieTable() listing {
	u := j.fig.smallUnit()
	l := listing{
		title: "Readings",
		columns: []sheet.Column{
			column(sheet.End, "", "no."), column(sheet.Start, "", "kind"), column(sheet.Start, "", "from"), column(sheet.Start, "", "to"),
			column(sheet.End, "", "as read"), column(sheet.End, j.fig.lengthUnit(), "adjusted"), column(sheet.End, u, "residual"), column(sheet.End, u, "sd"),
			column(sheet.End, "", "w"), column(sheet.End, "", "r"), column(sheet.End, u, "could", "hide"), column(sheet.Start, "", "state"),
		},
		after: []string{
			"Readings: residual = adjusted less read; sd: one standard deviation of the reading as taken; w: residual over its own standard deviation, suspect beyond 3.29; " +
				"r: share of the reading that others check, 0 to 1; could hide: the smallest error that the test finds four times in five.",
		},
	}
	for _, r := range j.result.Readings {
		l.rows = append(l.rows, j.readingRows(r)...)
	}
	for _, r := range j.result.Readings {
		if t := j.readingNote(r); t != "" {
			l.after = append(l.after, "Reading "+r.N+" "+t+".")
		}
	}
	return l
}

// readingNote is what is said of a reading under the table.
func (j *job) readingNote(r survey.Reading) string {
	switch {
	case r.State == "struck" && r.Why != "":
		return "struck: " + r.Why
	case (r.State == "suspect" || r.State == "doubtful") && len(r.Likely) > 0:
		return r.State + ": " + j.likely(r)
	case r.Computed:
		return j.computed(r)
	}
	return ""
}

func (j *job) readingRows(r survey.Reading) [][]sheet.Cell {
	from, to := readingEnds(r)
	if len(r.Parts) == 0 {
		return [][]sheet.Cell{j.readingRow(r, r.Kind, from, to, whole(r))}
	}
	var rows [][]sheet.Cell
	for i, p := range r.Parts {
		row := j.readingRow(r, r.Kind+" "+p.Part, from, to, p)
		if i > 0 {
			row[0].Text = r.N
		}
		rows = append(rows, row)
	}
	return rows
}

func (j *job) readingRow(r survey.Reading, kind, from, to string, p survey.Part) []sheet.Cell {
	f := j.fig.of(r.Kind)
	row := cells(r.N, kind, from, to, j.asRead(r, p), f.ref(p.Adjusted), f.smallRef(p.Residual), f.small(p.SD),
		plain(p.W, 2), plain(p.Redundancy, 2), f.smallRef(p.Detectable))
	if r.State == "struck" { // what it would have if put back is no length of the figure
		row[4].Struck = true
		row[5].Text, row[6].Text = "–", "–"
		for i := range row {
			row[i].Ink = sheet.Grey
		}
	}
	state := stateCell(r.State)
	if r.Group != nil {
		state.Text += " (" + itoa(*r.Group) + ")"
	}
	return append(row, state)
}

// readingEnds are the two columns of marks: from and to of a tie; the mark of an offset and its
// line; of a tape along a line the line with the first mark, and the other; the line of a tape round
// it; the mark and the line to which it is clear, or until what; the set-up of a seen mark and the
// mark; the corner of an angle with its two sides; the ends of a row of marks and how many there are.
func readingEnds(r survey.Reading) (from, to string) {
	n := len(r.Marks)
	switch {
	case r.Setup != "" && n > 0:
		return r.Setup, r.Marks[0]
	case r.Line+r.Until != "":
		return lineEnds(r)
	case r.Kind == "offset" && n == 3:
		return r.Marks[1] + " " + r.Marks[2], r.Marks[0]
	case fieldbook.Angular(r.Kind) && n == 3:
		return r.Marks[1] + ": " + r.Marks[0], r.Marks[2]
	case n > 2:
		return r.Marks[0], r.Marks[n-1] + " (" + itoa(n) + ")"
	case n == 2:
		return r.Marks[0], r.Marks[1]
	}
	return names(r.Marks, 3), ""
}

// lineEnds are the columns of a reading along, round or to a line.
func lineEnds(r survey.Reading) (from, to string) {
	n := len(r.Marks)
	switch {
	case r.Until != "" && n == 1:
		return r.Marks[0], "until " + r.Until
	case r.Kind == "round" && n > 0:
		return r.Line, "from " + r.Marks[0]
	case n == 0:
		return r.Line, ""
	case n == 1:
		return r.Marks[0], r.Line
	}
	return r.Line + ", " + r.Marks[0], r.Marks[1]
}

// asserted are the words for what a kind says without a figure.
var asserted = map[string]string{"straight": "in line", "arc": "circle", "square": "square"}

// asRead is what was read or said, as typed.
func (j *job) asRead(r survey.Reading, p survey.Part) string {
	text := p.Text
	switch {
	case text == "" && asserted[r.Kind] != "":
		return asserted[r.Kind]
	case text == "":
		text = j.fig.of(r.Kind).length(p.Value)
	}
	if r.Computed { // nobody read it
		text = "(" + text + ")"
	}
	return sheet.Typeset(text)
}
