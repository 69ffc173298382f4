package mistake

import (
	"math"

	"brimline/adjust"
)

// Readings whose errors look the same: from this correlation on they share one misclosure.
const alike = 0.95

// Where no listed mistake fits the best of them, less alike ones count as well: a size that nobody
// knows says nothing for it.
const likeEnough = 0.85

// pairRange is how far two mistakes together may reach, metres: common practice, no source.
const pairRange = 1.5

// twins adds, where several readings share one misclosure, that two of them are wrong: together
// they explain any misclosure, and what one of them would have to be says nothing then.
func (f *finder) twins(sp *adjust.Space, all []*hypothesis) []*hypothesis {
	if !f.sparse || len(all) == 0 || len(all[0].parts) > 1 {
		return nil
	}
	lead := all[0].parts[0]
	col := sp.Column(lead)
	same := alike
	if all[0].Code == "unknown" {
		same = likeEnough
	}
	var alikes []int
	for p, in := range sp.Member {
		if in && sp.R[p] >= adjust.LeastRed && math.Abs(col[p]) > same*math.Sqrt(sp.R[lead]*sp.R[p]) {
			alikes = append(alikes, p)
		}
	}
	var out []*hypothesis
	for a, p := range alikes {
		for _, q := range alikes[a+1:] {
			_, s := sp.Estimate(p)
			t := &hypothesis{parts: []int{p, q}, values: []float64{math.NaN(), math.NaN()}}
			t.Code, t.Obs = "unknown", []int{f.s.ObsOf(p), f.s.ObsOf(q)}
			t.Peg, t.Other, t.From, t.To = -1, -1, -1, -1
			t.half = all[0].half
			t.ln = f.often(p) + f.often(q) + narrowed(s*math.Sqrt(2*math.Pi)/pairRange)
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
