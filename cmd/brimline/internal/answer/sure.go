package answer

import (
	"fmt"
	"strings"

	"brimline/adjust"
	"brimline/finding"
	"brimline/survey"
)

// sure says how far the figures can be trusted: what checks what, and the largest mistakes that
// could still stand unseen.
func sure(r *survey.Result, m measure) string {
	s := r.Statistics
	if s.Readings == 0 {
		return ""
	}
	out := []string{fmt.Sprintf("%d read values for %d unknowns: %d to spare.", s.Readings, s.Unknowns, s.Redundancy)}
	out = append(out, agreement(s), hiding(r, m), moving(r, m), alone(r), loose(r))
	var b strings.Builder
	b.WriteString("How sure\n")
	for _, t := range out {
		if t != "" {
			b.WriteString(wrap(t, "- ", "  "))
		}
	}
	return b.String()
}

// agreement puts the chi-square test into words.
func agreement(s survey.Statistics) string {
	c := s.ChiSquare
	if s.Redundancy == 0 || c.Low == nil || c.High == nil {
		return "No reading checks another, so the figure closes whatever was misread."
	}
	text := "The readings agree with each other as well as their stated precision says"
	switch {
	case c.Value > *c.High:
		text = "The readings disagree with each other more than their stated precision allows"
	case c.Value < *c.Low && s.Redundancy >= adjust.LeastForLow:
		text = "The readings agree with each other better than their stated precision says"
	}
	expected := fmt.Sprintf("between %.1f and %.1f", *c.Low, *c.High)
	if s.Redundancy < adjust.LeastForLow { // the lower limit is next to nothing
		expected = fmt.Sprintf("below %.1f", *c.High)
	}
	text += fmt.Sprintf(" (chi-square %.1f, expected %s).", c.Value, expected)
	if s.Scaled && s.ReferenceSD != nil {
		text += fmt.Sprintf(" Every ± was made %.2f times as large for it.", *s.ReferenceSD)
	}
	return text
}

// hiding names the reading in which the largest mistake could stand unseen, where the result does
// not say better what it would do.
func hiding(r *survey.Result, m measure) string {
	if len(r.Shape.Weakest) > 0 || stopped(r) {
		return ""
	}
	var worst *survey.Reading
	for i := range r.Readings {
		d := r.Readings[i].Detectable
		if d != nil && used(r.Readings[i]) && !m.of(r.Readings[i].Kind).angle && (worst == nil || *d > *worst.Detectable) {
			worst = &r.Readings[i]
		}
	}
	if worst == nil {
		return ""
	}
	return fmt.Sprintf("An error of up to %s could hide in the %s (reading %s); it is the largest of those that the other readings control.",
		m.smallUnit(m.up(*worst.Detectable)), naming(*worst), worst.N)
}

// stopped says that a finding forbids the use of the figures of trust: then none is quoted.
func stopped(r *survey.Result) bool {
	for _, f := range r.Findings {
		if f.Severity == string(finding.Stop) && f.Code != "crossing" {
			return true
		}
	}
	return false
}

// used says whether a reading carries the solution.
func used(r survey.Reading) bool {
	return r.State == "good" || r.State == "lone" || r.State == "agrees"
}

// moving names the mark that a hidden error could move furthest.
func moving(r *survey.Result, m measure) string {
	if stopped(r) {
		return ""
	}
	name, most := "", 0.0
	for _, n := range r.MarkOrder {
		if k := r.Marks[n]; k != nil && k.Hidden != nil && *k.Hidden > most {
			name, most = n, *k.Hidden
		}
	}
	if name == "" {
		return ""
	}
	return fmt.Sprintf("A hidden error could move %s by up to %s, further than any other controlled mark.", name, m.smallUnit(m.up(most)))
}

// alone lists the readings in which nothing would show a mistake.
func alone(r *survey.Result) string {
	ns := lone(r)
	if len(ns) == 0 {
		return ""
	}
	return "Nothing would show a mistake in " + counted(len(ns), "reading") + ": " + finding.List(ns) + "."
}

func lone(r *survey.Result) []string {
	var ns []string
	for _, x := range r.Readings {
		if x.State == "lone" {
			ns = append(ns, x.N)
		}
	}
	return ns
}

// loose lists the marks whose place rests on such readings.
func loose(r *survey.Result) string {
	var names []string
	for _, n := range r.MarkOrder {
		if k := r.Marks[n]; k != nil && k.X != nil && !k.Controlled {
			names = append(names, n)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return counted(len(names), "mark") + " not controlled by a second reading: " + finding.List(names) + "."
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
