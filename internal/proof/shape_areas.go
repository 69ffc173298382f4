package main

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/locate"
	"brimline/network"
	"brimline/outline"
)

// areaTally counts over outlines drawn from readings: sds are those quoted for the area, reads what
// the readings alone give the true runs, ratios the one over the other.
type areaTally struct {
	tried, solved      int
	area95, length95   int
	sds, reads, ratios []float64
	lengths            []float64 // sd of the length over that of the true runs
	worst              float64   // area error, of the area
	drawn              float64   // the most that Area and Path differ
	took               time.Duration
	missed             string
}

// wordings are the ways in which the line of a pool is given.
var wordings = []string{"stated", "any"}

// areas measures length and area of pools of every shape by every method, without mistakes, the
// runs of the line once as they truly are and once left to be found.
func areas(c config) *report {
	r := &report{}
	var all [2]areaTally
	for _, s := range simulate.Shapes {
		var shape [2]areaTally
		for i, m := range simulate.Methods {
			first := c.kind(i) // shapes draw from streams of their own
			for k, one := range pools(c.n, func(k int) [2]areaTally { return measured(first+uint64(k), s, m) }) {
				for w := range one {
					shape[w].add(one[w])
					if one[w].missed != "" {
						r.miss(c, "%s, %s, %s seed %d: %s", s.Name(), m.Name(), wordings[w], first+uint64(k), one[w].missed)
					}
				}
			}
		}
		for w := range shape {
			shape[w].tell(r, s.Name()+", "+wordings[w], math.NaN())
			all[w].add(shape[w])
		}
	}
	for w := range all {
		all[w].tell(r, "all, "+wordings[w], 97)
	}
	return r
}

func (t *areaTally) add(o areaTally) {
	t.tried, t.solved = t.tried+o.tried, t.solved+o.solved
	t.area95, t.length95 = t.area95+o.area95, t.length95+o.length95
	t.sds, t.reads = append(t.sds, o.sds...), append(t.reads, o.reads...)
	t.ratios, t.lengths = append(t.ratios, o.ratios...), append(t.lengths, o.lengths...)
	t.worst, t.drawn, t.took = math.Max(t.worst, o.worst), math.Max(t.drawn, o.drawn), t.took+o.took
}

func (t *areaTally) tell(r *report, name string, most float64) {
	r.share(name, "areas in 1.96 sd", t.area95, t.tried, 93, most)
	r.share(name, "lengths in 1.96 sd", t.length95, t.tried, 93, most)
	r.figure(name, "median area_sd", 100*middle(t.sds), "dm²", math.NaN(), math.NaN())
	r.figure(name, "median sd by the readings alone", 100*middle(t.reads), "dm²", math.NaN(), math.NaN())
	r.figure(name, "ratio of the medians", middle(t.sds)/middle(t.reads), "", math.NaN(), 2)
	r.figure(name, "median of the ratios", middle(t.ratios), "", math.NaN(), math.NaN())
	r.figure(name, "median of the ratios of length_sd", middle(t.lengths), "", math.NaN(), math.NaN())
	r.figure(name, "worst area error", 100*t.worst, "%", math.NaN(), 1)
	r.figure(name, "most that area and drawing differ", t.drawn, "m²", math.NaN(), 1e-9)
	r.figure(name, "time an outline", float64(t.took.Microseconds())/1000/float64(max(1, t.solved)), "ms", math.NaN(), math.NaN())
}

// middle is the median, NaN of nothing.
func middle(v []float64) float64 {
	if len(v) == 0 {
		return math.NaN()
	}
	v = slices.Clone(v)
	slices.Sort(v)
	return (v[len(v)/2] + v[(len(v)-1)/2]) / 2
}

// measured draws the outline of one pool both ways.
func measured(seed uint64, s simulate.Shape, m simulate.Method) [2]areaTally {
	c := simulate.Pool(seed, s, m, simulate.Options{})
	out := [2]areaTally{{tried: 1, missed: "unsolved"}, {tried: 1, missed: "unsolved"}}
	b, err := fieldbook.Parse("pool.yaml", c.Book)
	if err != nil {
		return out
	}
	n, _ := network.Build(&b, nil)
	start := locate.Find(n)
	sol, _ := adjust.Solve(context.Background(), n, start.X, adjust.Options{Fallback: start.X})
	if sol == nil || !sol.Converged {
		return out
	}
	read := math.NaN()
	for w, runs := range [][]outline.SpecRun{trueRuns(c, n), {oneRun(c, n)}} {
		begin := time.Now()
		l, _ := outline.Fit(sol, outline.Spec{Name: "rim", Closed: true, Runs: runs}, n.Edge)
		out[w].took = time.Since(begin)
		if len(l.Waits) > 0 {
			continue
		}
		if w == 0 {
			read = l.AreaReadSD
		}
		out[w].judge(c, l, read)
	}
	out[1].lengths = []float64{out[1].lengths[0] / out[0].lengths[0]}
	out[0].lengths[0] = 1
	return out
}

func (t *areaTally) judge(c simulate.Case, l *outline.Line, read float64) {
	t.solved, t.missed = 1, ""
	t.area95, t.length95 = within(l.Area-c.Area, l.AreaSD), within(l.Length-c.Perimeter, l.LengthSD)
	t.sds, t.reads, t.ratios, t.lengths = []float64{l.AreaSD}, []float64{read}, []float64{l.AreaSD / read}, []float64{l.LengthSD}
	t.worst = math.Abs(l.Area-c.Area) / c.Area
	t.drawn = math.Abs(math.Abs(l.Path.Area()) - l.Area)
	if t.area95 == 0 || t.worst > 0.01 {
		kinds := ""
		for _, r := range l.Runs {
			kinds += r.Kind[:1]
		}
		t.missed = fmt.Sprintf("%s area off by %.3f m², sd %.3f (readings %.3f), %.2f %%", kinds, l.Area-c.Area, l.AreaSD, read, 100*t.worst)
	}
}

// trueRuns states the rim as it is, oneRun leaves it to be found.
func trueRuns(c simulate.Case, n *network.Network) []outline.SpecRun {
	var out []outline.SpecRun
	for _, r := range c.Rim.Runs {
		run := outline.SpecRun{Kind: r.Kind, Joint: r.Joint, Names: r.Marks}
		for _, m := range r.Marks {
			run.Marks = append(run.Marks, n.ByName[m])
		}
		out = append(out, run)
	}
	return out
}

func oneRun(c simulate.Case, n *network.Network) outline.SpecRun {
	run := outline.SpecRun{Kind: "any"}
	for _, r := range trueRuns(c, n) {
		last := len(r.Marks) - 1
		run.Marks, run.Names = append(run.Marks, r.Marks[:last]...), append(run.Names, r.Names[:last]...)
	}
	run.Marks, run.Names = append(run.Marks, run.Marks[0]), append(run.Names, run.Names[0])
	return run
}
