package mistake

import (
	"math"

	"brimline/adjust"
)

// Readings whose errors look the same: from this correlation on they share one misclosure.
const alike = 0.95

// pairRange is how far two mistakes together may reach, metres: common practice, no source.
const pairRange = 4.0

// twins adds, where several readings share one misclosure, that two of them are wrong: together
// they explain any misclosure, and what one of them would have to be says nothing then.
func (f *finder) twins(sp *adjust.Space, all []*hypothesis) []*hypothesis {
	if len(all) < 2 {
		return nil
	}
	lead := all[0].parts[0]
	col := sp.Column(lead)
	half := sp.W(lead) * sp.W(lead) / 2
	var alikes []*hypothesis
	for _, h := range all {
		p := h.parts[0]
		if rho := col[p] / math.Sqrt(sp.R[lead]*sp.R[p]); len(h.parts) == 1 && math.Abs(rho) > alike {
			alikes = append(alikes, h)
		}
	}
	var out []*hypothesis
	for a, h := range alikes {
		for _, g := range alikes[a+1:] {
			_, s := sp.Estimate(h.parts[0])
			t := &hypothesis{parts: []int{h.parts[0], g.parts[0]}, values: []float64{math.NaN(), math.NaN()}}
			t.Code, t.Obs = "unknown", []int{h.Obs[0], g.Obs[0]}
			t.Peg, t.Other, t.From, t.To = -1, -1, -1, -1
			t.half = half
			t.ln = f.often(h.parts[0]) + f.often(g.parts[0]) + narrowed(s*math.Sqrt(2*math.Pi)/pairRange)
			t.score = t.half + t.ln
			out = append(out, t)
		}
	}
	return out
}

// often is the log of the odds that a reading holds any mistake.
func (f *finder) often(p int) float64 {
	sum := odds(f.book, "unknown")
	for _, c := range f.candidatesOf(p) {
		sum += math.Exp(c.ln)
	}
	return math.Log(sum)
}
