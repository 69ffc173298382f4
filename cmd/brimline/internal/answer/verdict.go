package answer

import (
	"strings"

	"brimline/survey"
)

// states of a verdict, the best first.
var states = []string{"ready", "unproven", "unfit"}

// Verdict is the word for everything: the worst of the shape's and of every order's. A word that is
// not on the list counts as the worst.
func Verdict(r *survey.Result) string {
	worst := r.Shape.State
	for _, o := range r.Orders {
		if rank(o.State) > rank(worst) {
			worst = o.State
		}
	}
	return worst
}

func rank(state string) int {
	for i, s := range states {
		if s == state {
			return i
		}
	}
	return len(states)
}

// mostWeak is how many of the weakest places are said.
const mostWeak = 3

// head is the word, what it asks of the reader and why, and the places where most could hide.
func head(r *survey.Result, m measure) string {
	text := titled(r, Verdict(r)) + "\n" + wrap(mayGo(r, m), "", "")
	if w := r.Shape.Worst; w != nil {
		where := ""
		if r.Shape.At != "" {
			where = ", at " + r.Shape.At
		}
		text += wrap("Least known across an outline: ± "+m.smallUnit(m.up(*w))+" (95 %)"+where+".", "", "")
	}
	for _, w := range r.Shape.Why {
		text += bullet(upper(w))
	}
	return text + weakest(r) + orders(r, m)
}

// titled puts the book's name before a word.
func titled(r *survey.Result, word string) string {
	if r.Book.Name == "" {
		return word
	}
	return Plain(r.Book.Name) + ": " + word
}

// mayGo answers the third question of DESIGN: the shape first, then whatever order is worse.
func mayGo(r *survey.Result, m measure) string {
	word := Verdict(r)
	text := "May I go? " + map[string]string{"ready": "Yes. ", "unproven": "Not yet. ", "unfit": "No. "}[word] + meaning(r, m)
	if word != r.Shape.State {
		var names []string
		for _, o := range r.Orders {
			if o.State == word {
				names = append(names, o.Name)
			}
		}
		text += " But " + strings.Join(names, ", ") + ": " + word + "."
	}
	return text
}

// meaning says what the state of the shape asks of the reader. The states are those of
// docs/conventions.md.
func meaning(r *survey.Result, m measure) string {
	tolerance := m.smallUnit(r.Shape.Tolerance)
	switch r.Shape.State {
	case "ready":
		return "The shape is known well enough for its tolerance of " + tolerance + ", and a mistake that would spoil it would have shown."
	case "unproven":
		if r.Shape.Worst == nil {
			return "There is no shape to judge yet."
		}
		return "The shape may be right, but a mistake could stand in the readings unseen and move it beyond its tolerance of " + tolerance + "."
	case "unfit":
		return "Cut nothing from this yet: the shape is not settled well enough for its tolerance of " + tolerance + "."
	}
	return "Nothing can be said of the shape."
}

// orders says the state of each order with its first test that is not passed, and what it lacks.
func orders(r *survey.Result, m measure) string {
	var b strings.Builder
	for _, o := range r.Orders {
		text := o.Name + ": " + o.State
		for _, t := range o.Tests {
			if t.State == o.State && o.State != "ready" {
				text += ", " + testing(t, m)
				break
			}
		}
		b.WriteString(bullet(text))
		for _, l := range o.Lacks {
			b.WriteString(wrap(sentence("lacks "+l.What+": "+l.How), "  > ", "    "))
		}
	}
	return b.String()
}

// testing names a test with its place and its reason, else its figures.
func testing(t survey.Test, m measure) string {
	text := t.Name
	if t.At != "" {
		text += " at " + t.At
	}
	if t.Why != "" {
		return text + ": " + t.Why
	}
	if t.U95 != nil {
		text += ": ± " + m.smallUnit(m.up(*t.U95)) + " where " + m.tenthUnit(t.Share*t.Tolerance) + " may be used"
	}
	return text
}

// weakest are the sentences that everything serves.
func weakest(r *survey.Result) string {
	var b strings.Builder
	for i, w := range r.Shape.Weakest {
		if i == mostWeak {
			break
		}
		b.WriteString(bullet(w.Text))
	}
	return b.String()
}
