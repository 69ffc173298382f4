package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// Plan is a way of measuring with tapes in which the caller chooses; it is a Method. Of the
// fields left zero: no unit is metres, no figure of a tape draws one, no Base is one tape of it.
type Plan struct {
	Called string
	Sizes  [2]float64 // least and greatest length of the pool; zero: any

	Pegs    int  // 2 to 4
	PegTies bool // tapes between all pegs
	Third   int  // every how many marks the third peg and the further ones are tied to; 0 and 1: every mark
	Base    int  // times the base A to B is taped: the last of three and more on leaving

	FirstAgain bool // the first mark from A and B once more on leaving
	Neighbours bool // a tape from every mark to the next
	Checks     int  // tapes between marks of the rim: long axis, short axis, diagonals, across, as they come
	Marked     bool // these tapes stand in the book as independent checks

	Sigma, Definition float64  // of the tape and of the marks; 0 draws them
	Unit              string   // m, mm, or ft for feet and inches
	Rows              bool     // mark by mark; else peg by peg
	Said              bool     // the book says on which hand the pool lies also where it is the usual one
	Crew              []string // who reads: two share the day, the second from some row on; the book says when and who
	SecondTape        bool     // the second of the crew has a tape of their own
}

// Name is what the plan is called.
func (p Plan) Name() string { return p.Called }

// Visit draws a pool of shape s and measures it as planned. The same arguments give the same
// bytes. Noise is as the book states: see Broken and Plant for what is not.
func Visit(seed uint64, s Shape, p Plan) Case {
	shaping := stream(seed, streamShape, s.Name())
	f := sized(shaping, s, p.Sizes)
	if chance(shaping, 0.5) {
		f = f.Mirror()
	}
	staked := staked(shaping, f.Reverse())
	v := &visit{
		r:     stream(seed, streamPlan, s.Name(), p.Called),
		noise: stream(seed, streamNoise, s.Name(), p.Called),
		unit:  p.Unit,
	}
	if v.unit == "" {
		v.unit = "m"
	}
	c := Case{Seed: seed, Shape: s, Method: p, Unit: v.unit}
	v.settle(p.pegs(v.r, staked), staked)
	if p.Said && v.side == nil {
		v.side = v.firstOff()
	}
	v.equip()
	p.equip(v)
	p.read(v)
	v.report(&c, staked)
	c.Book = book(c)
	return c
}

// sized draws figures until one has a length within the sizes.
func sized(r *rand.Rand, s Shape, sizes [2]float64) Figure {
	for range tries {
		f := s.Draw(r)
		if sizes == [2]float64{} {
			return f
		}
		box := f.Path().Bounds()
		if l := box.Max.X - box.Min.X; l >= sizes[0] && l <= sizes[1] {
			return f
		}
	}
	panic("simulate: no " + s.Name() + " of that size found")
}

// equip overrides what was drawn of tapes and marks.
func (p Plan) equip(v *visit) {
	v.tape, v.check = "tape", "tape"
	v.tools = v.tools[:1]
	if p.Sigma > 0 {
		v.tools[0] = Tool{Name: "tape", Sigma: p.Sigma}
	}
	if p.SecondTape {
		second := v.tools[0]
		second.Name = "reel"
		v.tools = append(v.tools, second)
	}
	if p.Definition > 0 {
		v.shared = p.Definition
		for _, m := range v.order {
			v.definition[m] = p.Definition
		}
	}
	v.crew = crew{names: p.Crew, change: math.MaxInt}
}

func (p Plan) read(v *visit) {
	for range max(1, min(p.Base, 2)) {
		v.tie("A", "B", v.tape)
	}
	if p.PegTies {
		v.pegTies()
	}
	round := p.round(v)
	v.crew.change = len(v.readings) + p.changeAt(v.r, round, len(v.order))
	for _, t := range round {
		v.tie(v.pegs[t.peg], v.order[t.row], v.hand())
	}
	p.leave(v)
}

// pegTie is a tie from a peg to a mark, by their numbers.
type pegTie struct{ peg, row int }

// round lists the ties from pegs in the order in which they are read.
func (p Plan) round(v *visit) []pegTie {
	var out []pegTie
	for i := range len(v.pegs) * len(v.order) {
		t := pegTie{i / len(v.order), i % len(v.order)}
		if p.Rows {
			t = pegTie{i % len(v.pegs), i / len(v.pegs)}
		}
		if t.peg < 2 || p.Third < 2 || t.row%p.Third == 0 {
			out = append(out, t)
		}
	}
	return out
}

// leave takes what is taken last.
func (p Plan) leave(v *visit) {
	if p.Neighbours {
		for i, m := range v.order {
			v.tie(m, v.order[(i+1)%len(v.order)], v.hand())
		}
	}
	v.planned(p.Checks, p.Marked)
	if p.FirstAgain {
		v.tie("A", v.order[0], v.hand())
		v.tie("B", v.order[0], v.hand())
	}
	for range max(0, p.Base-2) {
		v.tie("A", "B", v.hand())
	}
}

// changeAt is how many ties from pegs the first of a crew takes: a third to two thirds of the
// rows, or of all columns together.
func (p Plan) changeAt(r *rand.Rand, round []pegTie, rows int) int {
	row := rows/3 + r.IntN(rows/3+1)
	if !p.Rows {
		return row * len(round) / rows
	}
	for i, t := range round {
		if t.row == row {
			return i
		}
	}
	return len(round)
}

func (p Plan) pegs(r *rand.Rand, pool pool) []plane.Point {
	return advised(r, pool, p.Pegs)
}
