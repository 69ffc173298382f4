package mistake

import (
	"math"
	"slices"
	"sort"

	"brimline/adjust"
	"brimline/network"
	"brimline/plane"
)

// weighed is one mistake found (or two that cannot be weighed apart) with everything that could
// explain it instead.
type weighed struct {
	best []*hypothesis
	all  []*hypothesis
	none float64 // posterior of no mistake
	ln   float64 // log of the sum of all scores with none
}

// review weighs each mistake found again with the others as found until none changes, drops those that
// are not shown then, and gives what was weighed last.
func (f *finder) review(taken []*hypothesis, x network.State) ([]weighed, []*hypothesis, network.State) {
	var found []weighed
	for range 4 {
		var changed bool
		found, taken, changed = f.weighAll(taken, x)
		if !changed || f.ctx.Err() != nil {
			break
		}
		x = f.place(taken, nil, x)
	}
	return found, taken, x
}

// weighAll weighs every mistake in turn against what could stand in its place, with the others as
// they then are; two at one mark together. It gives what was weighed, the mistakes that are best,
// and whether one changed.
func (f *finder) weighAll(taken []*hypothesis, x network.State) (found []weighed, best []*hypothesis, changed bool) {
	todo := append([]*hypothesis(nil), taken...)
	for len(todo) > 0 && f.ctx.Err() == nil {
		h := todo[0]
		others := append(append([]*hypothesis(nil), best...), todo[1:]...)
		if l := f.partner(todo, 0); l > 0 {
			if w, ok := f.weighPair(h, todo[l], without(others, len(best)+l-1), x); ok {
				changed = changed || !samePair(w.best, h, todo[l])
				found, best, todo = append(found, w), append(best, w.best...), without(todo, 0, l)
				continue
			}
		}
		todo = todo[1:]
		w := f.weighAgain(h, others, x)
		if w.none > 0.5 {
			w = f.weighAnew(h, others, x)
		}
		if w.none > 0.5 {
			changed = true
			continue
		}
		changed = changed || len(w.best) > 1 || !sameParts(w.best[0], h)
		found, best = append(found, w), append(best, w.best...)
	}
	return found, best, changed
}

func samePair(p []*hypothesis, a, b *hypothesis) bool {
	return len(p) == 2 && sameParts(p[0], a) && sameParts(p[1], b) || len(p) == 2 && sameParts(p[0], b) && sameParts(p[1], a)
}

func without(all []*hypothesis, drop ...int) []*hypothesis {
	var out []*hypothesis
	for k, h := range all {
		if !slices.Contains(drop, k) {
			out = append(out, h)
		}
	}
	return out
}

func sameParts(a, b *hypothesis) bool { return slices.Equal(a.parts, b.parts) }

// weighAgain weighs a mistake against all others that could stand in its place.
func (f *finder) weighAgain(h *hypothesis, others []*hypothesis, x network.State) weighed {
	if len(h.why) == 0 {
		return f.weighGroup(h, others, x)
	}
	sp := f.model(x, others)
	w := weighed{all: f.singles(sp, others), none: 1}
	w.all = append(w.all, f.twins(sp, w.all)...)
	for _, g := range w.all {
		w.ln = addLog(w.ln, g.score)
	}
	if len(w.all) > 0 {
		w.none = math.Exp(-w.ln)
		w.best = w.all[:1]
		if w.best[0].Code == "unknown" && !f.sparse && len(w.best[0].parts) == 1 {
			if two := f.weighMark(w.best, others, x); len(two.best) > 0 {
				w, w.none = two, math.Exp(-two.ln)
			}
		}
		if h.judged {
			w.ln = addLog(w.ln, w.all[0].score-h.margin)
			w.best[0].judged, w.best[0].margin = true, h.margin
		}
	}
	return w
}

// weighAnew weighs a mistake for which the linear model at x, where its reading is out, finds no
// reason: from the solution that holds the reading, if that disagrees with the model.
func (f *finder) weighAnew(h *hypothesis, others []*hypothesis, x network.State) weighed {
	none := weighed{none: 1}
	if len(h.why) == 0 {
		return none
	}
	cost, y, ok := f.s.Try(f.ctx, f.change(others, x))
	if !ok || cost < f.model(x, others).Cost+misjudged {
		return none
	}
	if w := f.weighAgain(h, others, y); w.none <= 0.5 {
		return w
	}
	left, _, ok := f.s.Try(f.ctx, f.change(append(others[:len(others):len(others)], h), x))
	if score := (cost-left)/2 + h.ln; ok && score > shown {
		c := *h
		c.score = score
		return weighed{best: []*hypothesis{&c}, all: []*hypothesis{&c}, none: math.Exp(-score), ln: addLog(0, score)}
	}
	return none
}

// weighGroup weighs a group mistake against none by solutions of both, and against the same mistake
// with other ends. Single readings are no match for it: with a group as written, the marks lie too
// far off for a linear model, and the search has compared them by solutions of their own.
func (f *finder) weighGroup(h *hypothesis, others []*hypothesis, x network.State) weighed {
	f.busy = map[int]bool{}
	for _, o := range groupsOf(others) {
		for _, p := range o.parts {
			f.busy[p] = true
		}
	}
	with := f.assess(setting{taken: append(others[:len(others):len(others)], h), x: x})
	odds := with.score - f.assess(setting{taken: others, x: x}).score
	w := weighed{best: []*hypothesis{h}}
	var list []*hypothesis
	at := -1
	for _, g := range f.groups(f.model(x, others), others) {
		if g.Code == h.Code && g.Peg == h.Peg && g.Other == h.Other {
			if sameParts(g, h) {
				at = len(list)
			}
			list = append(list, g)
		}
	}
	if at < 0 {
		list, at = []*hypothesis{h}, 0
	}
	for _, g := range list {
		c := *g
		c.score += odds - list[at].score
		w.all = append(w.all, &c)
		w.ln = addLog(w.ln, c.score)
		if c.score > odds+1 && g.x != nil {
			if s := f.assess(setting{taken: append(others[:len(others):len(others)], g), x: g.x}); s.score > with.score {
				with, w.best = s, []*hypothesis{g}
			}
		}
	}
	w.none = math.Exp(-w.ln)
	f.rivals(&w, h, odds)
	return w
}

// rivals adds what explained the book without the group, weighed by the margin of the group over it.
func (f *finder) rivals(w *weighed, h *hypothesis, odds float64) {
	w.ln = addLog(w.ln, odds-h.margin)
	for _, b := range w.best {
		b.margin, b.rival = h.margin, h.rival
	}
	for _, g := range h.rival {
		c := *g
		c.score = odds - h.margin
		c.why = append([]option(nil), g.why...)
		for k := range c.why {
			c.why[k].score += c.score - g.score
		}
		w.all = append(w.all, &c)
	}
}

// conclude fills the report: states, groups, explanations, and the solution without the mistakes.
func (f *finder) conclude(r *Report, found []weighed, taken []*hypothesis, x network.State) {
	for _, w := range found {
		f.judge(r, w)
	}
	joinGroups(r)
	for _, w := range found {
		for _, h := range w.best {
			f.tell(r, w, h)
		}
	}
	f.settle(r, taken, x)
	for _, w := range found {
		if len(w.best) == 1 {
			f.elsewhere(r, w, taken, x)
		}
	}
}

// partner is another single mistake at the same mark, −1 without one.
func (f *finder) partner(taken []*hypothesis, k int) int {
	for l, g := range taken {
		if l != k && len(taken[k].why) > 0 && len(g.why) > 0 && f.shareMark(taken[k].Obs[0], g.Obs[0]) {
			return l
		}
	}
	return -1
}

func (f *finder) shareMark(i, j int) bool {
	for _, a := range f.s.Net.Obs[i].Marks {
		for _, b := range f.s.Net.Obs[j].Marks {
			if a == b && !f.isPeg[a] {
				return true
			}
		}
	}
	return false
}

// weighMark weighs one or two mistakes at a mark: every single reading there, and every first with
// every second given it.
func (f *finder) weighMark(wrong []*hypothesis, others []*hypothesis, x network.State) weighed {
	sp := f.model(x, others)
	t := table{f: f, sp: sp, others: others, at: map[[2]int]int{}}
	for _, a := range f.singles(sp, others) {
		if !slices.ContainsFunc(wrong, func(h *hypothesis) bool { return f.shareMark(a.Obs[0], h.Obs[0]) }) {
			continue
		}
		if a.x == nil {
			f.exact(sp, a, others)
		}
		if a.x == nil || math.IsInf(a.score, -1) {
			continue
		}
		t.alone = append(t.alone, a)
		t.beside(a)
	}
	for _, m := range f.marksOf(wrong) {
		t.fill(m)
	}
	t.together()
	t.triples()
	return t.weigh()
}

// marksOf are the marks, no pegs, that all of the mistakes touch.
func (f *finder) marksOf(wrong []*hypothesis) []int {
	var out []int
	for _, m := range f.s.Net.Obs[wrong[0].Obs[0]].Marks {
		if !f.isPeg[m] && slices.Contains(f.s.Net.Obs[wrong[len(wrong)-1].Obs[0]].Marks, m) {
			out = append(out, m)
		}
	}
	return out
}

// weighPair weighs two mistakes at one mark together; ok is false where nothing is shown so.
func (f *finder) weighPair(h, g *hypothesis, others []*hypothesis, x network.State) (weighed, bool) {
	w := f.weighMark([]*hypothesis{h, g}, others, x)
	return w, len(w.best) > 0 && w.ln > shown
}

// judge gives each reading that a mistake may be in its posterior and its state.
func (f *finder) judge(r *Report, w weighed) {
	const least = 0.01 // posterior of a reading that is named in a doubtful group
	chance := map[int]float64{}
	var order []int
	for _, h := range w.all {
		p := math.Exp(h.score - w.ln)
		for _, i := range unique(h.Obs) {
			if _, ok := chance[i]; !ok {
				order = append(order, i)
			}
			chance[i] += p
		}
	}
	for _, i := range append([]int(nil), order...) {
		if chance[i] < sure || !f.unproven(w, i) {
			continue
		}
		chance[i] = unprovenChance
		for _, j := range f.neighbours(i) {
			if _, ok := chance[j]; !ok {
				order = append(order, j)
			}
			chance[j] = math.Max(chance[j], least)
		}
	}
	sort.Ints(order)
	var doubtful Group
	for _, i := range order {
		c := math.Min(chance[i], 1)
		r.Wrong[i] = math.Max(r.Wrong[i], c)
		switch {
		case c >= sure:
			r.State[i] = Suspect
		case c >= least && r.State[i] != Suspect:
			doubtful.Obs, doubtful.Chance = append(doubtful.Obs, i), append(doubtful.Chance, c)
		}
		f.likely(r, w, i)
	}
	blamed := 0
	for _, h := range w.best {
		if r.State[h.Obs[0]] == Suspect {
			blamed++
		}
	}
	if len(doubtful.Obs) == 0 || blamed == len(w.best) && len(w.best[0].why) > 0 {
		return // every mistake is pinned on its reading
	}
	for _, i := range doubtful.Obs {
		r.State[i] = Doubtful
	}
	r.Groups = append(r.Groups, doubtful)
}

// unprovenChance is the most that is said of a reading whose mistake has no listed size, where its
// mark has no spare reading beside it that would confirm which one it is.
const unprovenChance = 0.9

// unproven says whether nothing but the failure of the others to fit points to reading i: no listed
// size, in a sparse book.
func (f *finder) unproven(w weighed, i int) bool {
	if !f.sparse {
		return false
	}
	for _, h := range w.best {
		if h.Obs[0] == i && len(h.why) > 0 {
			return h.Code == "unknown"
		}
	}
	return false
}

// neighbours are the other observations in use at the marks of one, pegs apart.
func (f *finder) neighbours(i int) []int {
	var out []int
	for j := range f.s.Net.Obs {
		if j != i && f.s.In[j] && f.shareMark(i, j) {
			out = append(out, j)
		}
	}
	return out
}

func unique(in []int) []int {
	out := slices.Clone(in)
	slices.Sort(out)
	return slices.Compact(out)
}

// likely lists what may have been done to one reading.
func (f *finder) likely(r *Report, w weighed, i int) {
	const least = 0.01
	put := func(e Explanation) {
		for k, o := range r.Likely[i] {
			if o.Code == e.Code && o.Part == e.Part && (o.Value == e.Value || math.IsNaN(o.Value) && math.IsNaN(e.Value)) {
				r.Likely[i][k].Chance += e.Chance
				return
			}
		}
		r.Likely[i] = append(r.Likely[i], e)
	}
	for _, h := range w.all {
		for k, p := range h.parts {
			if f.s.ObsOf(p) != i {
				continue
			}
			if len(h.why) == 0 {
				put(Explanation{h.Code, groupCause(h.Code), p, h.values[k], -1, math.Exp(h.score - w.ln)})
				continue
			}
			for _, o := range h.why {
				put(Explanation{o.code, f.causeOf(o, i), p, o.metres, o.peg, math.Exp(o.score - w.ln)})
			}
			break
		}
	}
	var kept []Explanation
	for _, e := range r.Likely[i] {
		if e.Chance >= least {
			kept = append(kept, e)
		}
	}
	slices.SortStableFunc(kept, func(a, b Explanation) int { return higher(a.Chance, b.Chance) })
	r.Likely[i] = kept
}

// causeOf is an explanation in a few words.
func (f *finder) causeOf(o option, i int) string {
	if o.peg < 0 {
		return o.cause
	}
	for _, m := range f.s.Net.Obs[i].Marks {
		if f.isPeg[m] {
			return "taped to " + f.s.Net.Marks[o.peg] + ", not to " + f.s.Net.Marks[m]
		}
	}
	return "taped to " + f.s.Net.Marks[o.peg]
}

// joinGroups makes one of groups that share a reading, and numbers them.
func joinGroups(r *Report) {
	for again := true; again; {
		again = false
		for a := range r.Groups {
			for b := a + 1; b < len(r.Groups) && !again; b++ {
				if shares(r.Groups[a], r.Groups[b]) {
					r.Groups[a] = joined(r.Groups[a], r.Groups[b])
					r.Groups = append(r.Groups[:b], r.Groups[b+1:]...)
					again = true
				}
			}
			if again {
				break
			}
		}
	}
	var kept []Group
	for _, g := range r.Groups {
		var h Group
		for k, i := range g.Obs {
			if r.State[i] == Doubtful {
				h.Obs, h.Chance = append(h.Obs, i), append(h.Chance, g.Chance[k])
			}
		}
		if len(h.Obs) == 0 {
			continue
		}
		h.Number = len(kept) + 1
		for _, i := range h.Obs {
			r.Group[i] = h.Number
		}
		kept = append(kept, h)
	}
	r.Groups = kept
}

func shares(a, b Group) bool {
	return slices.ContainsFunc(a.Obs, func(i int) bool { return slices.Contains(b.Obs, i) })
}

func joined(a, b Group) Group {
	for k, i := range b.Obs {
		at := slices.Index(a.Obs, i)
		if at < 0 {
			a.Obs, a.Chance = append(a.Obs, i), append(a.Chance, b.Chance[k])
		} else {
			a.Chance[at] = math.Max(a.Chance[at], b.Chance[k])
		}
	}
	return a
}

// tell turns the best hypothesis into the mistake that is offered.
func (f *finder) tell(r *Report, w weighed, h *hypothesis) {
	m := h.Mistake
	if len(h.why) > 0 {
		i := h.Obs[0]
		m.Chance = 0
		m.Code, m.Cause = "unknown", "no listed mistake fits"
		if len(r.Likely[i]) > 0 {
			e := r.Likely[i][0]
			m.Code, m.Cause, m.Chance = e.Code, e.Cause, e.Chance
			m.Edits = f.edits(e, i)
		}
		if r.Group[i] > 0 {
			m.Doubtful = true
		}
	} else {
		m.Obs = unique(h.Obs)
		for _, g := range w.all { // the same mistake with other ends counts for it
			if len(g.why) == 0 && g.Code == h.Code && g.Peg == h.Peg && g.Other == h.Other {
				m.Chance += math.Exp(g.score - w.ln)
			}
		}
	}
	r.Mistakes = append(r.Mistakes, m)
}

func (f *finder) edits(e Explanation, i int) []Edit {
	if e.Peg >= 0 {
		o := &f.s.Net.Obs[i]
		for _, m := range o.Marks {
			if f.isPeg[m] {
				return []Edit{{e.Part, math.NaN(), [2]int{m, e.Peg}}}
			}
		}
	}
	if math.IsNaN(e.Value) {
		return nil
	}
	return []Edit{{e.Part, e.Value, [2]int{-1, -1}}}
}

// settle solves without the mistaken readings. A mark that they alone hold is held by the lengths
// that they were, where those are known.
func (f *finder) settle(r *Report, taken []*hypothesis, x network.State) {
	c := adjust.Change{From: x, Held: true}
	for _, h := range taken {
		for k, p := range h.parts {
			if len(h.why) > 0 || math.IsNaN(h.values[k]) {
				c.Out = append(c.Out, p)
			} else {
				c.Parts, c.Values = append(c.Parts, p), append(c.Values, h.values[k])
			}
		}
	}
	s := f.s.Again(f.ctx, c)
	if s != nil && f.hangs(s, taken) {
		s = f.s.Again(f.ctx, f.held(&c, taken))
	}
	if s == nil {
		return
	}
	f.s.AsRead(s, c.Parts)
	r.Solution = s
	for _, p := range c.Parts {
		if i := f.s.ObsOf(p); !s.Out[p] {
			r.Held = append(r.Held, i)
		}
	}
}

// hangs says whether a mark of a single mistaken reading is loose without it.
func (f *finder) hangs(s *adjust.Solution, taken []*hypothesis) bool {
	for _, l := range s.Loose {
		for _, h := range taken {
			if len(h.why) > 0 && slices.Contains(f.s.Net.Obs[h.Obs[0]].Marks, l.Mark) {
				return true
			}
		}
	}
	return false
}

// held lets single readings whose length is known take part with it as well, where nothing else
// holds what they hold.
func (f *finder) held(c *adjust.Change, taken []*hypothesis) adjust.Change {
	for _, h := range taken {
		p := h.parts[0]
		if len(h.why) == 0 || len(h.parts) > 1 || math.IsNaN(h.why[0].metres) {
			continue
		}
		c.Parts, c.Values = append(c.Parts, p), append(c.Values, h.why[0].metres)
		c.Out = slices.DeleteFunc(c.Out, func(q int) bool { return q == p })
	}
	return *c
}

// elsewhere says where a doubtful group may put marks if another of its readings is the wrong one.
func (f *finder) elsewhere(r *Report, w weighed, taken []*hypothesis, x network.State) {
	const (
		least = 0.02
		apart = 0.003 // metres
	)
	best := w.best[0]
	if len(best.why) == 0 || r.Group[best.Obs[0]] == 0 {
		return
	}
	var others []*hypothesis
	for _, h := range taken {
		if h != best {
			others = append(others, h)
		}
	}
	for _, h := range w.all {
		if h.Obs[0] == best.Obs[0] || len(h.Obs) > 1 || math.Exp(h.score-w.ln) < least {
			continue
		}
		y := h.x
		if y == nil {
			var ok bool
			if _, y, ok = f.s.Try(f.ctx, f.change(append(append([]*hypothesis(nil), others...), h), x)); !ok {
				continue
			}
		}
		for m := range r.Other {
			p, q := r.Solution.X.Point(m), y.Point(m)
			if d := p.Dist(q); d > apart && far(r.Other[m], q, apart) {
				r.Other[m] = append(r.Other[m], q)
			}
		}
	}
}

func far(all []plane.Point, q plane.Point, apart float64) bool {
	for _, p := range all {
		if p.Dist(q) < apart {
			return false
		}
	}
	return true
}
