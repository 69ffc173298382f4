package advise

import (
	"math"
	"slices"

	"brimline/adjust"
)

// tellsSides is by how many of its standard deviations the length of a tie must differ between two
// places of a mark to say which it is: whatever it reads, one of the two then fails the test.
const tellsSides = 2 * adjust.WLimit

// siding proposes, of all marks with two places, the tie whose length differs most between them:
// of a mark that an order asks about before others, and one only, since what it reads may settle
// more marks than one; and whether an order asks. None where every order is ready, or where no tie
// would tell.
func (p *plan) siding() (side []Proposal, asked bool) {
	if order, _ := p.worst(); order < 0 {
		return nil, false
	}
	var best *Proposal
	for _, m := range p.o.Mirrors {
		if m.Lined {
			continue
		}
		c := p.side(m)
		if c == nil || best != nil && asked && !p.asked(m.Mark) {
			continue
		}
		if best == nil || !asked && p.asked(m.Mark) || c.Gain > best.Gain {
			best, asked = c, p.asked(m.Mark)
		}
	}
	if best == nil {
		return nil, false
	}
	return []Proposal{*best}, asked
}

// side is the tie that tells the two places of a mark best; nil where none does.
func (p *plan) side(m Mirror) *Proposal {
	best, at, about := 0.0, -1, 0.0
	for a := range p.s.Net.Marks {
		if a == m.Mark || !p.s.Net.Taped(a) || !p.s.Net.Taped(m.Mark) || !p.placed([]int{a}) || p.o.cannot(a, m.Mark) || p.mirrored(a) {
			continue
		}
		q := p.s.X.Point(a)
		one, two := q.Dist(m.Places[0]), q.Dist(m.Places[1])
		if least, most := math.Min(one, two), math.Max(one, two); least < p.o.Shortest || most > p.o.Longest {
			continue
		}
		if p.o.Alone && !p.o.hooks(p.s.Net, a, m.Mark) {
			continue
		}
		if d := math.Abs(one - two); d > best && d > tellsSides*p.o.sd(a, m.Mark) {
			best, at, about = d, a, one
		}
	}
	if at < 0 {
		return nil
	}
	return &Proposal{Kind: "tie", Marks: []int{at, m.Mark}, About: about, Gain: best, Unit: "m", Minutes: p.o.minutes(about),
		Alone: p.o.hooks(p.s.Net, at, m.Mark), Why: Reason{Code: "side", Marks: []int{m.Mark}, From: about, To: p.s.X.Point(at).Dist(m.Places[1])}, Order: p.orderOf(m.Mark)}
}

// asked says whether an order asks about a mark.
func (p *plan) asked(m int) bool {
	for _, k := range p.probes {
		if slices.Contains(k.marks, m) {
			return true
		}
	}
	return false
}

func (p *plan) mirrored(mark int) bool {
	for _, m := range p.o.Mirrors {
		if m.Mark == mark {
			return true
		}
	}
	return false
}
