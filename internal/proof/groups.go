package main

import (
	"brimline/internal/simulate"
	"brimline/survey"
)

// inCommon is the least share of readings that a named group has in common with the mistaken
// ones, of those in either: where a peg moved or a row was swapped, the readings at the border
// may fit both ways.
const inCommon = 0.8

// dayPlans are three pegs by two people, row by row and peg by peg, with a tape of their own for
// the second in half of them.
var dayPlans = []simulate.Plan{
	{Called: "three pegs, row by row", Pegs: 3, PegTies: true, Base: 3, Rows: true, Checks: 4, Crew: []string{"Ash", "Bo"}},
	{Called: "three pegs, peg by peg", Pegs: 3, PegTies: true, Base: 3, Checks: 4, Crew: []string{"Ash", "Bo"}},
	{Called: "three pegs, row by row, two tapes", Pegs: 3, PegTies: true, Base: 3, Rows: true, Checks: 4, Crew: []string{"Ash", "Bo"}, SecondTape: true},
	{Called: "three pegs, peg by peg, two tapes", Pegs: 3, PegTies: true, Base: 3, Checks: 4, Crew: []string{"Ash", "Bo"}, SecondTape: true},
}

// groupTally counts over pools with one group mistake of a kind.
type groupTally struct {
	tried, solved, planted, named, also int
	missed                              string
}

func groups(c config) *report {
	r := &report{}
	for i, g := range simulate.Groups {
		var t groupTally
		for k, one := range pools(c.n, func(k int) groupTally { return grouped(c.kind(i)+uint64(k), k, g) }) {
			t.tried, t.solved = t.tried+one.tried, t.solved+one.solved
			t.planted, t.named, t.also = t.planted+one.planted, t.named+one.named, t.also+one.also
			if one.missed != "" {
				r.miss(c, "%s, seed %d: %s", g.Code, c.kind(i)+uint64(k), one.missed)
			}
		}
		r.plain(g.Code, "solved", t.solved, t.planted)
		if g.Code == "wrong-edge" { // not promised: a small offset in one column
			r.plain(g.Code, "named", t.named, t.planted)
		} else {
			r.atLeast(g.Code, "named", t.named, t.planted, 90)
		}
		r.plain(g.Code, "another group named besides", t.also, t.planted)
	}
	return r
}

func grouped(seed uint64, k int, g simulate.Group) groupTally {
	c, m, ok := simulate.Case{}, simulate.Mistake{}, false
	// where a pool has no room for the mistake another one is drawn
	for more := uint64(0); !ok && more < 100; more++ {
		plan := dayPlans[k/len(simulate.Shapes)%len(dayPlans)]
		c, m, ok = g.Plant(simulate.Visit(seed+more*100_000, shape(k), plan), seed)
	}
	t := groupTally{tried: 1}
	if !ok {
		t.missed = "no room"
		return t
	}
	t.planted = 1
	r := solve(c)
	if r == nil {
		t.missed = c.Method.Name() + ": unsolved"
		return t
	}
	t.solved = 1
	for _, said := range r.Mistakes {
		switch {
		case said.Code == m.Kind && overlap(said, m) >= inCommon:
			t.named = 1
		case len(said.Readings) > 1:
			t.also = 1
		}
	}
	if t.named == 0 {
		t.missed = c.Method.Name() + ": " + saidOf(r)
	}
	return t
}

// overlap is the share of readings in both, of those in either.
func overlap(said survey.Mistake, m simulate.Mistake) float64 {
	in := map[string]bool{}
	for _, h := range m.Hits {
		in[h.N] = true
	}
	both := 0
	for _, n := range said.Readings {
		if in[n] {
			both++
		}
	}
	return float64(both) / float64(len(said.Readings)+len(m.Hits)-both)
}

func saidOf(r *survey.Result) string {
	text := ""
	for _, m := range r.Mistakes {
		text += " [" + m.Code + ": " + m.Text + "]"
	}
	return "said" + text
}
