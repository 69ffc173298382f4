package draft

import (
	"strings"

	"brimline/plane"
	"brimline/sheet"
)

// words are the rows beside the plan: the verdict, what to settle before cutting, the key, the
// statement of accuracy, how to read the sheet, the caution.
func (j *job) words(c *canvas, width float64) []row {
	rows := j.verdict(width)
	if open := j.open(); len(open) > 0 {
		rows = append(rows, heading("To settle before anything is cut", width)...)
		rows = append(rows, listed(open, smallHeight, width)...)
	}
	rows = append(rows, c.key(width)...)
	rows = append(rows, heading("How far the numbers can be trusted", width)...)
	rows = append(rows, listed(j.statement(c), smallHeight, width)...)
	rows = append(rows, heading("Reading this plan", width)...)
	rows = append(rows, listed(j.reading(c), smallHeight, width)...)
	if all := j.findings(); len(all) > 0 {
		rows = append(rows, heading("Findings", width)...)
		rows = append(rows, listed(all, smallHeight, width)...)
	}
	return rows
}

// findings are all of the result in its order, each with its weight: what stops, asks or notes.
func (j *job) findings() []string {
	var out []string
	for _, f := range j.result.Findings {
		out = append(out, capital(f.Severity)+": "+sentence(f.Text, f.Cure))
	}
	return out
}

func capital(word string) string {
	if word == "" {
		return "Note"
	}
	return strings.ToUpper(word[:1]) + word[1:]
}

// verdict is the shape's state: the word, its shape, its colour, then why.
func (j *job) verdict(width float64) []row {
	word := j.result.Shape.State
	if word == "" {
		return paragraph("The shape is not judged yet.", dimHeight, true, width)
	}
	l := look(word)
	const h = 7.0
	first := row{height: 1.55 * h, joined: true, draw: func(at plane.Point) []sheet.Item {
		foot := at.Sub(plane.Point{Y: 1.15 * h})
		w := sheet.Width(l.word, h, true)
		items := []sheet.Item{{Layer: sheet.LayerWords, Shape: sheet.Text{S: l.word, At: foot, Height: h, Bold: true}}}
		return append(items, l.symbol.Draw(sheet.LayerWords, l.ink, foot.Add(plane.Point{X: w + 4}), h)...)
	}}
	rows := []row{first}
	rows = append(rows, paragraph(j.meaning(word), smallHeight, false, width)...)
	var why []string
	for _, w := range j.result.Shape.Why {
		why = append(why, sentence(w, ""))
	}
	weak, _ := j.weakest()
	if why = append(why, weak...); len(why) > 0 {
		rows = append(append(rows, gap(1)), listed(why, smallHeight, width)...)
	}
	return rows
}

// meaning says a state of the shape in a sentence.
func (j *job) meaning(word string) string {
	tolerance := j.fig.whole(j.result.Shape.Tolerance)
	switch word {
	case "ready":
		return "The shape as measured: within its share of " + tolerance + " at every mark, and a mistake in a reading would have shown."
	case "unproven":
		if j.result.Shape.Worst == nil {
			return "There is no shape to judge yet."
		}
		return "The shape may be right, but a mistake could pass unseen and move the edge by more than " + tolerance + "."
	case "unfit":
		return "Do not cut from this plan yet. The tolerance of the shape is " + tolerance + "."
	}
	return ""
}

// mostOpen is how many open questions stand in words on the first sheet.
const mostOpen = 8

// open are the mistakes that show, then the findings that stop or ask, the stops first, then marks
// without a place.
func (j *job) open() []string {
	out := j.wrong()
	for _, severity := range []string{"stop", "ask"} {
		for _, f := range j.result.Findings {
			if f.Severity == severity {
				out = append(out, sentence(f.Text, f.Cure))
			}
		}
	}
	if more := len(out) - mostOpen; more > 0 {
		out = append(out[:mostOpen], count(more, "further question stands", "further questions stand")+" among the findings.")
	}
	if missing := j.missing(); len(missing) > 0 {
		out = append(out, "Not fixed yet: "+names(missing, 12)+".")
	}
	if n := j.result.Next; len(n) > 0 {
		out = append(out, "Next: "+strings.TrimSuffix(n[0].Text, ".")+reason(n[0].Why)+".")
	}
	return out
}

// missing are the marks without a place.
func (j *job) missing() []string {
	var out []string
	for _, m := range j.marks {
		if _, ok := j.place(m); !ok {
			out = append(out, m)
		}
	}
	return out
}

// reason is why, after a colon; nothing where nothing is said.
func reason(why string) string {
	if why == "" {
		return ""
	}
	return ": " + strings.TrimSuffix(why, ".")
}

// sentence joins a text and its cure as two sentences.
func sentence(text, cure string) string {
	return sheet.Typeset(strings.TrimSpace(closed(text) + " " + closed(cure)))
}

// closed begins a sentence large, unless it begins with a mark's name, and ends it with a point.
func closed(s string) string {
	s = strings.TrimSpace(s)
	if s == "" {
		return ""
	}
	if strings.HasPrefix(s, "a mistake ") {
		s = "A" + s[1:]
	}
	if first, _, _ := strings.Cut(s, " "); first == strings.ToLower(first) && strings.Trim(first, "abcdefghijklmnopqrstuvwxyz") == "" && len(first) > 1 {
		s = strings.ToUpper(s[:1]) + s[1:]
	}
	if !strings.HasSuffix(s, ".") {
		s += "."
	}
	return s
}
