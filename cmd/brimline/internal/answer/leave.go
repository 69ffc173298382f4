package answer

import (
	"strings"

	"brimline/survey"
	"brimline/unit"
)

// Leave says what would be left open by leaving now: the verdict, every test with its figures and
// its odds, and what could be wrong. It is for a person who packs up all the same.
func Leave(r *survey.Result, u unit.Unit) string {
	m := measure{style: unit.StyleFor(u)}
	return join(
		"If you leave now\n"+head(r, m),
		tests(r, m),
		wrong(r, m),
		next("Before you go", r.Next, solvedNext, m),
	)
}

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
			allowed := x.Share * x.Tolerance
			t.add(of, x.Name, x.At, m.plus(x.U95), m.tenth(allowed), unseen, marked(x.State))
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
