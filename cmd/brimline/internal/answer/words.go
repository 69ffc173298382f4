package answer

import (
	"strings"
	"unicode/utf8"

	"brimline/survey"
)

// todo lists what is open, as sorted in the result.
func todo(r *survey.Result) string {
	if len(r.Findings) == 0 {
		return ""
	}
	return "What is open\n" + Findings(r.Findings)
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
	return b.String() + strings.TrimRight(line, " ") + "\n"
}

// bullet is a sentence of a list.
func bullet(text string) string { return wrap(sentence(text), "- ", "  ") }

// percent says odds from 0 to 1; what would round to nothing or to all is said to be less or more.
func percent(p float64) string {
	switch {
	case p > 0 && p < 0.001:
		return "under 0.1 %"
	case p < 0.1:
		return strings.TrimSuffix(decimal(100*p, 1), ".0") + " %"
	case p < 1 && p > 0.99:
		return "over 99 %"
	}
	return decimal(100*p, 0) + " %"
}
