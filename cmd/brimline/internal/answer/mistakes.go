package answer

import (
	"strings"

	"brimline/finding"
	"brimline/survey"
)

// mistakes lists the human mistakes found, numbered, each with what accepting it would do.
func mistakes(r *survey.Result, m measure, book string) string {
	var b strings.Builder
	for i, k := range r.Mistakes {
		text := upper(strings.TrimSuffix(k.Text, ".")) + " (" + percent(k.Probability) + ")."
		if w := plural(len(k.Readings), "reading") + " " + finding.List(k.Readings); len(k.Readings) > 0 && !strings.Contains(strings.ToLower(text), w) {
			text += " " + upper(w) + "."
		}
		lead := itoa(i+1) + ". "
		b.WriteString(wrap(text, lead, strings.Repeat(" ", len(lead))))
		b.WriteString(wrap(accepting(r, k, m), "   > ", "     "))
		if len(k.Edit) > 0 {
			b.WriteString("     " + acceptCommand(book, i+1) + "\n")
		}
	}
	return b.String()
}

// accepting says what a person can do about a mistake.
func accepting(r *survey.Result, k survey.Mistake, m measure) string {
	if len(k.Edit) == 0 {
		return "Only reading again can tell: " + finding.List(k.Readings) + "."
	}
	var says []string
	for _, e := range k.Edit {
		says = append(says, becomes(r, e, m))
	}
	const most = 4
	if n := len(says) - most; n > 0 {
		says = append(says[:most-1], "and "+itoa(n+1)+" more")
	}
	return "Read again, or accept it: " + strings.Join(says, "; ") + "."
}

// acceptCommand is what to type to accept a mistake, on a line of its own.
func acceptCommand(book string, n int) string {
	if book == "" || book == "-" {
		return "(to accept, keep the book as a file)"
	}
	return "brimline solve " + quoted(Plain(book)) + " --accept " + itoa(n)
}

// becomes says one edit: 17 becomes 6.450.
func becomes(r *survey.Result, e survey.Edit, m measure) string {
	text := e.N
	if e.Part != "" {
		text += " " + e.Part
	}
	x := numbered(r, e.N)
	var to []string
	if len(e.Marks) > 0 {
		x.Marks = e.Marks
		to = append(to, naming(x))
	}
	if e.Value != nil {
		to = append(to, m.of(x.Kind).value(*e.Value))
	}
	return text + " becomes " + strings.Join(to, ", ")
}

// numbered is the reading that people call n; an empty one where there is none.
func numbered(r *survey.Result, n string) survey.Reading {
	for _, x := range r.Readings {
		if x.N == n {
			return x
		}
	}
	return survey.Reading{}
}

// quoted makes a file name one word of a command.
func quoted(name string) string {
	if strings.Trim(name, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789./_-") == "" {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}

func plural(n int, noun string) string {
	if n == 1 {
		return noun
	}
	return noun + "s"
}
