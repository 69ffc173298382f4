package main

import (
	"context"
	"fmt"
	"math"
	"slices"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/locate"
	"brimline/network"
	"brimline/plane"
)

// Bands of the section: what a linear step may differ by, relative; by how much a full solution
// may differ from it, and the redundancy from which that is asked.
const (
	linearWithin = 1e-6
	fullShare    = 0.05
	fullLength   = 0.0005
	leastAsked   = 0.1
)

// hiddenTally counts over the readings of pools without mistakes.
type hiddenTally struct {
	tried, solved int
	steps, linear int // parts asked; those whose linear step is as predicted
	marks, said   int // marks with a hidden figure; those where it is the largest step
	full, agree   int
	worst         float64 // the worst relative difference
	missed        string
}

// hidden asks, reading by reading: does an error of the detectable size move the marks as said?
func hidden(c config) *report {
	r := &report{}
	for i, m := range simulate.Methods {
		var t hiddenTally
		for k, one := range pools(c.n, func(k int) hiddenTally { return unseen(c.kind(i)+uint64(k), k, m) }) {
			t.tried, t.solved = t.tried+one.tried, t.solved+one.solved
			t.steps, t.linear = t.steps+one.steps, t.linear+one.linear
			t.marks, t.said = t.marks+one.marks, t.said+one.said
			t.full, t.agree = t.full+one.full, t.agree+one.agree
			t.worst = math.Max(t.worst, one.worst)
			if one.missed != "" {
				r.miss(c, "%s seed %d: %s", m.Name(), c.kind(i)+uint64(k), one.missed)
			}
		}
		r.atLeast(m.Name(), "solved", t.solved, t.tried, 100)
		r.atLeast(m.Name(), "linear steps as predicted", t.linear, t.steps, 100)
		r.figure(m.Name(), "largest relative difference of one", t.worst, "", math.NaN(), linearWithin)
		r.atLeast(m.Name(), "marks whose hidden is the largest of them", t.said, t.marks, 100)
		r.atLeast(m.Name(), "full solutions within 5 % + 0.5 mm, redundancy ≥ 0.1", t.agree, t.full, 98)
	}
	return r
}

// probe is a pool with its solution and the dense model of it.
type probe struct {
	book  fieldbook.Book
	sol   *adjust.Solution
	dense *dense
	peg   [2]int // A and B
}

func unseen(seed uint64, k int, m simulate.Method) hiddenTally {
	t := hiddenTally{tried: 1}
	c := simulate.Pool(seed, shape(k), m, simulate.Options{})
	book, err := fieldbook.Parse("pool.yaml", c.Book)
	if err != nil {
		t.missed = err.Error()
		return t
	}
	net, _ := network.Build(&book, nil)
	s, _ := adjust.Solve(context.Background(), net, locate.Find(net).X, adjust.Options{})
	if s == nil || !s.Converged {
		t.missed = "unsolved"
		return t
	}
	t.solved = 1
	p := probe{book, s, newDense(s), [2]int{net.ByName["A"], net.ByName["B"]}}
	most := make([]float64, len(net.Marks))
	for part, size := range s.Detectable {
		if math.IsNaN(size) || math.IsInf(size, 0) || s.Redund[part] < adjust.LeastRed {
			continue
		}
		p.ask(&t, part, size, most)
	}
	p.compare(&t, c, most)
	return t
}

// ask puts an error of the size into one part.
func (p probe) ask(t *hiddenTally, part int, size float64, most []float64) {
	said := p.sol.Shift(adjust.Pattern{Parts: []int{part}, Size: []float64{size}})
	step := p.dense.step(part, size)
	scale := slices.MaxFunc(step, func(a, b float64) int { return compareSize(a, b) })
	off := 0.0
	for i := range step {
		off = math.Max(off, math.Abs(step[i]-said[i]))
	}
	off /= math.Max(math.Abs(scale), 1e-6)
	t.steps++
	if off <= linearWithin {
		t.linear++
	}
	t.worst = math.Max(t.worst, off)
	moves := p.framed(step)
	largest := 0.0
	for m, v := range moves {
		most[m] = math.Max(most[m], v)
		largest = math.Max(largest, v)
	}
	if p.sol.Redund[part] < leastAsked {
		return
	}
	t.full++
	if full := p.full(part, size); math.Abs(full-largest) <= fullShare*largest+fullLength {
		t.agree++
	} else if t.missed == "" {
		t.missed = fmt.Sprintf("part %d: linear %.4f m, full %.4f m", part, largest, full)
	}
}

func compareSize(a, b float64) int {
	switch a, b := math.Abs(a), math.Abs(b); {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// framed is the size of every mark's move as seen with A held and B held in direction.
func (p probe) framed(step []float64) []float64 {
	at := func(m int) plane.Point { return plane.Point{X: step[2*m], Y: step[2*m+1]} }
	a, b := p.sol.X.Point(p.peg[0]), p.sol.X.Point(p.peg[1])
	base := b.Sub(a)
	turn := base.Cross(at(p.peg[1]).Sub(at(p.peg[0]))) / base.Dot(base)
	out := make([]float64, len(p.sol.Net.Marks))
	for m := range out {
		arm := p.sol.X.Point(m).Sub(a)
		out[m] = at(m).Sub(at(p.peg[0])).Sub(arm.Left().Mul(turn)).Len()
	}
	return out
}

// full solves the book with the error in it and gives the largest move of a mark.
func (p probe) full(part int, size float64) float64 {
	i := p.sol.ObsOf(part)
	b := p.book
	b.Readings = append([]fieldbook.Taken(nil), p.book.Readings...)
	r := &b.Readings[p.sol.Net.Obs[i].Reading]
	r.Values = append([]fieldbook.Value(nil), r.Values...)
	r.Values[part-p.sol.First[i]].Metres += size
	net, _ := network.Build(&b, nil)
	s, _ := adjust.Solve(context.Background(), net, p.sol.X, adjust.Options{NoRobust: true})
	if s == nil || !s.Converged {
		return math.NaN()
	}
	was, now := p.placed(p.sol.X), p.placed(s.X)
	largest := 0.0
	for m := range was {
		largest = math.Max(largest, was[m].Dist(now[m]))
	}
	return largest
}

// placed gives the marks with A at the origin and B on +x.
func (p probe) placed(x network.State) []plane.Point {
	a, b := x.Point(p.peg[0]), x.Point(p.peg[1])
	turn := -plane.Angle(b.Sub(a))
	out := make([]plane.Point, len(p.sol.Net.Marks))
	for m := range out {
		out[m] = x.Point(m).Sub(a).Turn(turn)
	}
	return out
}

// compare holds the hidden figure of each mark against the largest of the steps. A pool where a
// reading is suspect by chance has another solution and is passed over.
func (p probe) compare(t *hiddenTally, c simulate.Case, most []float64) {
	r := solve(c)
	if r == nil {
		return
	}
	for _, x := range r.Readings {
		if x.State == "suspect" || x.State == "doubtful" {
			return
		}
	}
	for m, name := range p.sol.Net.Marks {
		if mark := r.Marks[name]; mark != nil && mark.Hidden != nil && m != p.peg[0] {
			t.marks++
			if math.Abs(*mark.Hidden-most[m]) <= linearWithin*most[m]+1e-9 {
				t.said++
			} else if t.missed == "" {
				t.missed = fmt.Sprintf("%s: hidden %.6f m, largest step %.6f m", name, *mark.Hidden, most[m])
			}
		}
	}
}
