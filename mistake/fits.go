package mistake

import "math"

// hollow says of a setting with a group whether it proves nothing: the readings still disagree beyond
// their precision by its own solution, or the single mistakes that it needs beside the group use up
// more than half of what was to spare.
func (f *finder) hollow(s setting) bool {
	all, _ := f.model(s.x, nil).Spare()
	spare, _ := f.model(s.x, s.taken).Spare()
	singles := float64(len(s.taken) - len(groupsOf(s.taken)))
	cost, _, ok := f.s.Try(f.ctx, f.change(s.taken, s.x))
	return singles > all/2 || !ok || beyond(cost, spare)
}

// misfit says whether the readings that a setting leaves disagree beyond their precision: 0.001.
func (f *finder) misfit(s setting) bool {
	sp := f.model(s.x, s.taken)
	spare, _ := sp.Spare()
	return beyond(sp.Cost, spare)
}

func beyond(cost, spare float64) bool { return cost > spare+3.1*math.Sqrt(2*spare)+4 }

// misjudged is by how much the sum of squares may exceed what the linear model says of it.
const misjudged = 6.0

// fits is the greatest w, and its square the greatest rise of the sum of squares, with which a
// reading that was left out fits again.
const fits = 2.0

// giveBack returns single readings to the solution that fit it again, by the linear model and by a
// solution that holds them.
func (f *finder) giveBack(s setting) setting {
	sp := f.model(s.x, s.taken)
	for k := 0; k < len(s.taken); k++ {
		h := s.taken[k]
		p := h.parts[0]
		if len(h.why) == 0 || len(h.parts) > 1 || math.Abs(sp.W(p)) >= fits || math.Abs(f.misclosure(s.x, p)) >= 2*fits*sp.SD[p]/math.Sqrt(sp.R[p]) {
			continue
		}
		rest := without(s.taken, k)
		cost, x, ok := f.s.Try(f.ctx, f.change(rest, s.x))
		if !ok || cost > sp.Cost+fits*fits {
			continue
		}
		s.taken, s.x = rest, x
		sp = f.model(s.x, s.taken)
		k--
	}
	return s
}
