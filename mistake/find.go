package mistake

import (
	"context"
	"math"
	"slices"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/network"
)

// shown is the log odds against none from which a mistake counts as shown: more likely than not.
const shown = 0.0

const sure = 0.95 // posterior from which a reading is suspect

// finder is one search.
type finder struct {
	ctx    context.Context
	s      *adjust.Solution // of all readings, checks apart
	book   *fieldbook.Book
	cand   [][]candidate // by part, made when asked for
	pegs   []int
	isPeg  []bool
	cols   []column
	sparse bool
	busy   map[int]bool // parts that a group found already explains

	straight map[[2]int]bool // neighbours on a straight run; looked up only
}

// Find looks for mistakes in the readings of a solution that holds them all; it always answers,
// with the solution itself where nothing is shown. nil when the context ends.
func Find(ctx context.Context, s *adjust.Solution, b *fieldbook.Book) *Report {
	r := newReport(s)
	if s.Rows == 0 || s.Redundancy <= 0 && !anyCheck(s) {
		return r
	}
	f := &finder{ctx: ctx, s: s, book: b, cand: make([][]candidate, s.First[len(s.In)])}
	f.findColumns()
	f.findStraights()
	x := s.X
	if s.Robust != nil {
		x = s.Robust
	}
	f.sparse = sparsely(f.model(x, nil))
	best := f.search(x)
	found, taken, at := f.review(best.taken, best.x)
	if f.sparse && len(groupsOf(taken)) > 0 && f.hollow(setting{taken: taken, x: at}) {
		best = f.coarse(f.singly(setting{x: x}))
		found, taken, at = f.review(best.taken, best.x)
	}
	if ctx.Err() != nil {
		return nil
	}
	if len(taken) == 0 {
		return r
	}
	f.conclude(r, found, taken, f.handed(found, taken, at))
	if ctx.Err() != nil {
		return nil
	}
	return r
}

func anyCheck(s *adjust.Solution) bool {
	for i := range s.Net.Obs {
		if s.Net.Obs[i].Check && s.Net.Obs[i].Use {
			return true
		}
	}
	return false
}

// value is what the book says of a part; its sign is the book's.
func (f *finder) value(p int) float64 {
	i := f.s.ObsOf(p)
	return f.s.Net.Obs[i].Values[p-f.s.First[i]]
}

// candidatesOf lists what a length may have been.
func (f *finder) candidatesOf(p int) []candidate {
	if f.cand[p] == nil {
		f.cand[p] = possible(f.s, f.book, p)
	}
	return f.cand[p]
}

// possible lists the lengths that part p may have been; never nil, empty where it is no length.
func possible(s *adjust.Solution, b *fieldbook.Book, p int) []candidate {
	i := s.ObsOf(p)
	o := &s.Net.Obs[i]
	out := []candidate{}
	if name := o.Kind.Name(); !isLength(name) || name == "straight" || name == "arc" || b == nil {
		return out
	}
	k := p - s.First[i]
	v := b.Readings[o.Reading].Values[k+o.Skip]
	sign := 1.0
	if o.Values[k] < 0 && (len(v.Text) == 0 || v.Text[0] != '-') {
		sign = -1 // an offset to the right: written without a sign
	}
	for _, c := range candidates(b, misreadingsOf(o.Kind.Name()), v, sign*o.Values[k]) {
		c.metres *= sign
		out = append(out, c)
	}
	return append(out, otherSide(b, o, k)...)
}

// model is the linear model of everything as a set of mistakes leaves it: what they explain by
// other lengths takes part with these, what they do not explain is out.
func (f *finder) model(x network.State, taken []*hypothesis) *adjust.Space {
	c := f.change(taken, x)
	gone := map[int]bool{}
	for _, p := range c.Out {
		gone[p] = true
	}
	return f.s.Space(x, c, func(i, p int) bool {
		return !gone[p] && (f.s.In[i] && !f.s.Out[p] || f.s.Net.Obs[i].Check)
	})
}

// setting is a set of mistakes that together explain the book, where the marks are then, and its
// log posterior but for a constant.
type setting struct {
	taken []*hypothesis
	x     network.State
	score float64
	odd   float64 // how oddly the lines step then; it chooses among the ends of one group, no more
}

// assess solves for a setting and scores it: half the sum of squares that is left, less what each
// mistake costs in odds.
func (f *finder) assess(s setting) setting {
	cost, x, ok := f.s.Try(f.ctx, f.change(s.taken, s.x))
	if ok {
		s.x = x
	}
	s.score, s.odd = -cost/2, f.oddness(s.x)
	for _, h := range s.taken {
		s.score += h.ln
	}
	return s
}

// leastSpare is the share of spare readings below which a book is sparse: two pegs and a few
// diagonals show that something is wrong, and hardly which of the readings that share one
// misclosure. There group mistakes are not looked for, but for swapped columns, which are so far
// off that the line itself tells; two mistakes at once are weighed against one; and an error of no
// listed size is pinned on no reading. Common practice, no source: redundancy 0.3 is aimed at.
const leastSpare = 0.2

// sparsely says whether a book is sparse, by the model of all its readings.
func sparsely(sp *adjust.Space) bool {
	spare, rows := sp.Spare()
	return spare < leastSpare*float64(rows)
}

func groupsOf(taken []*hypothesis) []*hypothesis {
	var out []*hypothesis
	for _, h := range taken {
		if len(h.why) == 0 {
			out = append(out, h)
		}
	}
	return out
}

// perCode is how many hypotheses of one kind of group are followed up.
const perCode = 4

// promising is the best few hypotheses of each kind of group, those that
// explain more than one reading's worth.
func (f *finder) promising(sp *adjust.Space, taken []*hypothesis) []*hypothesis {
	f.busy = map[int]bool{}
	for _, h := range taken {
		for _, p := range h.parts {
			f.busy[p] = true
		}
	}
	all := f.groups(sp, taken)
	slices.SortStableFunc(all, func(a, b *hypothesis) int { return higher(a.score, b.score) })
	var out []*hypothesis
	seen := map[string]int{}
	for _, h := range all {
		if seen[h.Code] < perCode && h.score > shown && h.x != nil {
			seen[h.Code]++
			out = append(out, h)
		}
	}
	return out
}

// place is where the marks are without the mistaken readings; it begins where the solutions of those
// just taken put the marks that they touch.
func (f *finder) place(taken, last []*hypothesis, x network.State) network.State {
	if len(last) == 1 && last[0].x != nil {
		x = last[0].x
	} else {
		x = append(network.State(nil), x...)
		for _, h := range last {
			if h.x == nil {
				continue
			}
			for _, i := range h.Obs {
				for _, m := range f.s.Net.Obs[i].Marks {
					if !f.isPeg[m] {
						x.SetPoint(m, h.x.Point(m))
					}
				}
			}
		}
	}
	_, y, ok := f.s.Try(f.ctx, f.change(taken, x))
	if !ok {
		return x
	}
	return y
}

// change is the variation that a set of mistakes amounts to: single readings go; groups whose
// lengths are known take part with the lengths that they were.
func (f *finder) change(taken []*hypothesis, x network.State) adjust.Change {
	c := adjust.Change{From: x, Joint: true}
	for _, h := range taken {
		if len(h.why) > 0 {
			c.Out = append(c.Out, h.parts...)
			continue
		}
		for k, p := range h.parts {
			if math.IsNaN(h.values[k]) {
				c.Out = append(c.Out, p)
			} else {
				c.Parts, c.Values = append(c.Parts, p), append(c.Values, h.values[k])
			}
		}
	}
	return c
}
