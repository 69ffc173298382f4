package answer

import (
	"strings"
	"unicode/utf8"

	"brimline/survey"
)

// head is the word and its one sentence.
func head(r *survey.Result, m measure) string {
	s := r.Shape
	tolerance := m.smallUnit(s.Tolerance)
	say := meaning(s.State, tolerance)
	if s.Worst == nil && s.State == "unproven" {
		say = "There is no shape to judge yet."
	}
	text := s.State + "\n" + wrap(say, "", "")
	if s.Worst != nil {
		where := ""
		if s.At != "" {
			where = ", at " + s.At
		}
		text += wrap("Least known across an outline: ± "+m.smallUnit(m.up(*s.Worst))+" (95 %)"+where+".", "", "")
	}
	if r.Book.Name == "" {
		return text
	}
	return Plain(r.Book.Name) + ": " + text
}

// meaning says what a state asks of the reader. The states are those of docs/conventions.md.
func meaning(state, tolerance string) string {
	switch state {
	case "ready":
		return "The shape is known well enough for its tolerance of " + tolerance + ", and a mistake that would spoil it would have shown."
	case "unproven":
		return "The shape may be right, but a mistake could stand in the readings unseen and move it beyond its tolerance of " + tolerance + "."
	case "unfit":
		return "Cut nothing from this yet: the shape is not known well enough for its tolerance of " + tolerance + "."
	}
	return "Nothing can be said of the shape."
}

// todo is what is wrong and what to do: the reasons of the verdict, then the findings as sorted in
// the result, each with its cure under it.
func todo(r *survey.Result) string {
	var b strings.Builder
	for _, w := range r.Shape.Why {
		b.WriteString(wrap(sentence(upper(w)), "- ", "  "))
	}
	b.WriteString(Findings(r.Findings))
	return b.String()
}

// Findings lists findings in the order given, each with its cure under it; empty for none.
func Findings(found []survey.Finding) string {
	var b strings.Builder
	for _, f := range found {
		b.WriteString(wrap(f.Severity+": "+sentence(f.Text), "- ", "  "))
		if f.Cure != "" {
			b.WriteString(wrap(sentence(upper(f.Cure)), "  > ", "    "))
		}
	}
	return b.String()
}

// sentence ends a text with a full stop.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

func upper(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if r == utf8.RuneError {
		return s
	}
	return strings.ToUpper(string(r)) + s[n:]
}

// wrap breaks a text at spaces so that no line passes the width, unless one word does.
func wrap(text, first, rest string) string {
	var b strings.Builder
	line, indent := first, first
	for _, w := range strings.Fields(Plain(text)) {
		gap := " "
		if line == indent {
			gap = ""
		}
		if gap != "" && utf8.RuneCountInString(line+gap+w) > columns {
			b.WriteString(line + "\n")
			line, indent, gap = rest, rest, ""
		}
		line += gap + w
	}
	return b.String() + line + "\n"
}
