package main

import (
	"math"
	"strings"

	"brimline/internal/simulate"
	"brimline/survey"
)

// between is the test of what lies between marks, which taping marks cannot pass.
const between = "between"

// usual is the length of a pool of usual size, metres; common practice, no source.
var usual = [2]float64{8, 12}

// work is a day's work: the plan, and how many tapes at most are then taken as they are proposed,
// one after another, until the shape is ready.
type work struct {
	simulate.Plan
	proposed int
}

// jobPlans are days' work. The first is what is advised (common practice, no source): three pegs,
// the base three times, the first mark again, and six tapes between marks where they prove most,
// which is what the answer proposes. A reading of a mark has an sd of √(3.2² + 2.4²) = 4.0 mm. The
// second differs in that: √(5² + 4²) = 6.4 mm. The third takes the six tapes by custom, the axes,
// the diagonals, and across; near the line of two pegs the tape from the third is checked by none of
// these. The others have two pegs and check nothing.
var jobPlans = []work{
	{simulate.Plan{Called: "as advised, 4 mm", Sizes: usual, Pegs: 3, PegTies: true, Base: 3, FirstAgain: true, Sigma: 0.0032, Definition: 0.0024}, 6},
	{simulate.Plan{Called: "as advised, 6.4 mm", Sizes: usual, Pegs: 3, PegTies: true, Base: 3, FirstAgain: true, Sigma: 0.005, Definition: 0.004}, 6},
	{simulate.Plan{Called: "tapes by custom, 4 mm", Sizes: usual, Pegs: 3, PegTies: true, Base: 3, FirstAgain: true, Checks: 6, Sigma: 0.0032, Definition: 0.0024}, 0},
	{simulate.Plan{Called: "two pegs, no checks, 4 mm", Sizes: usual, Pegs: 2, Base: 1, Sigma: 0.0032, Definition: 0.0024}, 0},
	{simulate.Plan{Called: "two pegs, no checks, 6.4 mm", Sizes: usual, Pegs: 2, Base: 1, Sigma: 0.005, Definition: 0.004}, 0},
}

// jobTally is what was said of one job.
type jobTally struct {
	solved, ready, whole, unproven, unfit, cured int
	fine, coarse, blind, counted, agree, taken   int // see job
	worst                                        float64
	why                                          string
}

func jobs(c config) *report {
	r := &report{}
	for i, p := range jobPlans {
		var t jobTally
		for k, one := range pools(c.n, func(k int) jobTally {
			return job(simulate.Visit(c.kind(i)+uint64(k), shape(k), p.Plan), p.proposed)
		}) {
			t.solved, t.ready, t.whole = t.solved+one.solved, t.ready+one.ready, t.whole+one.whole
			t.unproven, t.unfit, t.cured = t.unproven+one.unproven, t.unfit+one.unfit, t.cured+one.cured
			t.fine, t.coarse, t.blind, t.taken = t.fine+one.fine, t.coarse+one.coarse, t.blind+one.blind, t.taken+one.taken
			t.counted, t.agree = t.counted+one.counted, t.agree+one.agree
			t.worst += one.worst / float64(c.n)
			if i == 0 && one.ready == 0 || i > 2 && one.ready == 1 || one.blind == 1 {
				r.miss(c, "%s seed %d: %s", p.Called, c.kind(i)+uint64(k), one.why)
			}
		}
		r.atLeast(p.Called, "solved", t.solved, c.n, 100)
		t.tell(r, i, p.Called, c.n)
	}
	return r
}

// tell prints what was said. Three tapes of 6.4 mm that meet well place a mark to ±1.96·6.4·√(2/3)
// = ±10.3 mm: where the pegs stand well such a day's work is good enough for ±12.5 mm, which the true
// design says too, so that what must not be ready there are the others.
func (t jobTally) tell(r *report, i int, name string, n int) {
	switch i {
	case 0:
		r.atLeast(name, "ready at marks", t.ready, n, 90)
	case 1:
		r.plain(name, "ready at marks", t.ready, n)
		r.atLeast(name, "of the others, ready after at most 20 tapes more as proposed", t.cured, n-t.ready, 100)
	case 2:
		r.plain(name, "ready at marks", t.ready, n)
	default:
		r.atMost(name, "ready at marks", t.ready, n, 0)
	}
	if i < 2 {
		r.figure(name, "mean of tapes taken as proposed", float64(t.taken)/float64(n), "", math.NaN(), math.NaN())
	}
	r.plain(name, "true design knows every mark to ±12.5 mm", t.fine, n)
	r.plain(name, "true design leaves a mark open by ±13.1 mm and more", t.coarse, n)
	r.atMost(name, "of all, ready though it leaves a mark open", t.blind, n, 0)
	r.atLeast(name, "worst mark within 5 % of the true design's, all readings good", t.agree, t.counted, 95)
	r.plain(name, "ready between marks as well", t.whole, n)
	r.plain(name, "unproven", t.unproven, n)
	r.plain(name, "unfit", t.unfit, n)
	r.figure(name, "mean of the worst 95 % uncertainty at a mark", 1000*t.worst, "mm", math.NaN(), math.NaN())
}

// cure is how many more tapes, as proposed, must make a day's work ready that was not.
const cure = 20

// half is what the uncertainty of a mark may use of 25 mm, metres.
const half = 0.0125

// job judges one day, ended by so many tapes as proposed. fine: the true design, apart from any
// reading, knows every mark well enough; coarse: it does not, by more than rounding; blind: ready all
// the same; counted and agree: the worst mark as said against that of the true design, where nothing
// was left out.
func job(c simulate.Case, proposals int) jobTally {
	c, r, taken := asProposed(c, proposals)
	if r == nil {
		return jobTally{why: "unsolved"}
	}
	t := jobTally{solved: 1, taken: taken}
	state, why := atMarks(r)
	t.why = state + ": " + why
	switch state {
	case "ready":
		t.ready = 1
	case "unproven":
		t.unproven = 1
	default:
		t.unfit = 1
	}
	if r.Shape.State == "ready" {
		t.whole = 1
	}
	if proposals > 0 && state != "ready" {
		if _, end, _ := asProposed(c, cure); end != nil && isReady(end) {
			t.cured = 1
		}
	}
	if r.Shape.Worst != nil {
		t.worst = *r.Shape.Worst
	}
	_, u := c.WorstNormal()
	if u <= half {
		t.fine = 1
	} else if u > 1.05*half {
		t.coarse, t.blind = 1, t.ready
	}
	if !r.Statistics.Scaled && allGood(r) {
		t.counted = 1
		if math.Abs(t.worst-u) <= 0.05*u {
			t.agree = 1
		}
	}
	return t
}

// asProposed takes up to most tapes, each as the answer to those before it proposes.
func asProposed(c simulate.Case, most int) (simulate.Case, *survey.Result, int) {
	for taken := 0; ; taken++ {
		r := solve(c)
		if r == nil || taken == most {
			return c, r, taken
		}
		pair := proposed(c, r)
		if isReady(r) || pair == nil {
			return c, r, taken
		}
		c = c.Tape(pair[0], pair[1])
	}
}

func isReady(r *survey.Result) bool {
	state, _ := atMarks(r)
	return state == "ready"
}

func allGood(r *survey.Result) bool {
	for _, x := range r.Readings {
		if x.State == "suspect" || x.State == "doubtful" {
			return false
		}
	}
	return true
}

// atMarks is the state of the shape with what lies between marks left aside, and why: its worst
// other test, or the state of the whole where the test between marks does not account for it.
func atMarks(r *survey.Result) (state, why string) {
	rank := map[string]int{"ready": 0, "unproven": 1, "unfit": 2}
	state, n, aside := "ready", 0, "ready"
	for _, t := range r.Shape.Tests {
		if t.Name == between {
			aside = t.State
			continue
		}
		n++
		if rank[t.State] > rank[state] {
			state, why = t.State, t.Name+" at "+t.At+" "+t.Why
		}
	}
	if n == 0 { // no test, no word
		return "unfit", "no tests"
	}
	if whole := r.Shape.State; rank[whole] > rank[state] && rank[aside] < rank[whole] {
		return whole, "as a whole: " + strings.Join(r.Shape.Why, "; ")
	}
	return state, why
}
