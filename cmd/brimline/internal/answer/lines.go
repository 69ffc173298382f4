package answer

import (
	"math"
	"strings"

	"brimline/finding"
	"brimline/survey"
)

// lines gives each line its length and area, then the runs it is made of.
func lines(r *survey.Result, m measure) string {
	var parts []string
	for _, name := range r.LineOrder {
		l := r.Lines[name]
		if l == nil {
			continue
		}
		parts = append(parts, wrap(name+edge(l)+": "+sizes(l, m), "", "  ")+kindOf(l)+runs(l, m))
	}
	return strings.Join(parts, "\n")
}

// kindOf says which well-known shape the line is.
func kindOf(l *survey.Line) string {
	if l.Family == nil || l.Family.Text == "" {
		return ""
	}
	return wrap("It is "+l.Family.Text+".", "  ", "  ")
}

func edge(l *survey.Line) string {
	if l.Edge == "" {
		return ""
	}
	return " (" + l.Edge + ")"
}

func sizes(l *survey.Line, m measure) string {
	if len(l.Waits) > 0 {
		return "waits for " + finding.List(l.Waits) + "."
	}
	if l.Length == nil {
		return "not known yet."
	}
	text := "length " + m.style.LengthUnit(*l.Length)
	length, area := nothing, nothing // of a ± that means nothing
	if l.LengthSD != nil {
		length = m.smallUnit(m.up(normal95 * *l.LengthSD))
	}
	text += " ± " + length
	if l.AreaSD != nil {
		area = m.areaPlus(normal95 * *l.AreaSD)
	}
	switch {
	case l.Area != nil:
		text += ", area " + m.area(*l.Area) + " ± " + area
	case l.Closed:
		text += ", area " + nothing
	}
	return text + " (95 %)."
}

// runs tables the stretches of one line; a sweep to the left of the line's direction is positive.
func runs(l *survey.Line, m measure) string {
	t := table{
		title: "  runs (± 95 % in " + m.smallName() + ")",
		heads: []string{"kind", "from", "to", "length", "±", "radius", "±", "sweep"},
		right: []bool{false, false, false, true, true, true, true, true},
	}
	for _, r := range l.Runs {
		sweep := ""
		if r.Sweep != nil {
			sweep = decimal(*r.Sweep, 1) + "°"
		}
		radius, radiusPlus := "", ""
		if r.Radius != nil {
			radius = m.place(r.Radius)
			if r.RadiusSD != nil {
				radiusPlus = m.plus(of95(*r.RadiusSD))
			}
		}
		plus := nothing
		if l.LengthSD != nil { // else no ± of this line means anything
			plus = m.plus(of95(r.LengthSD))
		}
		t.add(r.Kind, r.From, r.To, m.place(&r.Length), plus, radius, radiusPlus, sweep)
	}
	return t.String()
}

// of95 turns a standard deviation into a half-width of 95 %; none where it is no number.
func of95(sd float64) *float64 {
	if math.IsNaN(sd) || math.IsInf(sd, 0) {
		return nil
	}
	v := normal95 * sd
	return &v
}
