package mistake_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"brimline/mistake"
)

// A tie taped from another peg than the one written: said so, with the edit to the right peg.
func TestWrongPeg(t *testing.T) {
	named := 0
	for seed := range uint64(6) {
		c := newCourt(seed, 8, 0.001)
		c.pegs("A B C D")
		c.rows("A B C D")
		c.tie("A", "r4").is = c.at["C"].Dist(c.at["r4"])
		a := ask(t, c.text(tapeOf5))
		i := a.of(t, "A r4")
		if !slices.Equal(a.in(mistake.Suspect), []string{"A r4"}) {
			t.Errorf("seed %d: suspect %v, %s", seed, a.in(mistake.Suspect), a.told())
			continue
		}
		if e := a.Likely[i][0]; e.Code != "wrong-peg" || e.Peg < 0 || a.net.Marks[e.Peg] != "C" || !math.IsNaN(e.Value) {
			t.Errorf("seed %d: %+v", seed, a.Likely[i])
			continue
		}
		named++
		m := a.Mistakes[0]
		if len(m.Edits) != 1 || a.net.Marks[m.Edits[0].Peg[0]] != "A" || a.net.Marks[m.Edits[0].Peg[1]] != "C" {
			t.Errorf("seed %d: edits %+v", seed, m.Edits)
		}
	}
	if named < 6 {
		t.Errorf("%d of 6 named", named)
	}
}

// Two mistakes at one mark: both are suspect, each with its length, and nothing else is blamed.
func TestTwoMistakesAtOneMark(t *testing.T) {
	for seed := range uint64(6) {
		for k, pair := range [][2]float64{{1, 0.1}, {-0.3048, 0.1}, {0.1, 0.1}, {1, -1}} {
			c := newCourt(seed, 8, 0.001)
			c.pegs("A B C D")
			c.rows("A B C D")
			c.read("r5", "r1", "")
			c.read("r5", "r3", "")
			x, y := c.tie("A", "r5"), c.tie("C", "r5")
			was := []float64{x.is, y.is}
			x.is, y.is = x.is+pair[0], y.is+pair[1]
			a := ask(t, c.text(tapeOf5))
			what := fmt.Sprintf("seed %d, %v", seed, pair)
			if !slices.Equal(a.in(mistake.Suspect), []string{"A r5", "C r5"}) || len(a.in(mistake.Doubtful)) > 0 {
				t.Errorf("%s (%d): suspect %v, doubtful %v, %s", what, k, a.in(mistake.Suspect), a.in(mistake.Doubtful), a.told())
				continue
			}
			for n, name := range []string{"A r5", "C r5"} {
				near(t, what+": "+name+" before", a.Likely[a.of(t, name)][0].Value, was[n], 0.002)
			}
			a.placed(t, what, c, 0.012)
		}
	}
}

// A mistake in an offset's hand-length and in an instrument's point: the offset loses the part that
// is wrong, the point goes whole.
func TestPartsThatGo(t *testing.T) {
	c := newCourt(3, 6, 0.001)
	c.pegs("A B C D")
	c.rows("A B C D")
	extra := ""
	for k, m := range c.rim {
		p := c.at[m]
		off, x := 0.0, p.X+2
		if k == 2 {
			off = 1 // read a metre too long
		}
		if k == 4 {
			x += 0.1
		}
		extra += fmt.Sprintf("- {offset: %s, line: A B, at: %.3f, left: %.3f}\n- {seen: %s, setup: T, at: [%.3f, %.3f]}\n", m, p.X, p.Y+off, m, x, p.Y-1)
	}
	a := ask(t, insert(c.text(tapeOf5), extra))
	if got := a.in(mistake.Suspect); len(got) != 2 || got[0] != "r3 A B" || got[1] != "r5" {
		t.Fatalf("suspect %v, %s", got, a.told())
	}
	i, j := a.of(t, "r3 A B"), a.of(t, "r5")
	p, q := a.first.First[i], a.first.First[j]
	if s := a.Solution; s.Out[p] || !s.Out[p+1] || !s.Out[q] || !s.Out[q+1] {
		t.Errorf("out: offset %v, seen %v", s.Out[p:p+2], s.Out[q:q+2])
	}
	if e := a.Likely[i][0]; e.Code != "metre" || e.Part != p+1 {
		t.Errorf("offset: %+v", a.Likely[i])
	}
}
