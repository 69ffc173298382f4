package mistake

import (
	"math"
	"slices"
)

// coarseOdds is how often every reading is less precise than stated: common practice, no source.
const coarseOdds = 0.05

// mostCoarse is the largest factor that is looked for: beyond it something else is wrong.
const mostCoarse = 4

// leastToTell is the redundancy from which a common lack of precision can be told from mistakes.
const leastToTell = 10

// coarse asks whether the readings are simply less precise than stated, all of them by one factor,
// with none or only the plainest of the mistakes: then the weaker ones are none.
func (f *finder) coarse(best setting) setting {
	rows, _ := f.model(best.x, nil).Spare()
	if len(best.taken) == 0 || rows < leastToTell {
		return best
	}
	order := append([]*hypothesis(nil), best.taken...)
	slices.SortStableFunc(order, func(a, b *hypothesis) int { return higher(a.score, b.score) })
	top := best
	without := make([]float64, len(order)) // the best score with only so many of them
	for k := range order {
		x := best.x
		if k == 0 {
			x = f.s.X
		}
		s := f.assess(setting{taken: order[:k:k], x: x})
		left := rows - float64(parts(order[:k]))
		cost := s.score
		for _, h := range order[:k] {
			cost -= h.ln
		}
		cost *= -2
		s.score += precision(cost, left)
		without[k] = s.score
		if k > 0 {
			without[k] = math.Max(without[k], without[k-1])
		}
		if s.score > top.score {
			top = s
		}
	}
	if len(top.taken) < len(order) {
		for k, h := range top.taken {
			if len(h.why) > 0 {
				h.judged, h.margin = true, top.score-without[k]
			}
		}
	}
	return top
}

// parts is how many redundant readings the mistakes use up: one for each part that goes and for each
// size that a group leaves open.
func parts(all []*hypothesis) int {
	n := 0
	for _, h := range all {
		if len(h.why) > 0 {
			n += len(h.parts)
			continue
		}
		for _, v := range h.values {
			if math.IsNaN(v) {
				n++
			}
		}
		switch h.Code {
		case "peg-moved":
			n += 2
		case "tape-zero", "wrong-edge", "water-moved":
			n++
		}
	}
	return n
}

// precision is what the best common factor on the standard deviations gains: with k redundant
// readings and a sum of squares c the factor's square is c/k.
func precision(c, k float64) float64 {
	if k <= 0 || c <= k || c > mostCoarse*mostCoarse*k {
		return math.Inf(-1)
	}
	return (c-k)/2 - k/2*math.Log(c/k) + math.Log(coarseOdds)
}
