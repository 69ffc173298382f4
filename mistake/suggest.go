package mistake

import (
	"slices"

	"brimline/network"
)

// suggested says whether the single mistakes found may be one in common: one against a water surface,
// several in one column, two at one mark, between pegs or between other marks, or readings that still
// do not fit without them; or one that shows two rows at odds.
func (f *finder) suggested(s setting, groups int) bool {
	taken := s.taken
	if f.sparse && len(taken) >= groups+2 || f.misfit(s) || f.crossed(taken) {
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

// crossed says whether a tie between marks is wrong by no listed size: where a peg stands midway between
// two others, nothing but such a tie tells that some rows were read with these two exchanged.
func (f *finder) crossed(taken []*hypothesis) bool {
	for _, h := range taken {
		if len(h.why) == 0 || h.Code != "unknown" {
			continue
		}
		o := &f.s.Net.Obs[h.Obs[0]]
		if _, tie := o.Kind.(network.Tie); tie && !f.isPeg[o.Marks[0]] && !f.isPeg[o.Marks[1]] {
			return true
		}
	}
	return false
}
