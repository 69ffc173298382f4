package mistake

import (
	"math"

	"brimline/adjust"
)

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
