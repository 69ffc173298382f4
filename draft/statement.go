package draft

import (
	"fmt"

	"brimline/fieldbook"
	"brimline/survey"
)

// statement is the statement of accuracy, in sentences.
func (j *job) statement(c *canvas) []string {
	s := j.result.Statistics
	_, out := j.weakest()
	out = append(out, j.balance(s))
	if t := agreement(s); t != "" {
		out = append(out, t)
	}
	if t := j.worst(); t != "" {
		out = append(out, t)
	}
	out = append(out, j.hiddenWords()...)
	out = append(out, j.leftOut()...)
	out = append(out, j.untouched()...)
	if len(c.symbols.tooLarge) > 0 {
		out = append(out, "The error ellipse is too large to draw at "+names(c.symbols.tooLarge, 8)+".")
	}
	return append(out, "Behind ± stand 1.96 standard deviations (95 %).")
}

// balance counts readings against unknowns.
func (j *job) balance(s survey.Statistics) string {
	switch {
	case s.Readings == 0:
		return "No reading is in the solution yet."
	case s.Redundancy <= 0:
		return fmt.Sprintf("%s for %s: no reading checks another. The shape closes but nothing proves it.",
			count(s.Readings, "reading", "readings"), count(s.Unknowns, "unknown", "unknowns"))
	}
	return fmt.Sprintf("%s for %s: %s the rest.", count(s.Readings, "reading", "readings"),
		count(s.Unknowns, "unknown", "unknowns"), count(s.Redundancy, "is over and checks", "are over and check"))
}

// agreement says the test of all readings together in words, with its figures.
func agreement(s survey.Statistics) string {
	if s.Readings == 0 || s.Redundancy <= 0 || s.ReferenceSD == nil {
		return ""
	}
	ref := "Reference standard deviation " + plain(s.ReferenceSD, 2) + ", where 1 is expected"
	x := s.ChiSquare
	if x.Low == nil || x.High == nil {
		return ref + "."
	}
	figures := fmt.Sprintf(" (chi-square %s, 95 %% limits %s and %s).", plain(&x.Value, 1), plain(x.Low, 1), plain(x.High, 1))
	switch {
	case x.Value > *x.High && s.Scaled:
		return ref + ": the readings disagree more than their stated precision allows, and every ± here is widened by it" + figures
	case x.Value > *x.High:
		return ref + ": the readings disagree more than their stated precision allows" + figures
	case x.Value < *x.Low:
		return ref + ": the readings agree better than their stated precision, which was cautious" + figures
	}
	return ref + ": the readings agree as well as their stated precision lets expect" + figures
}

// worst names the mark with the largest error ellipse.
func (j *job) worst() string {
	at := ""
	var e survey.Ellipse
	for _, m := range j.marks {
		if k := j.result.Marks[m].Ellipse95; k != nil && k.Major > e.Major {
			at, e = m, *k
		}
	}
	if at == "" {
		return ""
	}
	return fmt.Sprintf("Least certain mark: %s, error ellipse (95 %%) %s by %s half axes, the long one at %s clockwise from +y.",
		at, j.fig.whole(e.Major), j.fig.whole(e.Minor), bearing(e.Bearing))
}

// hiddenWords say what could hide, and where nothing would show a mistake.
func (j *job) hiddenWords() []string {
	var out []string
	most, reading := 0.0, survey.Reading{}
	for _, r := range j.result.Readings {
		if used(r.State) && !j.fig.of(r.Kind).angle && r.Detectable != nil && *r.Detectable > most {
			most, reading = *r.Detectable, r
		}
	}
	if most > 0 && len(j.result.Shape.Weakest) == 0 {
		out = append(out, fmt.Sprintf("An error of up to %s could hide in reading %s (%s).", j.fig.whole(most), reading.N, readingName(reading)))
	}
	far, mark := 0.0, ""
	var loose []string
	for _, m := range j.marks {
		k := j.result.Marks[m]
		if k.Hidden != nil && *k.Hidden > far {
			far, mark = *k.Hidden, m
		}
		if _, ok := j.place(m); ok && !k.Controlled && k.Ellipse95 != nil {
			loose = append(loose, m)
		}
	}
	if mark != "" {
		out = append(out, fmt.Sprintf("The largest move that a hidden error of one reading could cause is %s, at %s.", j.fig.whole(far), mark))
	}
	if len(loose) > 0 {
		out = append(out, "A mistake would not show at "+names(loose, 10)+".")
	}
	return out
}

// used says that a reading of that state is in the solution.
func used(state string) bool { return state == "good" || state == "lone" }

// readingName says a reading's kind and marks: tie B–r17.
func readingName(r survey.Reading) string {
	n := len(r.Marks)
	switch {
	case n == 1 && r.Setup != "":
		return r.Kind + " " + r.Marks[0] + " from " + r.Setup
	case r.Until != "":
		return r.Kind + " " + names(r.Marks, 1) + " until " + r.Until
	case r.Line != "" && (n == 0 || r.Kind == "round"):
		return r.Kind + " " + r.Line
	case n == 1 && r.Line != "":
		return r.Kind + " " + r.Marks[0] + "–" + r.Line
	case n == 2 && r.Line != "":
		return r.Kind + " " + r.Line + ", " + r.Marks[0] + "–" + r.Marks[1]
	case n == 2:
		return r.Kind + " " + r.Marks[0] + "–" + r.Marks[1]
	case r.Kind == "offset" && n == 3:
		return r.Kind + " " + r.Marks[0] + " of " + r.Marks[1] + "–" + r.Marks[2]
	case fieldbook.Angular(r.Kind) && n == 3:
		return r.Kind + " " + r.Marks[0] + "–" + r.Marks[2] + " at " + r.Marks[1]
	}
	return r.Kind + " " + names(r.Marks, 4)
}

// leftOut counts readings that are struck or not used.
func (j *job) leftOut() []string {
	by := map[string][]string{}
	for _, r := range j.result.Readings {
		by[r.State] = append(by[r.State], r.N)
	}
	var out []string
	for _, x := range []struct{ state, words string }{
		{"suspect", "Left out as suspect: "}, {"doubtful", "Doubtful: "}, {"struck", "Struck in the book: "},
		{"agrees", "Checks that agree: "}, {"disagrees", "Checks that disagree: "},
	} {
		if list := by[x.state]; len(list) > 0 {
			out = append(out, x.words+numberWords(list)+".")
		}
	}
	return out
}

// untouched says what length of the edge nobody touched.
func (j *job) untouched() []string {
	var out []string
	for _, n := range j.lines {
		l := j.result.Lines[n]
		if l.Inferred != nil && *l.Inferred > 0 {
			out = append(out, fmt.Sprintf("Nobody touched %s of %s: there the edge is inferred.", j.fig.withUnit(*l.Inferred), n))
		}
	}
	return out
}
