package answer

import (
	"slices"
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

// upper begins a sentence large, unless it begins with the name of a mark or a line.
func upper(s string) string {
	if strings.HasPrefix(s, "a mistake ") {
		return "A" + s[1:]
	}
	first, _, _ := strings.Cut(s, " ")
	if len(first) < 2 || strings.Trim(first, "abcdefghijklmnopqrstuvwxyz,:") != "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// wrap breaks a text at spaces so that no line passes the width, unless one word does.
func wrap(text, first, rest string) string {
	var b strings.Builder
	line, indent := first, first
	for _, w := range glued(strings.Fields(Plain(text))) {
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

// units follow figures and stay on their line.
var units = []string{"%", "mm", "m", "m²", "ft²", "m³", "ft³", "minute", "minutes"}

// glued joins units to the figures before them.
func glued(words []string) []string {
	var out []string
	for _, w := range words {
		n := len(out) - 1
		if n >= 0 && slices.Contains(units, strings.TrimRight(w, ".,;:)")) && strings.ContainsAny(out[n][len(out[n])-1:], "0123456789") {
			out[n] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
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
