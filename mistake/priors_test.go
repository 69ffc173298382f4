package mistake_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/mistake"
)

func length(v float64) string { return fmt.Sprintf("%.3f", v) }

// The table has each mistake that a book may set the prior of, once, with odds that are odds, what
// they are odds of, a word on the cause, and where the figure comes from.
func TestPriorsAreComplete(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range mistake.Priors {
		if seen[p.Code] || !slices.Contains(fieldbook.Mistakes, p.Code) {
			t.Errorf("%s stands twice or is no mistake that a book may name", p.Code)
		}
		seen[p.Code] = true
		if !(p.Odds > 0 && p.Odds < 0.1) || p.Cause == "" || p.Source != "common practice, no source" {
			t.Errorf("%+v", p)
		}
		if !slices.Contains([]string{"reading", "row", "column", "peg", "session", "mark"}, p.Of) {
			t.Errorf("%s: odds of each %q", p.Code, p.Of)
		}
	}
	for _, code := range fieldbook.Mistakes {
		if !seen[code] {
			t.Errorf("%s has no prior", code)
		}
	}
	for _, k := range mistake.Misreadings {
		if !seen[k.Code()] {
			t.Errorf("%s is weighed and has no prior", k.Code())
		}
	}
}

// hundred is a court in which one tape is 100 mm too long, and its book with rules.
func hundred(t *testing.T, rules string) answer {
	c := newCourt(5, 6, 0.002)
	c.pegs("A B C D")
	c.rows("A B C D")
	c.tie("B", "r3").is += 0.1
	return ask(t, c.text(tapeOf5+rules))
}

// chanceOf is the posterior that a report gives to a code in one reading.
func (a answer) chanceOf(i int, code string) float64 {
	sum := 0.0
	for _, e := range a.Likely[i] {
		if e.Code == code {
			sum += e.Chance
		}
	}
	return sum
}

// A book's own priors count: the same reading is 100 mm misread by the table, and of no listed kind
// where the book holds that to be next to impossible.
func TestPriorsOfTheBookCount(t *testing.T) {
	plain := hundred(t, "")
	i := plain.of(t, "B r3")
	if plain.State[i] != mistake.Suspect || plain.Likely[i][0].Code != "tenth" || plain.chanceOf(i, "unknown") > 0.01 {
		t.Fatalf("by the table: %v", plain.Likely[i])
	}
	own := hundred(t, "rules: {priors: {tenth: 0.000000000001}}\n")
	if own.State[i] != mistake.Suspect || own.Likely[i][0].Code == "tenth" {
		t.Errorf("with 100 mm as good as impossible: %v", own.Likely[i])
	}
	// Two chances stand to each other as odds × likelihood: a tenfold prior is a tenfold ratio.
	ratio := func(a answer) float64 { return a.chanceOf(i, "tenth") / a.chanceOf(i, "unknown") }
	one, ten := hundred(t, "rules: {priors: {tenth: 0.000002}}\n"), hundred(t, "rules: {priors: {tenth: 0.00002}}\n")
	if r := ratio(ten) / ratio(one); r < 9.9 || r > 10.1 {
		t.Errorf("a tenfold prior changes the ratio %.3g to %.3g: %v %v", ratio(one), ratio(ten), one.Likely[i], ten.Likely[i])
	}
	if !strings.Contains(one.told(), "tenth") && !strings.Contains(one.told(), "unknown") {
		t.Errorf("said: %s", one.told())
	}
}
