package mistake

import (
	"math"

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
