package simulate_test

import (
	"bytes"
	"math"
	"testing"

	"brimline/internal/simulate"
)

// The second of a crew takes over once, in the middle third, and keeps their tape; times go up.
func TestCrewsChangeOnce(t *testing.T) {
	visits(2, func(c simulate.Case, p simulate.Plan) {
		if len(p.Crew) == 0 {
			return
		}
		changes, at := 0, 0
		for i := 1; i < len(c.Readings); i++ {
			x, before := c.Readings[i], c.Readings[i-1]
			if x.By != before.By {
				changes, at = changes+1, i
			}
			if x.Time <= before.Time {
				t.Fatalf("%s: %s comes after %s", title(c), x.Time, before.Time)
			}
			if reel := x.Tool == "reel"; reel != (p.SecondTape && x.By == "Q") {
				t.Fatalf("%s: %s reads with %s", title(c), x.By, x.Tool)
			}
		}
		round := p.Pegs * len(c.Order)
		if changes != 1 || at < round/4 || at > round*3/4+3 {
			t.Fatalf("%s: %d changes, the last before reading %d", title(c), changes, at)
		}
		if p.Rows && (c.Readings[at].Marks[0] != "A" || c.Readings[at-1].Marks[1] == c.Readings[at].Marks[1]) {
			t.Fatalf("%s: the change splits the row of %s", title(c), c.Readings[at].Marks[1])
		}
	})
}

// Checks asked for as such stand in the book as such, and only they do.
func TestChecksAreMarked(t *testing.T) {
	p := simulate.Plan{Called: "marked", Pegs: 2, Checks: 6, Marked: true}
	c := simulate.Visit(1, simulate.Shapes[0], p)
	marked := 0
	for i, x := range c.Readings {
		if x.Check {
			marked++
		}
		if between := x.Marks[0][0] == 'r'; between != x.Check {
			t.Errorf("reading %d: %+v", i+1, x)
		}
	}
	if marked != 6 || bytes.Count(c.Book, []byte("check: true")) != 6 {
		t.Errorf("%d checks", marked)
	}
}

func TestTapeTakesOneMore(t *testing.T) {
	sum, n := 0.0, 0
	for seed := range uint64(300) {
		c := simulate.Visit(seed+1, simulate.Shapes[seed%7], plans[3])
		before := string(c.Book)
		last := map[float64]bool{}
		for _, pair := range [][2]string{{"r1", "r5"}, {"r5", "r1"}, {"A", "r2"}} {
			more := c.Tape(pair[0], pair[1])
			if string(c.Book) != before || len(more.Readings) != len(c.Readings)+1 {
				t.Fatalf("%s: %d readings after one more", title(c), len(more.Readings))
			}
			c, before = more, string(more.Book)
			all := readBack(t, c)
			e := all[len(all)-1]
			z := (e.value - e.true) / math.Sqrt(e.sd*e.sd+rounding)
			noise := c.Readings[e.reading].Read[0] - e.true
			if last[noise] {
				t.Fatalf("%s: read again with the same noise", title(c))
			}
			last[noise] = true
			sum += z * z
			n++
		}
	}
	if d := math.Abs(sum - float64(n)); d > 3.5*math.Sqrt(2*float64(n)) {
		t.Errorf("χ² of %d tapes more is %.0f", n, sum)
	}
}
