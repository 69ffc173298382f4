package mistake_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"brimline/mistake"
	"brimline/plane"
)

// onlyOne fails unless exactly one mistake of the code is told, and gives it.
func (a answer) onlyOne(t *testing.T, what, code string) (mistake.Mistake, bool) {
	t.Helper()
	if len(a.Mistakes) != 1 || a.Mistakes[0].Code != code {
		t.Errorf("%s: told %s", what, a.told())
		return mistake.Mistake{}, false
	}
	return a.Mistakes[0], true
}

// overlap is the share of readings in both of those in either.
func overlap(a, b []string) float64 {
	both := 0
	for _, n := range a {
		if slices.Contains(b, n) {
			both++
		}
	}
	return float64(both) / float64(len(a)+len(b)-both)
}

// edited fails unless the edits bring every reading back to what it was.
func (a answer) edited(t *testing.T, what string, m mistake.Mistake, was map[string]float64, tol float64) {
	t.Helper()
	for _, e := range m.Edits {
		name := a.name(a.first.ObsOf(e.Part))
		if w, ok := was[name]; ok && !(math.Abs(e.Value-w) <= tol) {
			t.Errorf("%s: %s would be %.4f, was %.4f", what, name, e.Value, w)
		}
	}
}

// A and B swapped from a row on, and between two rows, with three pegs: both pegs and the rows are
// named, each length goes back to where it belongs.
func TestColumnsSwapped(t *testing.T) {
	for seed := range uint64(5) {
		for _, rows := range [][2]int{{4, 10}, {5, 10}, {2, 7}} {
			c := newCourt(seed, 10, 0.001)
			c.pegs("A B C")
			c.rows("A B C")
			was := map[string]float64{}
			var hit []string
			for _, m := range c.rim[rows[0]:rows[1]] {
				a, b := c.tie("A", m), c.tie("B", m)
				was["A "+m], was["B "+m] = a.is, b.is
				hit = append(hit, "A "+m, "B "+m)
				a.is, b.is = b.is, a.is
			}
			what := fmt.Sprintf("seed %d, rows %v", seed, rows)
			a := ask(t, c.text(tapeOf5))
			m, ok := a.onlyOne(t, what, "columns")
			if !ok {
				continue
			}
			pegs := []string{a.net.Marks[m.Peg], a.net.Marks[m.Other]}
			slices.Sort(pegs)
			if !slices.Equal(pegs, []string{"A", "B"}) || overlap(a.names(m.Obs), hit) < 0.8 || m.Chance < 0.95 {
				t.Errorf("%s: pegs %v, %v of %v, chance %.3f", what, pegs, a.names(m.Obs), hit, m.Chance)
			}
			a.edited(t, what, m, was, 0.0006)
			a.placed(t, what, c, 0.01)
		}
	}
}

// placed fails unless the marks are where they are, by their distances from the pegs.
func (a answer) placed(t *testing.T, what string, c *court, tol float64) {
	t.Helper()
	for name, p := range c.at {
		m, ok := a.net.ByName[name]
		if !ok {
			continue
		}
		for _, peg := range []string{"A", "B"} {
			d := a.Solution.X.Point(m).Dist(a.Solution.X.Point(a.net.ByName[peg]))
			if !(math.Abs(d-p.Dist(c.at[peg])) <= tol) {
				t.Errorf("%s: %s stands %.3f from %s, is %.3f", what, name, d, peg, p.Dist(c.at[peg]))
			}
		}
	}
}

// The numbering of B's column slipped by one from a row on, forward (a row skipped) and backward (a
// length written twice): peg and readings are named, and no other reading is blamed, in nine of ten.
func TestNumberingSlipped(t *testing.T) {
	asked, named := 0, 0
	for seed := range uint64(5) {
		for _, step := range []int{1, -1} {
			for _, from := range []int{3, 5} {
				c := newCourt(seed, 11, 0.001)
				c.pegs("A B C")
				c.rows("A B C")
				n := len(c.rim)
				read := make([]float64, n)
				for k, m := range c.rim {
					read[k] = c.tie("B", m).is
				}
				var hit []string
				for k := from; k < n; k++ {
					if l := k + step; l < n { // the last length of a column that skipped a row is missing
						c.tie("B", c.rim[k]).is = read[l]
						hit = append(hit, "B "+c.rim[k])
					}
				}
				if step > 0 {
					for k := range c.tapes {
						if c.tapes[k].a == "B" && c.tapes[k].b == c.rim[n-1] {
							c.tapes = append(c.tapes[:k], c.tapes[k+1:]...)
							break
						}
					}
				}
				what := fmt.Sprintf("seed %d, step %d from row %d", seed, step, from)
				a := ask(t, c.text(tapeOf5))
				asked++
				if len(a.Mistakes) != 1 || a.Mistakes[0].Code != "slip" {
					t.Logf("%s: told %s", what, a.told())
					continue
				}
				named++
				m := a.Mistakes[0]
				if m.Peg < 0 || a.net.Marks[m.Peg] != "B" || overlap(a.names(m.Obs), hit) < 0.8 {
					t.Errorf("%s: peg %d, %v of %v", what, m.Peg, a.names(m.Obs), hit)
				}
				a.placed(t, what, c, 0.03) // the row whose length is lost stands on two tapes
			}
		}
	}
	if 10*named < 9*asked {
		t.Errorf("named in %d of %d", named, asked)
	}
}

// A peg moved 150 mm half-way: named with its shift, and the marks come out as they are.
func TestPegMoved(t *testing.T) {
	for seed := range uint64(6) {
		c := newCourt(seed, 12, 0.001)
		c.pegs("A B C")
		for k, m := range c.rim {
			if k == 6 {
				c.at["C"] = c.at["C"].Add(plane.Point{X: 0.15}.Turn(float64(seed)))
			}
			for _, p := range []string{"A", "B", "C"} {
				c.read(p, m, "")
			}
		}
		c.at["C"] = c.at["C"].Sub(plane.Point{X: 0.15}.Turn(float64(seed)))
		var hit []string
		for _, m := range c.rim[6:] {
			hit = append(hit, "C "+m)
		}
		what := fmt.Sprintf("seed %d", seed)
		a := ask(t, c.text(tapeOf5))
		m, ok := a.onlyOne(t, what, "peg-moved")
		if !ok {
			continue
		}
		if a.net.Marks[m.Peg] != "C" || math.Abs(m.Size-0.15) > 0.015 || overlap(a.names(m.Obs), hit) < 0.8 {
			t.Errorf("%s: %s moved %.3f, %v of %v", what, a.net.Marks[m.Peg], m.Size, a.names(m.Obs), hit)
		}
		a.placed(t, what, c, 0.012)
	}
}

// A second tape whose hook was counted, 100 mm, in the second half of the rows: named with the tape
// and the size; every length of it goes back.
func TestTapeZero(t *testing.T) {
	for seed := range uint64(6) {
		for _, zero := range []float64{0.1, -0.1} {
			c := newCourt(seed, 10, 0.001)
			c.pegs("A B C")
			was := map[string]float64{}
			var hit []string
			for k, m := range c.rim {
				for _, p := range []string{"A", "B", "C"} {
					if k < 5 {
						c.read(p, m, "")
						continue
					}
					x := &c.tapes[c.read(p, m, ", tool: reel")]
					was[p+" "+m] = x.is
					x.is += zero
					hit = append(hit, p+" "+m)
				}
			}
			what := fmt.Sprintf("seed %d, zero %g", seed, zero)
			a := ask(t, c.text(tapeOf5))
			m, ok := a.onlyOne(t, what, "tape-zero")
			if !ok {
				continue
			}
			if m.Tool != "reel" || math.Abs(m.Size-zero) > 0.004 || overlap(a.names(m.Obs), hit) < 0.8 {
				t.Errorf("%s: %q, %.4f, %v", what, m.Tool, m.Size, a.names(m.Obs))
			}
			a.edited(t, what, m, was, 0.004)
			a.placed(t, what, c, 0.012)
		}
	}
}
