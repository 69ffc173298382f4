package mistake

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/network"
)

// byPegs is a state that rests on the tapes between pegs alone, every other mark placed by its own
// tapes from there: columns written wrongly cannot have bent it. Nil where the pegs' tapes do not
// fix them.
func (f *finder) byPegs(x network.State) network.State {
	if len(f.pegs) < 3 {
		return nil
	}
	tied := make([]int, len(f.isPeg))
	var out []int
	for i := range f.s.Net.Obs {
		o := &f.s.Net.Obs[i]
		_, tie := o.Kind.(network.Tie)
		if tie && f.s.In[i] && f.isPeg[o.Marks[0]] && f.isPeg[o.Marks[1]] {
			tied[o.Marks[0]]++
			tied[o.Marks[1]]++
			continue
		}
		for p := f.s.First[i]; p < f.s.First[i+1]; p++ {
			out = append(out, p)
		}
	}
	for _, m := range f.pegs {
		if tied[m] < 2 {
			return nil
		}
	}
	_, y, ok := f.s.Try(f.ctx, adjust.Change{Out: out, From: x, Joint: true})
	if !ok {
		return nil
	}
	z := append(network.State(nil), x...)
	for _, m := range f.pegs {
		z.SetPoint(m, y.Point(m))
	}
	sc := f.scene(z, f.model(x, nil).Member)
	for m := range f.isPeg {
		if f.isPeg[m] || len(sc.of[m]) == 0 || !f.s.Net.Placed(x, network.Unknown(m)) {
			continue
		}
		if _, at := sc.best(m, z.Point(m)); !math.IsNaN(at.X) {
			z.SetPoint(m, at)
		}
	}
	return z
}

// oneStart is how far a mark may move between two states from which the search would go alike,
// metres: the linear model is the same at both.
const oneStart = 0.001

// distinct drops of some states those that are nil or stand where one before does.
func distinct(all ...network.State) []network.State {
	var out []network.State
	for _, x := range all {
		if x != nil && !slices.ContainsFunc(out, func(y network.State) bool { return stands(x, y) }) {
			out = append(out, x)
		}
	}
	return out
}

// stands says whether two states are the same but for oneStart.
func stands(x, y network.State) bool {
	for k := range x {
		if math.IsNaN(x[k]) != math.IsNaN(y[k]) || math.Abs(x[k]-y[k]) > oneStart {
			return false
		}
	}
	return true
}
