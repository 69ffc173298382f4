package draft

import (
	"math"
	"strings"

	"brimline/sheet"
)

const quarterTurn = math.Pi / 2

// stationTable lists the heights along every line.
func (j *job) stationTable(v *Levels) listing {
	u, lu := j.fig.smallUnit(), j.fig.lengthUnit()
	wet := false
	for _, p := range v.Profiles {
		for _, s := range p.Stations {
			wet = wet || s.Freeboard != nil
		}
	}
	l := listing{
		title: "Heights along the lines",
		columns: []sheet.Column{
			column(sheet.Start, "", "line"), column(sheet.Start, "", "mark"), column(sheet.End, lu, "along"), column(sheet.End, lu, "height"),
			column(sheet.End, u, "±"), column(sheet.End, u, "above", "mean"),
		},
		after: []string{"Along: from the start of the line. Above mean: against the mean of the stations of that line. ± stands for 95 %."},
	}
	if wet {
		l.columns = append(l.columns, column(sheet.End, lu, "above", "water"))
		l.after = append(l.after, "Above water: against the latest water surface, "+or(v.Latest)+".")
	}
	for _, p := range v.Profiles {
		for _, s := range p.Stations {
			row := cells(p.Line, s.Mark, j.fig.length(s.Along), j.fig.length(s.Z), j.plus(s.SD), signed(j.fig.small(s.Off)))
			if wet {
				row = append(row, sheet.Cell{Text: j.fig.ref(s.Freeboard)})
			}
			l.rows = append(l.rows, row)
		}
	}
	return l
}

// plus is the half-width of 95 % of a standard deviation.
func (j *job) plus(sd *float64) string {
	if sd == nil {
		return none
	}
	return j.fig.small(cover * *sd)
}

// loopTable lists the closed ways of levelling.
func (j *job) loopTable(v *Levels) listing {
	u, lu := j.fig.smallUnit(), j.fig.lengthUnit()
	l := listing{
		title: "Level loops",
		columns: []sheet.Column{
			column(sheet.Start, "", "by way of"), column(sheet.End, "", "set-ups"), column(sheet.End, lu, "length"),
			column(sheet.End, u, "misclosure"), column(sheet.End, u, "allowed"), column(sheet.Start, "", ""),
		},
		after: []string{"Misclosure: before adjustment. Rule: " + or(v.Rule) + " (" + or(v.Source) + ")."},
	}
	for _, x := range v.Loops {
		row := cells(names(x.Marks, 6), itoa(x.Setups), j.fig.ref(x.Length), j.fig.small(x.Misclosure), j.fig.smallRef(x.Limit))
		word := sheet.Cell{Text: "not compared"}
		if x.Within != nil && *x.Within {
			word = sheet.Cell{Text: "within", Symbol: sheet.FilledSquare, Ink: sheet.Good}
		} else if x.Within != nil {
			word = sheet.Cell{Text: "beyond", Symbol: sheet.BarredSquare, Ink: sheet.Wrong}
		}
		l.rows = append(l.rows, append(row, word))
	}
	return l
}

// waterTable lists the surfaces read.
func (j *job) waterTable(v *Levels) listing {
	l := listing{
		title:   "Water surfaces",
		columns: []sheet.Column{column(sheet.Start, "", "surface"), column(sheet.End, j.fig.lengthUnit(), "height"), column(sheet.End, j.fig.smallUnit(), "±")},
	}
	for _, w := range v.Waters {
		l.rows = append(l.rows, cells(w.Name, j.fig.length(w.Z), j.plus(w.SD)))
	}
	return l
}

// levelWords are the sentences of the levels sheet.
func (j *job) levelWords(v *Levels) []string {
	var out []string
	if v.Datum != "" {
		out = append(out, "Heights are counted upward from "+v.Datum+".")
	}
	for _, p := range v.Profiles {
		low, high := p.out()
		if len(p.Stations) > 1 {
			out = append(out, p.Line+": "+j.fig.whole(high.Z-low.Z)+" from its lowest station, "+low.Mark+", to its highest, "+high.Mark+".")
		}
	}
	out = append(out, j.loopWords(v)...)
	far := 10.0
	if j.fig.feet() {
		far = 30 * foot
	}
	for _, c := range v.Sightings {
		if c.SD == nil {
			out = append(out, "The readings cannot tell whether the line of sight of "+c.Tool+" is level; it was taken as level.")
			continue
		}
		out = append(out, "The line of sight of "+c.Tool+" was found to rise "+j.fig.small(far*c.Value)+" ± "+j.fig.small(far*cover**c.SD)+" "+j.fig.smallUnit()+
			" in "+j.fig.withUnit(far)+"; heights are corrected for it.")
	}
	return append(out, "Bars at the stations and ± stand for 95 %: 1.96 standard deviations.")
}

// loopWords say whether the loops close.
func (j *job) loopWords(v *Levels) []string {
	if len(v.Loops) == 0 {
		return []string{"No level loop was closed: a mistake in a single level reading need not show."}
	}
	worst := 0.0
	var beyond []string
	for _, l := range v.Loops {
		worst = max(worst, abs(l.Misclosure))
		if l.Within != nil && !*l.Within {
			beyond = append(beyond, strings.Join(l.Marks, "–"))
		}
	}
	t := "Largest misclosure of a level loop: " + j.fig.whole(worst) + ". Rule: " + or(v.Rule) + " (" + or(v.Source) + ")."
	if len(beyond) > 0 {
		t += " Beyond it: " + names(beyond, 3) + "."
	}
	return []string{t}
}
