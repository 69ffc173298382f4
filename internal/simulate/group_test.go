package simulate_test

import (
	"bytes"
	"math"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// rowPlan and columnPlan leave room for every group.
var groupPlans = []simulate.Plan{plans[1], plans[2]}

// groups calls f for each shape, both plans, so many seeds, with the mistake planted.
func groups(t *testing.T, kind string, seeds int, f func(c, w simulate.Case, m simulate.Mistake)) {
	t.Helper()
	done, tried := 0, 0
	for _, g := range simulate.Groups {
		if g.Code != kind {
			continue
		}
		for seed := range uint64(seeds) {
			for _, p := range groupPlans {
				for _, s := range simulate.Shapes {
					c := simulate.Visit(seed+1, s, p)
					before := append([]byte(nil), c.Book...)
					w, m, ok := g.Plant(c, seed+1)
					tried++
					if !ok {
						continue
					}
					if !bytes.Equal(before, c.Book) || m.Kind != kind || bytes.Equal(before, w.Book) {
						t.Fatalf("%s: the case given was changed, or nothing was planted", title(c))
					}
					agreed(t, c, w, m)
					f(c, w, m)
					done++
				}
			}
		}
	}
	if done < tried*9/10 || done == 0 {
		t.Errorf("%s: planted in %d of %d", kind, done, tried)
	}
}

// agreed says that the book and the case after the mistake say the same, and that readings not
// hit are those before.
func agreed(t *testing.T, c, w simulate.Case, m simulate.Mistake) {
	t.Helper()
	hit := map[int]simulate.Hit{}
	for _, h := range m.Hits {
		hit[h.Index] = h
	}
	gone := len(c.Readings) - len(w.Readings)
	for i, e := range readBack(t, w) {
		x := w.Readings[i]
		h, ok := hit[i]
		if math.Abs(x.Typed[0]-e.value) > 1e-9 || ok && (h.N != x.N || h.Now != x.Typed[0] || h.After != x.Text[0]) {
			t.Fatalf("%s: book %v, case %+v, hit %+v", title(c), e, x, h)
		}
		if !ok && gone == 0 && x.Typed[0] != c.Readings[i].Typed[0] {
			t.Fatalf("%s: reading %s changed unsaid", title(c), x.N)
		}
	}
}

// tieOf is what the case has typed for the first tie of the two.
func tieOf(c simulate.Case, a, b string) (float64, bool) {
	for _, x := range c.Readings {
		if x.Marks[0] == a && x.Marks[1] == b {
			return x.Typed[0], true
		}
	}
	return 0, false
}

func TestColumnsAreExchanged(t *testing.T) {
	groups(t, "columns", 6, func(c, w simulate.Case, m simulate.Mistake) {
		swapped, first, last := 0, -1, -1
		for i, r := range c.Order {
			a, _ := tieOf(c, "A", r)
			b, _ := tieOf(c, "B", r)
			x, _ := tieOf(w, "A", r)
			y, _ := tieOf(w, "B", r)
			switch {
			case x == b && y == a && a != b:
				if first < 0 {
					first = i
				}
				swapped, last = swapped+1, i
			case x != a || y != b:
				t.Fatalf("%s: row %s went from %v, %v to %v, %v", title(c), r, a, b, x, y)
			}
		}
		if 2*swapped > len(m.Hits) || len(m.Hits) < 10 || last-first >= len(m.Hits)/2 {
			t.Fatalf("%s: rows %d to %d, %d exchanged, %d hits", title(c), first, last, swapped, len(m.Hits))
		}
	})
}

func TestNumberingSlips(t *testing.T) {
	skips := 0
	groups(t, "slip", 6, func(c, w simulate.Case, m simulate.Mistake) {
		n := len(c.Order)
		gone := len(c.Readings) - len(w.Readings)
		skips += gone
		from := n
		for i, r := range c.Order {
			was, _ := tieOf(c, m.Peg, r)
			now, there := tieOf(w, m.Peg, r)
			if now == was && from == n {
				continue
			}
			from = min(from, i)
			other := i - 1
			if gone == 1 {
				other = i + 1
			}
			if other == n {
				if there {
					t.Fatalf("%s: the last row still has a reading", title(c))
				}
				continue
			}
			if want, _ := tieOf(c, m.Peg, c.Order[other]); now != want {
				t.Fatalf("%s: row %s reads %v, its neighbour %v", title(c), r, now, want)
			}
		}
		if len(m.Hits) < n-from-gone || len(m.Hits) < 4 || from < 3 {
			t.Fatalf("%s: from row %d of %d, %d hits", title(c), from, n, len(m.Hits))
		}
	})
	if skips < 20 || skips > 64 {
		t.Errorf("%d of 84 slips skip a mark", skips)
	}
}

// The ties after the move meet, by a fit of the peg's place alone, 100 to 300 mm from where it
// stood, within their noise; those before still meet at its first place.
func TestPegMoves(t *testing.T) {
	groups(t, "peg-moved", 6, func(c, w simulate.Case, m simulate.Mistake) {
		from := m.Hits[0].Index
		place := c.Truth[m.Peg]
		for range 20 {
			var a, b, d, e, f float64 // normal equations of the shift
			for i, x := range w.Readings {
				if i < from || (x.Marks[0] != m.Peg && x.Marks[1] != m.Peg) {
					continue
				}
				other := x.Marks[0]
				if other == m.Peg {
					other = x.Marks[1]
				}
				v := place.Sub(c.Truth[other])
				u, miss := v.Unit(), x.Typed[0]-v.Len()
				a, b, d, e, f = a+u.X*u.X, b+u.X*u.Y, d+u.Y*u.Y, e+u.X*miss, f+u.Y*miss
			}
			det := a*d - b*b
			place = place.Add(plane.Point{X: (d*e - b*f) / det, Y: (a*f - b*e) / det})
		}
		if by := place.Dist(c.Truth[m.Peg]); by < 0.07 || by > 0.33 {
			t.Fatalf("%s: %s moved by %.3f m", title(c), m.Peg, by)
		}
		for i, x := range w.Readings {
			if i < from || (x.Marks[0] != m.Peg && x.Marks[1] != m.Peg) {
				continue
			}
			other := x.Marks[0]
			if other == m.Peg {
				other = x.Marks[1]
			}
			if miss := x.Typed[0] - place.Dist(c.Truth[other]); math.Abs(miss) > 6*x.SD[0] {
				t.Fatalf("%s: reading %s misses the new place by %.3f m", title(c), x.N, miss)
			}
		}
	})
}

func TestTapeZeroIsConstant(t *testing.T) {
	groups(t, "tape-zero", 4, func(c, w simulate.Case, m simulate.Mistake) {
		n := 0
		for i, x := range w.Readings {
			by := x.Typed[0] - c.Readings[i].Typed[0]
			if want := map[bool]float64{true: 0.1}[x.By == "Q"]; math.Abs(by-want) > 1e-9 {
				t.Fatalf("%s: reading %s by %s changed by %v", title(c), x.N, x.By, by)
			}
			if x.By == "Q" {
				n++
			}
		}
		if n != len(m.Hits) {
			t.Fatalf("%s: %d readings, %d hits", title(c), n, len(m.Hits))
		}
	})
}

// A reading at the wrong edge changes by the offset times the cosine between tape and normal.
func TestWrongEdgeIsBeside(t *testing.T) {
	groups(t, "wrong-edge", 4, func(c, w simulate.Case, m simulate.Mistake) {
		for _, h := range m.Hits {
			x := w.Readings[h.Index]
			if by := math.Abs(h.Now - h.Was); by > 0.062 || x.Marks[0] != m.Peg {
				t.Fatalf("%s: %+v", title(c), h)
			}
		}
		if n := len(m.Hits); n < 5 || n > len(c.Order)-3 {
			t.Fatalf("%s: %d rows", title(c), n)
		}
	})
}
