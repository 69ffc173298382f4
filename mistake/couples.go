package mistake

import (
	"math"

	"brimline/adjust"
)

// couple is two readings wrong at once, each with its explanations.
type couple struct {
	score float64
	one   [2]*hypothesis
}

// three is a reading and two that share one misclosure beside it, weighed by the pair that the first
// and the best of the two make.
type three struct {
	lead [2]int
	less float64
	one  [2]*hypothesis
}

func key(a, b *hypothesis) [2]int {
	return [2]int{min(a.parts[0], b.parts[0]), max(a.parts[0], b.parts[0])}
}

// table is everything that may be wrong at a mark, with the other mistakes as found: one reading
// alone, two, and in sparse books three.
type table struct {
	f      *finder
	sp     *adjust.Space
	others []*hypothesis
	alone  []*hypothesis
	pairs  []couple
	threes []three
	at     map[[2]int]int // looked up only: of a pair, by its parts
}

// beside adds every second reading that may be wrong beside a.
func (t *table) beside(a *hypothesis) {
	f := t.f
	with := append(append([]*hypothesis(nil), t.others...), a)
	given := f.model(a.x, with)
	seconds := f.singles(given, with)
	for _, two := range f.twins(given, seconds) { // met from each of its three readings
		if seconds[0].Code != "unknown" {
			break
		}
		t.threes = append(t.threes, three{lead: key(a, seconds[0]), less: two.score - seconds[0].score - math.Log(3), one: [2]*hypothesis{a, two}})
	}
	for _, b := range seconds {
		if b.Obs[0] == a.Obs[0] || math.IsInf(b.score, -1) {
			continue
		}
		flip := 0
		if a.parts[0] > b.parts[0] {
			flip = 1
		}
		k, ok := t.at[key(a, b)]
		if !ok {
			k = len(t.pairs)
			t.at[key(a, b)] = k
			t.pairs = append(t.pairs, couple{score: math.Inf(-1)})
		}
		c := &t.pairs[k]
		c.score = math.Max(c.score, a.score+b.score)
		c.one[1-flip] = b // what b may be rests on a being out
		if c.one[flip] == nil {
			c.one[flip] = a
		}
	}
}

// together weighs each of the pairs at one mark again, both of its readings at once.
func (t *table) together() {
	for k, c := range t.pairs {
		if !t.f.shareMark(c.one[0].Obs[0], c.one[1].Obs[0]) {
			continue
		}
		if both, ok := t.f.joint(t.sp, c.one[0], c.one[1], t.others); ok {
			t.pairs[k] = couple{score: both[0].score, one: both}
		}
	}
}

// fill adds the pairs of readings of mark m in which neither shows without the other: where one is
// out, nothing may be left to show the second.
func (t *table) fill(m int) {
	var there []*hypothesis
	for i := range t.f.s.Net.Obs {
		p := t.f.s.First[i]
		for _, k := range t.f.s.Net.Obs[i].Marks {
			if k == m && t.sp.Member[p] && len(t.f.s.Net.Obs[i].Values) == 1 {
				there = append(there, t.f.lone(p, 0, t.sp.X))
			}
		}
	}
	for n, a := range there {
		for _, b := range there[:n] {
			if _, ok := t.at[key(a, b)]; ok {
				continue
			}
			if both, ok := t.f.joint(t.sp, b, a, t.others); ok {
				t.at[key(a, b)] = len(t.pairs)
				t.pairs = append(t.pairs, couple{score: both[0].score, one: both})
			}
		}
	}
}

// triples adds the threes, weighed by the pairs that lead them.
func (t *table) triples() {
	for _, three := range t.threes {
		if k, ok := t.at[three.lead]; ok {
			t.pairs = append(t.pairs, couple{score: t.pairs[k].score + three.less, one: three.one})
		}
	}
}

// weigh makes one list of it: each reading with its explanations, weighed by the pair that it is
// in. The best is the most probable one or two.
func (t *table) weigh() weighed {
	w := weighed{ln: math.Inf(-1)}
	top := math.Inf(-1)
	for _, a := range t.alone {
		w.ln = addLog(w.ln, a.score)
		w.all = append(w.all, a)
		if a.score > top {
			top, w.best = a.score, []*hypothesis{a}
		}
	}
	for _, c := range t.pairs {
		w.ln = addLog(w.ln, c.score)
		for _, one := range c.one {
			g := *one
			g.why = append([]option(nil), one.why...)
			for k := range g.why {
				g.why[k].score += c.score - one.score
			}
			g.score = c.score
			w.all = append(w.all, &g)
		}
		if len(c.one[1].parts) == 1 && c.score > top {
			top, w.best = c.score, []*hypothesis{c.one[0], c.one[1]}
		}
	}
	return w
}
