package advise

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/network"
)

// fixing proposes for every mark that waits for a place the ties from pegs that it lacks: two
// are needed, from different pegs.
func (p *plan) fixing() []Proposal {
	var out []Proposal
	n := p.s.Net
	for _, m := range p.o.Waiting {
		tied := make([]bool, len(n.Marks))
		have := 0
		for i := range n.Obs {
			o := &n.Obs[i]
			if !o.Use || o.Kind.Name() != (network.Tie{}).Name() {
				continue
			}
			other := o.Marks[0] + o.Marks[1] - m
			if (o.Marks[0] == m || o.Marks[1] == m) && !tied[other] && p.placed([]int{other}) {
				tied[other] = true
				have++
			}
		}
		for _, a := range p.pegs() {
			if have >= 2 {
				break
			}
			if a == m || tied[a] || p.o.cannot(a, m) {
				continue
			}
			have++
			out = append(out, Proposal{Kind: "tie", Marks: []int{a, m}, About: math.NaN(), Gain: 1, Unit: "odds", Minutes: p.o.minutes(0),
				Alone: p.o.hooks(n, a, m), Why: Reason{Code: "fixes", Marks: []int{m}}, Order: p.orderOf(m)})
		}
	}
	return out
}

// pegs are the marks to tie from: pegs and benchmarks with a place, else the base.
func (p *plan) pegs() []int {
	var out []int
	for m := range p.s.Net.Marks {
		if peg(p.s.Net, m) && p.placed([]int{m}) {
			out = append(out, m)
		}
	}
	if len(out) < 2 {
		out = out[:0]
		for _, m := range p.s.Base {
			if m >= 0 {
				out = append(out, m)
			}
		}
	}
	return out
}

// orderOf is the first order that asks about a mark; the first of all where none does.
func (p *plan) orderOf(m int) string {
	for _, o := range p.orders {
		for _, a := range o.Asks {
			if a.At == p.s.Net.Marks[m] {
				return o.Name
			}
		}
	}
	if len(p.orders) > 0 {
		return p.orders[0].Name
	}
	return ""
}

// tellsSides is by how many of its standard deviations the length of a tie must differ between two
// places of a mark to say which it is: whatever it reads, one of the two then fails the test.
const tellsSides = 2 * adjust.WLimit

// siding proposes, of all marks with two places, the tie whose length differs most between them:
// of a mark that an order asks about before others, and one only, since what it reads may settle
// more marks than one. None where every order is ready, or where no tie would tell.
func (p *plan) siding() []Proposal {
	if order, _ := p.worst(); order < 0 {
		return nil
	}
	var best *Proposal
	asked := false
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
		return nil
	}
	return []Proposal{*best}
}

// side is the tie that tells the two places of a mark best; nil where none does.
func (p *plan) side(m Mirror) *Proposal {
	best, at, about := 0.0, -1, 0.0
	for a := range p.s.Net.Marks {
		if a == m.Mark || !p.placed([]int{a}) || p.o.cannot(a, m.Mark) || p.mirrored(a) {
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

// again proposes to read every suspect reading again that moves an order too far, and every member
// of a doubtful group without which marks would be lost, and takes the doubt off the plan.
func (p *plan) again() []Proposal {
	var out []Proposal
	kept := p.doubts[:0:0]
	for i := range p.doubts {
		d := &p.doubts[i]
		order := p.spoils(d)
		if order < 0 || d.group > 0 && d.move != nil {
			kept = append(kept, *d)
			continue
		}
		n := p.s.Net
		o := &n.Obs[d.read]
		prop := Proposal{Kind: o.Kind.Name(), Marks: o.Marks, About: math.NaN(), Gain: p.stake(order, d), Unit: "odds", Minutes: p.o.minutes(0),
			Why: Reason{Code: "again", Obs: d.obs, Marks: o.Marks}, Order: p.orders[order].Name}
		if o.Kind.Name() == (network.Tie{}).Name() {
			a, b := o.Marks[0], o.Marks[1]
			prop.About = p.s.X.Point(a).Dist(p.s.X.Point(b))
			prop.Minutes, prop.Alone = p.o.minutes(prop.About), p.o.hooks(n, a, b)
		}
		if d.group > 0 {
			prop.Why.Code = "tells"
		}
		out = append(out, prop)
	}
	p.doubts = kept
	return out
}

// spoils is the order that a doubt hurts most, −1 none.
func (p *plan) spoils(d *doubt) int {
	best, at := 0.0, -1
	for o := range p.orders {
		if v := p.stake(o, d) * p.cost(o); v > best {
			best, at = v, o
		}
	}
	return at
}
