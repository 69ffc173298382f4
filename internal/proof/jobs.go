package main

import (
	"fmt"
	"math"
	"strings"

	"brimline/internal/simulate"
	"brimline/plane"
	"brimline/survey"
)

// between is the test of what lies between marks, which taping marks cannot pass.
const between = "between"

// usual is the length of a pool of usual size, metres; common practice, no source.
var usual = [2]float64{8, 12}

// work is a day's work: the plan; how many tapes at most are then taken as they are proposed, one
// after another, until the shape is ready; the least and the greatest share that must be ready, NaN
// where none is asked.
type work struct {
	simulate.Plan
	proposed    int
	least, most float64
}

var open = math.NaN()

// jobPlans are days' work. The first is what is advised (common practice, no source): three pegs,
// the base three times, the first mark again, and six tapes between marks where they prove most,
// which is what the answer proposes. A reading of a mark has an sd of √(3.2² + 2.4²) = 4.0 mm. The
// second differs in that: √(5² + 4²) = 6.4 mm. The next two take the six tapes by custom, the axes,
// the diagonals, and across; near the line of two pegs the tape from the third is checked by none
// of these. The others have two pegs and check nothing.
var jobPlans = []work{
	{simulate.Plan{Called: "as advised, 4 mm", Sizes: usual, Pegs: 3, PegTies: true, Base: 3, FirstAgain: true, Sigma: 0.0032, Definition: 0.0024}, 6, 90, open},
	{simulate.Plan{Called: "as advised, 6.4 mm", Sizes: usual, Pegs: 3, PegTies: true, Base: 3, FirstAgain: true, Sigma: 0.005, Definition: 0.004}, 6, open, open},
	{simulate.Plan{Called: "tapes by custom, 4 mm", Sizes: usual, Pegs: 3, PegTies: true, Base: 3, FirstAgain: true, Checks: 6, Sigma: 0.0032, Definition: 0.0024}, 0, open, open},
	{simulate.Plan{Called: "tapes by custom, 6.4 mm", Sizes: usual, Pegs: 3, PegTies: true, Base: 3, FirstAgain: true, Checks: 6, Sigma: 0.005, Definition: 0.004}, 0, open, open},
	{simulate.Plan{Called: "two pegs, no checks, 4 mm", Sizes: usual, Pegs: 2, Base: 1, Sigma: 0.0032, Definition: 0.0024}, 0, open, 0},
	{simulate.Plan{Called: "two pegs, no checks, 6.4 mm", Sizes: usual, Pegs: 2, Base: 1, Sigma: 0.005, Definition: 0.004}, 0, open, 0},
}

// jobTally is what was said of one job.
type jobTally struct {
	solved, ready, whole, unproven, unfit, cured int
	fine, coarse, blind, counted, agree, taken   int // see job
	points                                       int // the true design knows every mark as a point
	marks, near                                  int // of the ready ones, and those that near the true edge
	worst                                        float64
	why                                          string
	after                                        string // not ready after the tapes of a cure: why
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
			t.counted, t.agree, t.points = t.counted+one.counted, t.agree+one.agree, t.points+one.points
			t.marks, t.near = t.marks+one.marks, t.near+one.near
			t.worst += one.worst / float64(c.n)
			if p.least > 0 && one.ready == 0 || p.most == 0 && one.ready == 1 || one.blind == 1 {
				r.miss(c, "%s seed %d: %s", p.Called, c.kind(i)+uint64(k), one.why)
			}
			if one.after != "" && p.Sigma > coarseTape {
				r.miss(c, "%s seed %d: %s", p.Called, c.kind(i)+uint64(k), one.after)
			}
		}
		r.atLeast(p.Called, "solved", t.solved, c.n, 100)
		t.tell(r, p, c.n)
	}
	return r
}

// tell prints what was said. Three tapes of 6.4 mm that meet well place a mark across the edge to
// ±1.96·6.4·√(2/3) = ±10.3 mm: where the pegs stand well such a day's work is good enough for
// ±12.5 mm, which the true design and the true edge say too, so that what must not be ready there are
// the others. As points, the way in which hand books state it (common practice, no source), none of
// these marks are: 2 sd of the place in both directions is more than 2 sd across the edge.
func (t jobTally) tell(r *report, p work, n int) {
	name := p.Called
	r.share(name, "ready at marks", t.ready, n, p.least, p.most)
	if p.Pegs > 2 && p.Sigma > coarseTape {
		r.atLeast(name, "of the others, ready after at most 20 tapes more as proposed", t.cured, n-t.ready, 100)
	}
	if p.proposed > 0 {
		r.figure(name, "mean of tapes taken as proposed", float64(t.taken)/float64(n), "", math.NaN(), math.NaN())
	}
	if t.marks > 0 {
		r.atLeast(name, "marks of the ready ones within 12.5 mm of the true edge", t.near, t.marks, 95)
	}
	r.plain(name, "true design knows every mark as a point to ±12.5 mm", t.points, n)
	r.plain(name, "true design knows every mark to ±12.5 mm", t.fine, n)
	r.plain(name, "true design leaves a mark open by ±13.1 mm and more", t.coarse, n)
	r.atMost(name, "of all, ready though it leaves a mark open", t.blind, n, 0)
	r.atLeast(name, "worst mark within 5 % of the true design's, all readings good", t.agree, t.counted, 95)
	r.plain(name, "ready between marks as well", t.whole, n)
	r.plain(name, "unproven", t.unproven, n)
	r.plain(name, "unfit", t.unfit, n)
	r.figure(name, "mean of the worst 95 % uncertainty at a mark", 1000*t.worst, "mm", math.NaN(), math.NaN())
}

// coarseTape is the sd of a tape, metres, above which a day's work as advised need not be enough.
const coarseTape = 0.004

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
	if t.ready == 1 {
		t.marks, t.near = nearEdge(c, r)
	}
	if c.WorstPoint() <= half/1.96 {
		t.points = 1
	}
	if len(c.Pegs) > 2 && state != "ready" {
		t.after = "unsolved at the end"
		if _, end, more := asProposed(c, cure); end != nil {
			state, why := atMarks(end)
			t.after = fmt.Sprintf("after %d tapes more still %s: %s", more, state, why)
			if state == "ready" {
				t.cured, t.after = 1, ""
			}
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

// nearEdge counts the marks of the rim, and those that lie within half of their true place across
// the true edge once the rim as a whole is laid on the true one.
func nearEdge(c simulate.Case, r *survey.Result) (marks, near int) {
	var from, to []plane.Point
	for _, name := range c.Order {
		from = append(from, plane.Point{X: *r.Marks[name].X, Y: *r.Marks[name].Y})
		to = append(to, c.Truth[name])
	}
	fit, _ := plane.FitRigid(from, to, nil)
	for k, p := range to {
		seg, share, _ := c.Outline.Nearest(p)
		across := c.Outline.Segs[seg].Tangent(share).Left()
		if marks++; math.Abs(fit.Apply(from[k]).Sub(p).Dot(across)) <= half {
			near++
		}
	}
	return marks, near
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
