package main

import (
	"math"
	"math/rand/v2"
	"sort"

	"brimline/internal/simulate"
	"brimline/survey"
)

// afterTwoPegs is where the measurers of this section stand: A and B ties of every mark.
var afterTwoPegs = simulate.Plan{Called: "A and B of every mark", Sizes: usual, Pegs: 2, Base: 3, Said: true, Sigma: 0.0032, Definition: 0.0024}

// patience is how many more readings, for each mark, a measurer takes at most.
const patience = 4

// way is how a measurer chooses the next tape: the two marks, nothing to give up. done counts the
// tapes taken since.
type way func(c simulate.Case, r *survey.Result, done int) []string

// next counts the readings until the shape is ready at its marks. No way of choosing needs less than
// half as many tapes as there are marks, since each tape proves the ties of two.
func next(c config) *report {
	r := &report{}
	medians := make([]float64, 4)
	for i, w := range []struct {
		name   string
		choose func(simulate.Case) way
	}{
		{"as proposed", func(simulate.Case) way { return follow }},
		{"longest diagonals first", longest},
		{"at random", random(everyMark)},
		{"at random, marks of the rim only", random(func(c simulate.Case) []string { return c.Order })},
	} {
		answers := pools(c.n, func(k int) tapes {
			v := simulate.Visit(c.kind(0)+uint64(k), shape(k), afterTwoPegs)
			return untilReady(v, w.choose(v))
		})
		never := 0
		var taken []float64
		for k, a := range answers {
			taken = append(taken, float64(a.taken))
			if !a.ready {
				never++
				r.miss(c, "%s, seed %d: not ready after %d", w.name, c.kind(0)+uint64(k), a.taken)
			}
		}
		sort.Float64s(taken)
		medians[i] = (taken[(len(taken)-1)/2] + taken[len(taken)/2]) / 2
		r.figure(w.name, "median of readings until ready", medians[i], "", math.NaN(), math.NaN())
		r.plain(w.name, "never ready in 4 readings a mark", never, c.n)
	}
	r.figure("as proposed", "of those of the longest diagonals", medians[0]/medians[1], "", math.NaN(), 0.5)
	r.figure("as proposed", "of those taken at random", medians[0]/medians[2], "", math.NaN(), 1.0/3)
	r.figure("as proposed", "of those taken at random between marks of the rim", medians[0]/medians[3], "", math.NaN(), math.NaN())
	return r
}

// tapes is how many readings were taken, and whether that was enough. Who gives up counts with all
// that patience allows.
type tapes struct {
	taken int
	ready bool
}

func untilReady(c simulate.Case, choose way) tapes {
	most := patience * len(c.Order)
	for done := 0; done <= most; done++ {
		r := solve(c)
		if r != nil && isReady(r) {
			return tapes{done, true}
		}
		pair := choose(c, r, done)
		if pair == nil {
			break
		}
		c = c.Tape(pair[0], pair[1])
	}
	return tapes{most, false}
}

func follow(c simulate.Case, r *survey.Result, _ int) []string {
	if r == nil {
		return nil
	}
	return proposed(c, r)
}

// proposed is the first tie that the answer proposes between marks that there are.
func proposed(c simulate.Case, r *survey.Result) []string {
	for _, n := range r.Next {
		if n.Kind != "tie" || len(n.Marks) != 2 {
			continue
		}
		_, a := c.Truth[n.Marks[0]]
		_, b := c.Truth[n.Marks[1]]
		if a && b {
			return n.Marks
		}
	}
	return nil
}

// pairsOf lists all pairs of marks that are far enough apart to tape, of any or of the rim only.
func pairsOf(c simulate.Case, marks []string) [][]string {
	const shortest = 0.3
	var out [][]string
	for i, b := range marks {
		for _, a := range marks[:i] {
			if c.Truth[a].Dist(c.Truth[b]) >= shortest {
				out = append(out, []string{a, b})
			}
		}
	}
	return out
}

// longest tapes the longest diagonals first.
func longest(c simulate.Case) way {
	list := pairsOf(c, c.Order)
	sort.SliceStable(list, func(i, k int) bool {
		return c.Truth[list[i][0]].Dist(c.Truth[list[i][1]]) > c.Truth[list[k][0]].Dist(c.Truth[list[k][1]])
	})
	return inTurn(list)
}

// random tapes as it comes, between any two of the marks: of those that a proposal chooses from.
func random(marks func(simulate.Case) []string) func(simulate.Case) way {
	return func(c simulate.Case) way {
		list := pairsOf(c, marks(c))
		r := rand.New(rand.NewPCG(c.Seed, 1))
		r.Shuffle(len(list), func(i, k int) { list[i], list[k] = list[k], list[i] })
		return inTurn(list)
	}
}

func inTurn(list [][]string) way {
	return func(_ simulate.Case, _ *survey.Result, done int) []string {
		if done >= len(list) {
			return nil
		}
		return list[done]
	}
}
