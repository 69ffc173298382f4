package advise

import (
	"math"
	"slices"
)

// disputed says that the readings disagree more than their stated precision allows, and that no
// common factor was put on it.
func (p *plan) disputed() bool {
	return p.s.Redundancy > 0 && p.s.Cost > p.s.ChiHigh && p.o.Factor == 1
}

// disputes proposes, where nothing else is wrong than that, the ties that disagree most to be read
// again: what was a mistake shows then, what was chance is shared by two readings, and a lack of
// precision common to all can be told once enough is to spare. Gain is the chance that readings as
// precise as stated disagree less.
func (p *plan) disputes() []Proposal {
	var list []candidate
	worst := map[[2]int]float64{} // looked up only
	for i := range p.s.Net.Obs {
		o := &p.s.Net.Obs[i]
		at := p.s.First[i]
		if w := math.Abs(p.s.W[at]); p.s.In[i] && !p.s.Out[at] && o.Kind.Name() == "tie" && !math.IsNaN(w) {
			key := ordered(o.Marks[0], o.Marks[1])
			worst[key] = math.Max(worst[key], w)
		}
	}
	of := func(c candidate) float64 { return worst[[2]int{c.a, c.b}] }
	for _, c := range p.all {
		if of(c) > 0 {
			list = append(list, c)
		}
	}
	slices.SortStableFunc(list, func(a, b candidate) int {
		if p.o.Alone && a.hooked != b.hooked {
			if a.hooked {
				return -1
			}
			return 1
		}
		return compare(of(b), of(a))
	})
	var out []Proposal
	for _, c := range list[:min(len(list), p.o.Count)] {
		out = append(out, Proposal{Kind: "tie", Marks: []int{c.a, c.b}, About: c.about, Gain: math.Erf(of(c) / math.Sqrt2), Unit: "odds",
			Minutes: c.minutes, Alone: c.hooked, Why: Reason{Code: "repeat", Marks: []int{c.a, c.b}}, Order: p.orders[0].Name})
	}
	return out
}
