package advise

import (
	"math"
	"slices"
)

// Limits of the search, chosen so that it takes milliseconds: the causes and tests that the first
// look counts, the candidates that are looked at closely, and how many of them may share a mark.
const (
	lookCauses  = 96
	lookWide    = 32
	lookClosely = 14
	lookPerMark = 3
)

// heavy is a cause that spoils the order: odds of all its ways that do, and the size that has to
// show for most of them to be seen.
type heavy struct {
	cause  int
	weight float64
	size2  float64
}

// heaviest lists the causes that matter to an order, the weightiest first.
func (p *plan) heaviest(order int) []heavy {
	var out []heavy
	for c := range p.causes {
		reach := p.reaches[order][c]
		h := heavy{cause: c}
		most, least := 0.0, 0.0
		for w := p.causes[c].first; w < p.causes[c].last; w++ {
			e := math.Abs(p.ways[w].size)
			if e*reach <= 1 || p.odds[w] == 0 {
				continue
			}
			h.weight += p.odds[w]
			if p.odds[w] > most {
				most = p.odds[w]
			}
		}
		for w := p.causes[c].first; w < p.causes[c].last; w++ {
			e := math.Abs(p.ways[w].size)
			if e*reach > 1 && p.odds[w] >= most/10 && (least == 0 || e < least) {
				least = e
			}
		}
		if h.weight > 1e-7 {
			h.size2 = least * least
			out = append(out, h)
		}
	}
	slices.SortStableFunc(out, func(a, b heavy) int { return compare(b.weight, a.weight) })
	return out[:min(len(out), lookCauses)]
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// shown is a quick lower bound of 1 − exp(−x), the share of the odds that goes when the mistake
// adds x to half the sum of squares.
func shown(x float64) float64 { return 1 - 1/(1+x+x*x/2) }

// screen gives every candidate a quick score, gain per minute, and returns the best few: no more
// than lookPerMark that share a mark which is not a peg.
func (p *plan) screen(order int, allowed func(*candidate) bool) []candidate {
	heavies := p.heaviest(order)
	wide := p.wideTests(order)
	score := make([]float64, len(p.all))
	rankOf := make([]int, 0, len(p.all))
	for i := range p.all {
		c := &p.all[i]
		if !allowed(c) {
			continue
		}
		score[i] = p.quick(order, c, heavies, wide) / c.minutes
		if score[i] > 0 {
			rankOf = append(rankOf, i)
		}
	}
	slices.SortStableFunc(rankOf, func(a, b int) int { return compare(score[b], score[a]) })
	used := make([]int, len(p.s.Net.Marks))
	var out []candidate
	for _, i := range rankOf {
		c := p.all[i]
		if used[c.a] >= lookPerMark || used[c.b] >= lookPerMark {
			continue
		}
		for _, m := range []int{c.a, c.b} {
			if !peg(p.s.Net, m) {
				used[m]++
			}
		}
		if out = append(out, c); len(out) == lookClosely {
			break
		}
	}
	return out
}

// wideTests are the tests of the order past their share of the tolerance, the widest first.
func (p *plan) wideTests(order int) []int {
	var out []int
	for t := range p.probes {
		if k := &p.probes[t]; k.order == order && k.placed && k.u95(k.variance, p.o.Factor) > k.share*k.tolerance {
			out = append(out, t)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int {
		return compare(p.probes[b].variance/p.probes[b].tolerance, p.probes[a].variance/p.probes[a].tolerance)
	})
	return out[:min(len(out), lookWide)]
}

func (p *plan) quick(order int, c *candidate, heavies []heavy, wide []int) float64 {
	d := c.total(p.ground)
	if !(d > 0) {
		return 0
	}
	sum := 0.0
	for _, h := range heavies {
		k := p.causes[h.cause].shows(c)
		if x := k * k * h.size2 / (2 * d); x > 1e-3 {
			sum += h.weight * shown(x)
		}
	}
	for _, t := range wide {
		k := &p.probes[t]
		b := c.along(k.response)
		if b*b < 1e-3*d*k.variance {
			continue
		}
		was, is := k.u95(k.variance, p.o.Factor), k.u95(k.variance-b*b/d, p.o.Factor)
		sum += math.Log(was / math.Max(is, k.share*k.tolerance))
	}
	for i := range p.doubts {
		if q := &p.doubts[i]; q.move != nil {
			k := c.along(q.move)
			sum += p.stake(order, q) * shown(k*k/(8*d))
		}
	}
	return sum
}
