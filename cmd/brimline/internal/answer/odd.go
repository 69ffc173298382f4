package answer

import (
	"strings"
	"unicode/utf8"

	"brimline/finding"
	"brimline/survey"
)

// good answers the second question: what stands out among the readings, and which human mistakes
// explain it. Without any it says so as long as readings check each other.
func good(r *survey.Result, m measure, book string) string {
	text := odd(r, m) + mistakes(r, m, book)
	if text == "" && r.Statistics.Redundancy == 0 {
		return ""
	}
	if text == "" {
		text = "- No reading stands out"
		if n := len(lone(r)); n > 0 {
			text += ", but nothing would show a mistake in " + counted(n, "reading")
		}
		text += ".\n"
	}
	return "Good so far?\n" + text
}

// odd lists the readings in which a mistake shows: those named, then the groups that the book
// cannot tell apart, then the checks that disagree.
func odd(r *survey.Result, m measure) string {
	var named, checks []survey.Reading
	groups := map[int][]survey.Reading{}
	var order []int
	for _, x := range r.Readings {
		switch {
		case x.State == "suspect":
			named = append(named, x)
		case x.State == "disagrees":
			checks = append(checks, x)
		case x.State == "doubtful" && x.Group == nil:
			named = append(named, x)
		case x.State == "doubtful":
			if len(groups[*x.Group]) == 0 {
				order = append(order, *x.Group)
			}
			groups[*x.Group] = append(groups[*x.Group], x)
		}
	}
	var b strings.Builder
	for _, x := range named {
		b.WriteString(oddLine(x, x.State+": "+cause(x, m), m))
	}
	for _, g := range order {
		b.WriteString(wrap("one of "+finding.List(numbers(groups[g]))+" is wrong, and the book cannot tell which:", "- ", "  "))
		for _, x := range groups[g] {
			b.WriteString(oddLine(x, "doubtful: "+cause(x, m), m))
		}
	}
	for _, x := range checks {
		b.WriteString(oddLine(x, "disagrees: "+apart(x, m), m))
	}
	return b.String()
}

func numbers(list []survey.Reading) []string {
	var out []string
	for _, x := range list {
		out = append(out, x.N)
	}
	return out
}

// oddLine is a reading as the table has it, then what is said of it.
func oddLine(x survey.Reading, says string, m measure) string {
	first := "  " + Plain(x.N) + "  " + Plain(naming(x)) + "  "
	if len(x.Parts) == 0 {
		first += Plain(asRead(x, m.of(x.Kind))) + "  "
	}
	rest := strings.Repeat(" ", 4+utf8.RuneCountInString(x.N))
	if utf8.RuneCountInString(first) > columns-30 {
		return strings.TrimRight(first, " ") + "\n" + wrap(says, rest, rest)
	}
	return wrap(says, first, rest)
}

// cause is the most likely explanation, what the reading would be, and its odds.
func cause(x survey.Reading, m measure) string {
	if len(x.Likely) == 0 {
		return "no cause is likely"
	}
	l := x.Likely[0]
	text := l.Cause
	if text == "" {
		text = misreading(l.Code)
	}
	if l.Value != nil {
		text += ", " + m.of(x.Kind).value(*l.Value)
	}
	return text + " (" + percent(l.Probability) + ")"
}

// apart says by how much a check reading misses what the others predict.
func apart(x survey.Reading, m measure) string {
	if x.Residual == nil || x.Adjusted == nil {
		return "nothing predicts it"
	}
	f, way := m.of(x.Kind), "more"
	if *x.Residual < 0 {
		way = "less"
	}
	return "the other readings say " + f.value(*x.Adjusted) + ", " + f.smallUnit(max(*x.Residual, -*x.Residual)) + " " + way + " than was read"
}
