package answer

import (
	"fmt"
	"strings"

	"brimline/finding"
	"brimline/mistake"
	"brimline/survey"
	"brimline/unit"
)

// Leave says what would be left open by leaving now: the verdict, the odds for each order and what
// minutes would buy, every test with its figures, and what could be wrong. It is for a person who
// packs up all the same.
func Leave(r *survey.Result, risks []survey.Leaving, u unit.Unit) string {
	m := measure{style: unit.StyleFor(u)}
	return join(
		"If you leave now\n"+head(r, m),
		risking(risks, m),
		tests(r, m),
		wrong(r, m),
	)
}

// risking says for each order the odds that it is spoilt, the likeliest ways, and the readings that
// would make it ready.
func risking(risks []survey.Leaving, m measure) string {
	var b strings.Builder
	for _, l := range risks {
		b.WriteString(bullet(named(l.Order) + ": " + spoilt(l)))
		for _, w := range l.Ways {
			b.WriteString(wrap(sentence(way(w, m)), "  > ", "    "))
		}
		b.WriteString(buying(l, m))
	}
	if b.Len() == 0 {
		return ""
	}
	return "What it risks\n" + b.String()
}

// spoilt says the odds that an order is spoilt, where there is something to be spoilt.
func spoilt(l survey.Leaving) string {
	switch {
	case l.Odds >= 1:
		return "its figures must not be used"
	case l.Odds == 0 && len(l.Ways) == 0:
		return "there is nothing to judge yet"
	}
	return percent(l.Odds) + " that it is spoilt"
}

// way is one way for a piece to be spoilt, with its odds.
func way(w survey.Way, m measure) string {
	text := misreading(w.Code)
	if w.Size != nil {
		text += " (" + m.smallUnit(*w.Size) + ")"
	}
	if len(w.Readings) > 0 {
		text += ", " + plural(len(w.Readings), "reading") + " " + finding.List(w.Readings)
	}
	if w.At != "" {
		text += " at " + w.At
	}
	return text + ": " + percent(w.Odds)
}

// misreading is a way in words: ordinary errors, a doubt, or a code of the list of human mistakes.
func misreading(code string) string {
	switch code {
	case "error":
		return "ordinary errors"
	case "suspect":
		return "a suspect reading that is right after all"
	case "doubtful":
		return "another one of doubtful readings that is the wrong one"
	}
	for _, p := range mistake.Priors {
		if p.Code == code {
			return p.Cause
		}
	}
	return code
}

// buying is what minutes would buy: the readings that would make an order ready.
func buying(l survey.Leaving, m measure) string {
	if len(l.Buy) == 0 {
		return ""
	}
	says := "It would be ready after"
	if !l.Ready {
		says = "It would not be ready, but better known after"
	}
	text := wrap(fmt.Sprintf("%s %s, about %s:", says, counted(len(l.Buy), "more reading"), minutes(l.Minutes)), "  ", "  ")
	for i, n := range l.Buy {
		if i == mostBought {
			text += fmt.Sprintf("  and %d more\n", len(l.Buy)-i)
			break
		}
		lead := fmt.Sprintf("  %d. ", i+1)
		text += wrap(proposal(n, m), lead, strings.Repeat(" ", len(lead)))
	}
	return text
}

// mostBought is how many of the readings that would make an order ready are named.
const mostBought = 5

// tests tables the tests of the shape and of every order: the ± that there is, the ± that may be
// used, the odds that a human mistake stands unseen and spoils the piece, and the odds allowed.
func tests(r *survey.Result, m measure) string {
	t := table{
		title: "Tests (± 95 % and what may be used of the tolerance in " + m.smallName() + "; unseen: odds that a listed human mistake passes unseen and spoils it)",
		heads: []string{"of", "test", "at", "±", "may be", "unseen", "state"},
		right: []bool{false, false, false, true, true, true, false},
	}
	add := func(of string, list []survey.Test) {
		for _, x := range list {
			unseen := nothing
			if x.Unseen != nil {
				unseen = percent(*x.Unseen)
			}
			t.add(of, x.Name, x.At, m.plus(x.U95), m.tenth(x.Share*x.Tolerance), unseen, marked(x.State))
		}
	}
	add("shape", r.Shape.Tests)
	for _, o := range r.Orders {
		add(o.Name, o.Tests)
	}
	text := t.String()
	if text == "" {
		return ""
	}
	return text + wrap("Of unseen mistakes the shape allows "+percent(r.Shape.Unseen)+".", "", "")
}

// marked is a state with its shape before its word.
func marked(state string) string { return strings.TrimSpace(shapeOf(state) + " " + state) }

// wrong lists what could be wrong: what is odd, what nothing controls, what no second reading holds.
func wrong(r *survey.Result, m measure) string {
	text := odd(r, m)
	for _, k := range r.Mistakes {
		text += bullet(upper(strings.TrimSuffix(k.Text, ".")) + " (" + percent(k.Probability) + ")")
	}
	for _, s := range []string{alone(r), loose(r), hiding(r, m), moving(r, m)} {
		if s != "" {
			text += bullet(s)
		}
	}
	if text == "" {
		return ""
	}
	return "What could be wrong\n" + text
}
