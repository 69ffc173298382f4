package answer

import (
	"fmt"
	"math"
	"strings"

	"brimline/survey"
)

// levels says how level the rim is, how the loops close and where the water stands, then tables the
// heights along the lines. Empty where nothing of heights is read.
func levels(r *survey.Result, m measure) string {
	l := r.Levels
	if l == nil {
		return ""
	}
	var b strings.Builder
	b.WriteString("Levels\n")
	for _, t := range []string{rimLevel(l, m), loops(l, m)} {
		if t != "" {
			b.WriteString(bullet(t))
		}
	}
	for _, c := range l.Collimations {
		b.WriteString(bullet(collimation(c)))
	}
	for _, s := range l.Surfaces {
		if s.Z != nil {
			b.WriteString(bullet(fmt.Sprintf("Water %s stands at %s ± %s", s.Name, m.style.LengthUnit(*s.Z), m.plusUnit(s.SZ))))
		}
	}
	return b.String() + stations(l, m)
}

// rimLevel is by how much the rim is out of level, and where.
func rimLevel(l *survey.Levels, m measure) string {
	if l.RimHigh == nil || l.RimLow == nil {
		return ""
	}
	high, low := "", ""
	for _, s := range l.Stations {
		if high == "" && s.Off == *l.RimHigh {
			high = " at " + s.Mark
		}
		if low == "" && s.Off == *l.RimLow {
			low = " at " + s.Mark
		}
	}
	return fmt.Sprintf("The rim is out of level by %s: %s above its mean%s, %s below it%s",
		m.smallUnit(*l.RimHigh-*l.RimLow), m.smallUnit(*l.RimHigh), high, m.smallUnit(math.Abs(*l.RimLow)), low)
}

// loops says how the loops of levels close before any adjustment.
func loops(l *survey.Levels, m measure) string {
	if len(l.Loops) == 0 || l.Closure == nil {
		return ""
	}
	out := 0
	judged := 0
	for _, x := range l.Loops {
		if x.Within != nil {
			judged++
			if !*x.Within {
				out++
			}
		}
	}
	text := fmt.Sprintf("%s of levels; the largest misclosure is %s", counted(len(l.Loops), "loop"), m.smallUnit(*l.Closure))
	switch {
	case judged == 0:
		return text
	case out == 0:
		return text + fmt.Sprintf(", within the rule %s", l.Rule)
	}
	return text + fmt.Sprintf("; %d of %d beyond the rule %s", out, judged, l.Rule)
}

// collimation is what the line of sight rises in twenty metres, as field tests of levels say it.
func collimation(c survey.Collimation) string {
	const sight = 20.0
	switch {
	case c.Value == nil:
		return "The collimation of " + c.Tool + " is not known"
	case c.SD == nil:
		return "The collimation of " + c.Tool + " could not be told from the heights and is taken as none"
	}
	return fmt.Sprintf("The line of sight of %s rises %s mm in 20 m, ± %s mm", c.Tool, decimal(*c.Value*sight*1000, 1), decimal(math.Ceil(normal95**c.SD*sight*1e4-1e-9)/10, 1))
}

// plusUnit is the 95 % half-width of a standard deviation, rounded up, with its unit.
func (m measure) plusUnit(sd *float64) string {
	if sd == nil {
		return nothing
	}
	return m.smallUnit(m.up(normal95 * *sd))
}

// stations tables the heights along the lines, and how far each stands off the mean of its line.
func stations(l *survey.Levels, m measure) string {
	t := table{
		title: "  heights (" + m.style.UnitName() + "; ± 95 % and off the mean of the line in " + m.smallName() + ")",
		heads: []string{"line", "mark", "height", "±", "off"},
		right: []bool{false, false, true, true, true},
	}
	for _, s := range l.Stations {
		plus := nothing
		if s.SZ != nil {
			plus = m.plus(of95(*s.SZ))
		}
		t.add(s.Line, s.Mark, m.place(s.Z), plus, m.small(s.Off))
	}
	return t.String()
}
