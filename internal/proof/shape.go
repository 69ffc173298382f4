package main

import (
	"context"
	"fmt"
	"math"
	"time"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/network"
	"brimline/outline"
	"brimline/plane"
)

// markSD is that of each coordinate of a mark; plain is by how much a weighted sum of squares must
// rise when a true piece is merged or dropped, for its pool to count.
const (
	markSD = 0.005
	plain  = 25
)

// anyTally counts over pools whose outline is to be found.
type anyTally struct {
	tried, right, same int // pools that count; the true number of each kind; the true order too
	skipped, also      int // pools with a piece that the marks hardly tell, and those found all the same
	arcs, in95         int
	curves             int
	lines              int // all pools
	area95, length95   int
	took               time.Duration
	missed             string
}

// anyRuns measures outlines given as `any`: are the true straights and arcs found?
func anyRuns(c config) *report {
	r := &report{}
	var all anyTally
	for i, s := range simulate.Shapes {
		var t anyTally
		for k, one := range pools(c.n, func(k int) anyTally { return lookAt(c.kind(i)+uint64(k), s) }) {
			t.add(one)
			if one.missed != "" {
				r.miss(c, "%s seed %d: %s", s.Name(), c.kind(i)+uint64(k), one.missed)
			}
		}
		all.add(t)
		t.tell(r, s.Name(), math.NaN())
	}
	all.tell(r, "all", 90)
	r.share("all", "radii in 1.96 sd", all.in95, all.arcs, 93, 97)
	return r
}

func (t anyTally) tell(r *report, name string, least float64) {
	if t.tried > 0 {
		r.atLeast(name, "true number of straights and arcs", t.right, t.tried, least)
		r.plain(name, "in the true order", t.same, t.tried)
		r.plain(name, "radii in 1.96 sd", t.in95, t.arcs)
	}
	if t.skipped > 0 {
		r.plain(name, "the same where a piece is hardly told", t.also, t.skipped)
	}
	most := math.NaN()
	if least > 0 { // all together
		most = 97
	}
	r.share(name, "areas in 1.96 sd", t.area95, t.lines, 93, most)
	r.share(name, "lengths in 1.96 sd", t.length95, t.lines, 93, most)
	r.plain(name, "drawn with a fair curve", t.curves, t.tried+t.skipped)
	r.figure(name, "time a pool", float64(t.took.Microseconds())/1000/float64(max(1, t.tried+t.skipped)), "ms", math.NaN(), math.NaN())
}

func (t *anyTally) add(o anyTally) {
	t.tried, t.right, t.same, t.skipped = t.tried+o.tried, t.right+o.right, t.same+o.same, t.skipped+o.skipped
	t.also, t.lines, t.area95, t.length95 = t.also+o.also, t.lines+o.lines, t.area95+o.area95, t.length95+o.length95
	t.arcs, t.in95, t.curves, t.took = t.arcs+o.arcs, t.in95+o.in95, t.curves+o.curves, t.took+o.took
}

// lookAt finds the outline of one pool.
func lookAt(seed uint64, s simulate.Shape) anyTally {
	stakes := simulate.Stake(seed, s)
	sol, runs, read := anyMarks(seed, stakes)
	begin := time.Now()
	l, _ := outline.Fit(sol, outline.Spec{Name: "rim", Closed: true, Runs: runs}, make([]float64, len(sol.Net.Marks)))
	t := anyTally{took: time.Since(begin), lines: 1}
	path := stakes.Figure.Path() // clockwise
	t.area95, t.length95 = within(l.Area+path.Area(), l.AreaSD), within(l.Length-path.Length(), l.LengthSD)
	var got, want string
	for _, r := range l.Runs {
		got += r.Kind[:1]
		if r.Kind == "curve" {
			t.curves = 1
		}
	}
	for _, p := range stakes.Figure {
		want += p.Kind[:1]
	}
	if want == "c" || !toldApart(stakes.Figure, read) {
		t.skipped = 1
		if alike(got, want) {
			t.also = 1
		}
		return t
	}
	t.tried = 1
	if alike(got, want) {
		t.right = 1
	}
	if turned(got, want) {
		t.same = 1
		t.radii(l, stakes.Figure)
	}
	if t.right == 0 {
		t.missed = fmt.Sprintf("%s for %s", got, want)
	}
	return t
}

// alike says that two outlines have equally many pieces of each kind; turned that one is the other,
// begun elsewhere.
func alike(a, b string) bool {
	var n [2]map[rune]int
	for i, s := range []string{a, b} {
		n[i] = map[rune]int{}
		for _, k := range s {
			n[i][k]++
		}
	}
	return len(a) == len(b) && n[0]['s'] == n[1]['s'] && n[0]['a'] == n[1]['a'] && n[0]['c'] == n[1]['c']
}

func turned(a, b string) bool {
	for i := range a {
		if a[i:]+a[:i] == b {
			return true
		}
	}
	return false
}

// radii compares the radius of every true arc with that of the arc found nearest to its middle.
func (t *anyTally) radii(l *outline.Line, f simulate.Figure) {
	for _, p := range f {
		if p.Kind != "arc" {
			continue
		}
		s := p.Segs[0]
		best, off, sd := math.Inf(1), 0.0, 1.0
		for _, r := range l.Runs {
			if r.Kind != "arc" {
				continue
			}
			if d := l.Path.Segs[r.First].At(0.5).Dist(s.At(0.5)); d < best {
				best, off, sd = d, r.Radius-math.Abs(s.Radius()), r.RadiusSD
			}
		}
		t.arcs++
		t.in95 += within(off, sd)
	}
}

// within is 1 for a difference inside 1.96 sd.
func within(off, sd float64) int {
	if math.Abs(off) <= 1.96*sd {
		return 1
	}
	return 0
}

// anyMarks reads the marks from one set-up and gives the solution, the one run through all, and
// by piece the places read, its ends among them. Two pegs hold the frame.
func anyMarks(seed uint64, st simulate.Stakes) (*adjust.Solution, []outline.SpecRun, [][]plane.Point) {
	names, at := []string{"A", "B"}, []plane.Point{{}, {X: 7}}
	read := make([][]plane.Point, len(st.At))
	run := outline.SpecRun{Kind: "any"}
	for i, piece := range st.At {
		for _, p := range piece {
			q := simulate.Noisy(seed, len(names), p, markSD)
			run.Marks, run.Names = append(run.Marks, len(names)), append(run.Names, fmt.Sprintf("r%d", len(names)-1))
			names, at = append(names, run.Names[len(run.Names)-1]), append(at, q)
			read[i] = append(read[i], q)
		}
	}
	for i := range read {
		next := read[(i+1)%len(read)]
		if len(read) > 1 {
			read[i] = append(read[i], next[0])
		}
	}
	run.Marks, run.Names = append(run.Marks, 2), append(run.Names, "r1")
	var b fieldbook.Book
	for i, n := range names {
		sd := markSD
		if i < 2 {
			sd = markSD / 1000
		}
		b.Readings = append(b.Readings, fieldbook.Taken{N: fmt.Sprint(i + 1), Reading: fieldbook.Reading{
			Kind: "seen", Marks: []string{n}, Setup: "T1", Sigma: []float64{sd},
			Values: []fieldbook.Value{{Part: "x", Metres: at[i].X}, {Part: "y", Metres: at[i].Y}}}})
	}
	n, _ := network.Build(&b, nil)
	x := n.NewState()
	for i, p := range at {
		x.SetPoint(i, p)
	}
	copy(x[2*len(at):], []float64{0, 0, 0})
	sol, _ := adjust.Solve(context.Background(), n, x, adjust.Options{})
	return sol, []outline.SpecRun{run}, read
}
