package mistake_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"brimline/internal/simulate"
	"brimline/mistake"
	"brimline/plane"
)

// exchange writes A's lengths in B's column for some rows, and gives the readings hit.
func (c *court) exchange(from, to int) []string {
	var hit []string
	for _, m := range c.rim[from:to] {
		a, b := c.tie("A", m), c.tie("B", m)
		a.is, b.is = b.is, a.is
		hit = append(hit, "A "+m, "B "+m)
	}
	return hit
}

// Most rows written with A and B exchanged draw the figure over to the wrong shape while its hand is
// chosen, which here custom or a `side` of one mark tells: the hand is right all the same.
func TestExchangedRowsLeaveTheHand(t *testing.T) {
	plan := simulate.Plan{Called: "exchanged", Pegs: 3, PegTies: true, Base: 3, Checks: 4}
	most, turned := 0, 0
	for seed := range uint64(60) {
		s := simulate.Shapes[int(seed)%len(simulate.Shapes)]
		c, m, ok := simulate.Groups[0].Plant(simulate.Visit(seed, s, plan), seed)
		if !ok || len(m.Hits) <= len(c.Order) { // two hits a row
			continue
		}
		most++
		a := ask(t, string(c.Book))
		for _, name := range c.Order {
			if y := a.Solution.X.Point(a.net.ByName[name]).Y; math.Abs(c.Truth[name].Y) > 0.3 && y*c.Truth[name].Y < 0 {
				turned++
				t.Logf("seed %d: %s at y %.3f, is at %.3f: %s", seed, name, y, c.Truth[name].Y, a.told())
				break
			}
		}
	}
	if most < 10 || turned > 0 {
		t.Errorf("%d of %d turned over", turned, most)
	}
}

// Where C stands midway between A and B its tapes do not tell rows exchanged from rows as read: only a
// tape from one of the first to one of the others does, and those within either agree. Which of the
// two are exchanged nothing tells.
func TestExchangedRowsShowAcrossOnly(t *testing.T) {
	named := 0
	for seed := range uint64(6) {
		c := newCourt(seed, 14, 0.001)
		c.at["C"] = plane.Point{X: c.at["B"].X / 2, Y: 9.6}
		c.pegs("A B C")
		c.rows("A B C")
		for _, p := range []string{"r1 r4", "r8 r12", "r9 r13", "r3 r10"} {
			var a, b string
			fmt.Sscan(p, &a, &b)
			c.read(a, b, "")
		}
		hit := c.exchange(6, 14)
		var rest []string
		for _, m := range c.rim[:6] {
			rest = append(rest, "A "+m, "B "+m)
		}
		a := ask(t, c.text(tapeOf5))
		if len(a.Mistakes) == 1 && a.Mistakes[0].Code == "columns" {
			if said := a.names(a.Mistakes[0].Obs); max(overlap(said, hit), overlap(said, rest)) >= 0.8 {
				named++
			}
		}
		if slices.ContainsFunc(a.Mistakes, func(m mistake.Mistake) bool { return len(m.Obs) == 1 }) {
			t.Logf("seed %d: %s", seed, a.told())
		}
	}
	if named < 5 {
		t.Errorf("named in %d of 6", named)
	}
}

// On outlines with long straights and close corners the steps along the rim are of two sorts: the ends
// of the rows exchanged are found all the same.
func TestExchangedRowsEndAtStraights(t *testing.T) {
	plan := simulate.Plan{Called: "exchanged", Pegs: 3, PegTies: true, Base: 3, Rows: true, Checks: 4}
	asked, named := 0, 0
	for _, s := range simulate.Shapes {
		if s.Name() != "rounded rectangle" {
			continue
		}
		for seed := range uint64(25) {
			c, m, ok := simulate.Groups[0].Plant(simulate.Visit(seed, s, plan), seed)
			if !ok {
				continue
			}
			asked++
			a := ask(t, string(c.Book))
			var hit []string
			for _, h := range m.Hits {
				hit = append(hit, c.Readings[h.Index].Marks[0]+" "+c.Readings[h.Index].Marks[1])
			}
			if slices.ContainsFunc(a.Mistakes, func(m mistake.Mistake) bool {
				return m.Code == "columns" && overlap(a.names(m.Obs), hit) >= 0.8
			}) {
				named++
			} else {
				t.Logf("seed %d: told %s, hit %v", seed, a.told(), hit)
			}
		}
	}
	if asked < 15 || 20*named < 19*asked {
		t.Errorf("named in %d of %d", named, asked)
	}
}
