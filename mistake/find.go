package mistake

import (
	"context"
	"math"
	"slices"
	"sort"

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
	f.conclude(r, found, taken, at)
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

// mostGroups is how many group mistakes are looked for in one book.
const mostGroups = 3

// slack is by how much the most that a group may score is held too low: single mistakes kept beside
// it can stand in its way.
const slack = 1000.0

// search explains the book by single mistakes alone and then, where several readings misfit, by
// each likely group with the single mistakes that remain, and keeps what explains it best.
func (f *finder) search(x network.State) setting {
	best := f.singly(setting{x: x})
	for range mostGroups {
		groups := groupsOf(best.taken)
		now := best
		if !f.suggested(best, len(groups)) {
			break
		}
		for _, from := range []network.State{x, best.x, f.byPegs(x)} {
			if from == nil {
				continue
			}
			sp := f.model(from, groups)
			for _, g := range f.promising(sp, groups) {
				with := append(append([]*hypothesis(nil), groups...), g)
				more := 0.0
				if f.sparse && g.Code != "columns" && g.Code != "water-moved" {
					if g.Code != "slip" || g.Peg < 0 || g.r.to-g.r.from+1 < manyRows {
						continue
					}
					more = plain
				}
				if f.atBest(with, best.taken, g) <= now.score-slack {
					continue
				}
				if s := f.singly(setting{taken: with, x: g.x}); s.score > now.score+more {
					now = s
				}
			}
		}
		now = f.ends(now)
		for _, s := range f.turned(now) {
			if s = f.ends(f.singly(s)); s.score-s.odd > now.score-now.odd {
				now = s
			}
		}
		if now.score == best.score {
			break
		}
		f.weighAgainst(now, best)
		best, x = now, now.x
	}
	return f.coarse(best)
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

// plain is by how much a slipped column must explain such a book better all the same, in log odds.
const plain = 12.0

// manyRows is how many rows such a slip must cover.
const manyRows = 5

// atBest is the most that a setting with group g may score: with the single mistakes found beside it,
// as if it made all of them needless.
func (f *finder) atBest(with, found []*hypothesis, g *hypothesis) float64 {
	in := map[int]bool{}
	for _, p := range g.parts {
		in[p] = true
	}
	spared := 0.0
	for _, h := range found {
		if len(h.why) > 0 && !in[h.parts[0]] {
			with = append(with[:len(with):len(with)], h)
			spared -= h.ln
		}
	}
	return f.assess(setting{taken: with, x: g.x}).score + spared
}

// weighAgainst notes of the groups that are new in a setting by how much it beats the old one, and by
// what that explained the book.
func (f *finder) weighAgainst(now, old setting) {
	for _, h := range groupsOf(now.taken) {
		if holds(old.taken, h) {
			continue
		}
		h.margin = now.score - old.score
		for _, g := range old.taken {
			if !holds(now.taken, g) {
				h.rival = append(h.rival, g)
			}
		}
	}
}

func holds(all []*hypothesis, h *hypothesis) bool {
	for _, g := range all {
		if sameParts(g, h) {
			return true
		}
	}
	return false
}

// suggested says whether the single mistakes found may be one in common: one against a water surface,
// several in one column, two at one mark, between pegs or between other marks, or readings that still do not fit without them.
func (f *finder) suggested(s setting, groups int) bool {
	taken := s.taken
	if f.sparse && len(taken) >= groups+2 || f.misfit(s) {
		return true
	}
	if slices.ContainsFunc(taken, func(h *hypothesis) bool { return len(h.why) > 0 && f.onWater(h.Obs[0]) }) {
		return true
	}
	if len(taken) < groups+2 {
		return false
	}
	wrong := map[int]bool{}
	at := map[int]int{}
	apart := 0
	for _, h := range taken {
		if len(h.why) == 0 {
			continue
		}
		i := h.Obs[0]
		wrong[i] = true
		pegs := 0
		for _, m := range f.s.Net.Obs[i].Marks {
			if f.isPeg[m] {
				pegs++
				continue
			}
			if at[m]++; at[m] > 1 {
				return true
			}
		}
		if pegs != 1 {
			apart++
		}
	}
	for _, c := range f.cols {
		n := 0
		for _, i := range c.obs {
			if wrong[i] {
				n++
			}
		}
		if n >= max(fewInColumn, len(c.obs)/20) {
			return true
		}
	}
	return apart > 1
}

// fewInColumn is how many single mistakes in one column may be one in common.
const fewInColumn = 2

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
	sort.SliceStable(all, func(a, b int) bool { return all[a].score > all[b].score })
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

// singly takes single mistakes one after another, the best explained first, each time from a model
// without those found, and gives back what fits again.
func (f *finder) singly(s setting) setting {
	for round := 0; round < 6+len(f.s.In)/8 && f.ctx.Err() == nil; round++ {
		sp := f.model(s.x, s.taken)
		best := f.choose(sp, f.singles(sp, s.taken))
		if len(best) == 0 {
			cost, x, ok := f.s.Try(f.ctx, f.change(s.taken, s.x))
			if !ok || cost < sp.Cost+misjudged {
				break
			}
			s.x = x // the linear model promised more than there is: ask it again from here
			continue
		}
		s.taken = append(append([]*hypothesis(nil), s.taken...), best...)
		s.x = f.place(s.taken, best, s.x)
		s = f.giveBack(s)
	}
	return f.assess(s)
}

// choose takes the best hypothesis, with others of single readings that hardly share an error with
// it; a pair where no single one is shown. None: nothing is shown.
func (f *finder) choose(sp *adjust.Space, all []*hypothesis) []*hypothesis {
	total := math.Inf(-1)
	for _, h := range all {
		total = addLog(total, h.score)
	}
	if total < shown {
		return f.pair(sp, all)
	}
	best := []*hypothesis{all[0]}
	if len(all[0].parts) > 1 {
		return best
	}
	const (
		clear = 12.0 // score of a reading that may be taken in the same round
		apart = 0.05 // correlation of the errors
	)
	for _, h := range all[1:] {
		if h.score < clear || len(h.parts) > 1 || len(best) >= 8 {
			continue
		}
		free := true
		for _, b := range best {
			q := b.parts[0]
			rho := sp.Column(q)[h.parts[0]] / math.Sqrt(sp.R[q]*sp.R[h.parts[0]])
			free = free && math.Abs(rho) < apart
		}
		if free {
			best = append(best, h)
		}
	}
	return best
}

// pair tries two readings wrong at once among the ten best.
func (f *finder) pair(sp *adjust.Space, all []*hypothesis) []*hypothesis {
	var ten []*hypothesis
	for _, h := range all {
		if len(h.parts) == 1 && len(ten) < 10 {
			ten = append(ten, h)
		}
	}
	var best []*hypothesis
	top := shown
	for a, h := range ten {
		p := h.parts[0]
		col := sp.Column(p)
		for _, g := range ten[a+1:] {
			q := g.parts[0]
			rest := sp.R[q] - col[q]*col[q]/sp.R[p]
			if rest < adjust.LeastRed {
				continue
			}
			u := sp.U[q] - col[q]*sp.U[p]/sp.R[p]
			second := &hypothesis{parts: f.outWith(q)}
			second.Mistake = g.Mistake
			f.explain(second, q, u/rest*sp.SD[q], sp.SD[q]/math.Sqrt(rest), u*u/rest/2, sp.X)
			if score := h.score + second.score; score > top {
				top, best = score, []*hypothesis{h, second}
			}
		}
	}
	return best
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
