package draft

import (
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// runTable lists the runs of all lines in order. The lengths of a closed line add up to its total.
func (j *job) runTable() listing {
	u, lu := j.fig.smallUnit(), j.fig.lengthUnit()
	l := listing{
		title: "Runs",
		columns: []sheet.Column{
			column(sheet.Start, "", "line"), column(sheet.Start, "", "kind"), column(sheet.Start, "", "from"), column(sheet.Start, "", "to"), column(sheet.End, lu, "length"),
			column(sheet.End, u, "±"), column(sheet.End, lu, "radius"), column(sheet.End, u, "±"),
			column(sheet.End, lu, "rise"), column(sheet.End, u, "±"), column(sheet.End, "", "sweep"), column(sheet.End, "", "±"), column(sheet.Start, "", "begins"),
		},
	}
	for _, name := range j.lines {
		line := j.result.Lines[name]
		l.rows = append(l.rows, j.runRows(name, line)...)
		if t := j.total(name, line); t != "" {
			l.after = append(l.after, t)
		}
		if len(line.Waits) > 0 {
			l.after = append(l.after, "Line "+name+" waits for "+names(line.Waits, 12)+".")
		}
	}
	l.after = append(l.after, "± is 1.96 standard deviations (95 %). Rise: of an arc over its own chord, which a piece must follow; it may be good where the radius is not. "+
		"Sweep is positive where the line turns left. Begins: how a run leaves the one before it, with the angle turned there. "+
		"Rounded lengths add up to their rounded total: each is rounded down, and the steps still lacking go to those that lost most.")
	return l
}

func (j *job) runRows(name string, line *survey.Line) [][]sheet.Cell {
	texts := j.chain(line)
	var rows [][]sheet.Cell
	for i, r := range line.Runs {
		rows = append(rows, cells(name, r.Kind, r.From, r.To, texts[i], j.fig.small(cover*r.LengthSD),
			j.fig.ref(r.Radius), j.fig.smallRef(covered(r.RadiusSD)), j.fig.ref(r.Sagitta), j.fig.smallRef(covered(r.SagittaSD)), sweepText(r.Sweep), sweepText(covered(r.SweepSD)), joint(r)))
	}
	return rows
}

func covered(sd *float64) *float64 {
	if sd == nil {
		return nil
	}
	x := cover * *sd
	return &x
}

// joint says how a run begins.
func joint(r survey.LineRun) string {
	switch {
	case r.Joint == "kink" && r.Turn != nil:
		return "kink " + sweepText(r.Turn)
	case r.Joint == "" && r.Turn != nil:
		return "turns " + sweepText(r.Turn)
	}
	return or(r.Joint)
}

// total says the length, the area and the extent of a line.
func (j *job) total(name string, l *survey.Line) string {
	if l.Length == nil {
		return ""
	}
	t := name + ": length " + j.fig.withUnit(*l.Length)
	if l.LengthSD != nil {
		t += " ± " + j.fig.whole(cover**l.LengthSD)
	}
	if l.Area != nil {
		t += ", area " + j.fig.area(*l.Area, l.AreaSD)
	}
	if b := pathOf(l).Bounds(); !b.Empty() {
		t += ", extent along x and y " + j.extentText(b)
	}
	return t + "."
}

func (j *job) extentText(b plane.Box) string {
	return j.fig.length(b.Max.X-b.Min.X) + " × " + j.fig.length(b.Max.Y-b.Min.Y)
}
