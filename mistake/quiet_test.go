package mistake_test

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/mistake"
)

// insert puts readings at the end of a book's list.
func insert(text, readings string) string {
	return strings.Replace(text, "lines:", readings+"lines:", 1)
}

// All noise three times as large as stated: no more readings are suspect than the 0.5 % that may be in
// a book without mistakes, though many lie far beyond the limit of the w-test.
func TestCoarsePrecisionIsNoMistake(t *testing.T) {
	beyond, suspect, all := 0, 0, 0
	for seed := range uint64(25) {
		c := newCourt(seed, 12, 0.015)
		c.pegs("A B C D")
		c.rows("A B C D")
		a := ask(t, c.text(tapeOf5))
		for _, w := range a.first.W {
			if math.Abs(w) > 5 {
				beyond++
			}
		}
		suspect, all = suspect+len(a.in(mistake.Suspect)), all+len(a.State)
	}
	if 200*suspect > all {
		t.Errorf("%d of %d readings are suspect", suspect, all)
	}
	if beyond < 25 {
		t.Errorf("only %d readings beyond 5", beyond)
	}
}

// A metre in a book of coarse tapes is still a metre.
func TestMistakeBesideCoarsePrecision(t *testing.T) {
	found := 0
	for seed := range uint64(10) {
		c := newCourt(seed, 12, 0.015)
		c.pegs("A B C D")
		c.rows("A B C D")
		c.tie("B", "r4").is++
		if a := ask(t, c.text(tapeOf5)); a.State[a.of(t, "B r4")] == mistake.Suspect {
			found++
		}
	}
	if found < 9 {
		t.Errorf("the metre is found in %d of 10", found)
	}
}

// In 200 books without a mistake hardly a reading is suspect. Where nothing is wrong, a likelihood
// ratio of K comes up with a chance of 1/K at most; a reading needs odds of 19 against none to be
// suspect, that is a ratio of 19/p with the prior p of a mistake in it. So at most p/19 of the
// readings, with three sd of chance; and of the groups likewise.
func TestNothingInACleanBook(t *testing.T) {
	single, group := 0.0, 0.0
	for _, p := range mistake.Priors {
		if p.Of == "reading" {
			single += p.Odds
		} else {
			group += p.Odds * 12 // columns, rows, pegs and sessions of a book: no more than a dozen each
		}
	}
	const books = 200
	readings, suspects, told, odd := 0, 0, 0, 0
	plan := simulate.Plan{Called: "four pegs", Pegs: 4, PegTies: true, Base: 2}
	for seed := range uint64(books) {
		c := simulate.Visit(3000+seed, simulate.Shapes[int(seed)%len(simulate.Shapes)], plan)
		a := ask(t, string(c.Book))
		readings += len(a.State)
		suspects += len(a.in(mistake.Suspect))
		for _, m := range a.Mistakes {
			if len(m.Obs) > 1 {
				told++
			}
		}
		for _, w := range a.first.W {
			if math.Abs(w) > 3.29 {
				odd++
			}
		}
	}
	bound := func(n float64) int { return int(n + 3*math.Sqrt(n)) }
	if most := bound(float64(readings) * single / 19); suspects > most {
		t.Errorf("%d of %d good readings are suspect, at most %d by the priors", suspects, readings, most)
	}
	if most := bound(books * group / 19); told > most {
		t.Errorf("%d groups told in %d books, at most %d by the priors", told, books, most)
	}
	t.Logf("%d readings, %d beyond 3.29, %d suspect, %d groups told", readings, odd, suspects, told)
	if odd < readings/4000 || readings < 10000 {
		t.Errorf("%d of %d readings beyond 3.29: the test asks too little", odd, readings)
	}
}

// The same book gives the same report, bit by bit.
func TestSameBookSameReport(t *testing.T) {
	for seed := range uint64(4) {
		c := simulate.Visit(40+seed, simulate.Shapes[int(seed)%len(simulate.Shapes)], simulate.Plan{Called: "three pegs", Pegs: 3, PegTies: true, Base: 3, Rows: true, Checks: 4, Neighbours: seed%2 == 0})
		c, _ = simulate.Wrong(c, seed, 0.05)
		first := ask(t, string(c.Book))
		if len(first.Mistakes) == 0 {
			t.Errorf("seed %d: nothing was found to compare", seed)
		}
		for range 4 {
			again := ask(t, string(c.Book))
			one, two := report(first), report(again)
			if one != two {
				t.Errorf("seed %d: two reports of one book\n%s\n%s", seed, one, two)
			}
			if !reflect.DeepEqual(first.Solution.X, again.Solution.X) || !reflect.DeepEqual(first.Other, again.Other) {
				t.Errorf("seed %d: two places of one book", seed)
			}
		}
	}
}

// report prints everything that was found.
func report(a answer) string {
	return fmt.Sprintf("%v %v %v %+v %+v %+v %v", a.State, a.Group, a.Wrong, a.Likely, a.Groups, a.Mistakes, a.Held)
}

// Where the readings check nothing, or nothing is wrong, the solution itself is handed back.
func TestNothingToFind(t *testing.T) {
	c := newCourt(1, 4, 0.002)
	c.pegs("A B")
	c.rows("A B")
	a := ask(t, c.text(tapeOf5))
	if a.Solution != a.first || len(a.Mistakes) > 0 || len(a.in(mistake.Good)) != len(c.tapes) {
		t.Errorf("two pegs and nothing more: %s", a.told())
	}
	c = newCourt(2, 5, 0.002)
	c.pegs("A B C D")
	c.rows("A B C D")
	if a := ask(t, c.text(tapeOf5)); a.Solution != a.first || len(a.Mistakes) > 0 || len(a.Held) > 0 {
		t.Errorf("nothing wrong: %s", a.told())
	}
}
