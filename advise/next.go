package advise

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/mistake"
	"brimline/network"
)

// Proposal is a reading worth taking. About is what it will read, NaN where nothing says it.
// Gain is by how much it lowers the risk of the order that it helps: in metres (Unit "m") where
// it lowers the largest U95, else in odds (Unit "odds"). Alone says that one person can take it.
type Proposal struct {
	Kind        string
	Marks       []int
	About, Gain float64
	Unit        string
	Minutes     float64
	Alone       bool
	Why         Reason
	Order       string
}

// Next proposes what to read next: first what marks wait for, what settles the side of a mark that
// an order asks about, and suspect readings again; then, as long as an order is not ready, the tie
// that lowers the risk of the worst order most per minute, looking two ahead; last what settles
// the side of another mark; and where all is well but that the readings disagree more than their
// precision allows, the ties that do so most, again. Each is chosen as if those before it had been
// read, so that the list is a plan; where it makes every order ready, the list ends. Alone, ties
// that do not hook are proposed only where no other helps.
func Next(s *adjust.Solution, listed []mistake.Hypothesis, odd Odd, orders []Order, o Options) []Proposal {
	return newPlan(s, listed, odd, orders, o.filled()).proposals()
}

func (p *plan) proposals() []Proposal {
	out := p.fixing()
	side, asked := p.siding()
	if asked {
		out, side = append(out, side...), nil
	}
	out = append(out, p.again()...)
	for len(out)+len(side) < p.o.Count {
		next, ok := p.step()
		if !ok {
			break
		}
		out = append(out, next)
	}
	if out = append(out, side...); len(out) == 0 && len(p.orders) > 0 && p.disputed() {
		out = p.disputes()
	}
	return out[:min(len(out), p.o.Count)]
}

func newPlan(s *adjust.Solution, listed []mistake.Hypothesis, odd Odd, orders []Order, o Options) *plan {
	p := &plan{ground: newGround(s, listed), orders: orders, o: o}
	p.addProbes(orders)
	p.weigh()
	p.measure()
	p.doubts = p.ground.doubts(odd)
	if s.Rows == 0 {
		return p
	}
	p.all = p.candidates(o)
	for c := range p.causes {
		k := &p.causes[c]
		if len(k.parts) != 1 {
			continue
		}
		i := s.ObsOf(k.parts[0])
		if s.Net.Obs[i].Kind.Name() != (network.Tie{}).Name() {
			continue
		}
		var hs []int
		for w := k.first; w < k.last; w++ {
			hs = append(hs, p.ways[w].from)
		}
		p.template = append(p.template, hs)
		p.lengths = append(p.lengths, s.Net.Obs[i].Values[0])
	}
	return p
}

// step chooses one tie and adds it to the plan; false when every order is ready or nothing helps.
func (p *plan) step() (Proposal, bool) {
	order, was := p.worst()
	if order < 0 {
		return Proposal{}, false
	}
	chosen, ok := p.best(order, was)
	if !ok {
		return Proposal{}, false
	}
	out := p.propose(order, was, &chosen)
	p.apply(chosen.candidate)
	p.doubts = slices.DeleteFunc(p.doubts, func(d doubt) bool { return d.group > 0 && d.chance < settled })
	p.all = slices.DeleteFunc(p.all, func(c candidate) bool {
		return c.a == chosen.a && c.b == chosen.b && c.reads+1 > mostRead
	})
	for i := range p.all {
		if c := &p.all[i]; c.a == chosen.a && c.b == chosen.b {
			c.reads++
		}
	}
	return out, true
}

// settled is the chance below which a member of a doubtful group counts as cleared: that from
// which a reading is suspect, shared among others.
const settled = 0.01

func (p *plan) best(order int, was risk) (study, bool) {
	hooked := func(c *candidate) bool { return c.hooked }
	any := func(*candidate) bool { return true }
	tries := []func(*candidate) bool{any}
	if p.o.Alone {
		tries = []func(*candidate) bool{hooked, any}
	}
	for _, allowed := range tries {
		var list []study
		for _, c := range p.screen(order, allowed) {
			list = append(list, p.study(order, c))
		}
		if at := p.choose(order, was, list); at >= 0 {
			return list[at], true
		}
	}
	return study{}, false
}

// propose words a chosen tie by the part of the risk that it lowers most.
func (p *plan) propose(order int, was risk, c *study) Proposal {
	out := Proposal{Kind: "tie", Marks: []int{c.a, c.b}, About: c.about, Unit: "odds", Minutes: c.minutes, Alone: c.hooked, Order: p.orders[order].Name}
	unseen, wide, doubt := was.unseen-c.after.unseen, was.wide-c.after.wide, was.doubt-c.after.doubt
	switch {
	case doubt > unseen && doubt > wide:
		out.Gain, out.Why = doubt, Reason{Code: "tells", Obs: p.told(c)}
	case wide > unseen:
		out.Why = p.sharper(order, c)
		out.Gain, out.Unit = out.Why.From-out.Why.To, "m"
		if out.Why.Code == "fixes" {
			out.Gain, out.Unit = 1, "odds"
		}
	default:
		out.Gain, out.Why = unseen, p.control(c)
	}
	return out
}

// told is the readings of the group that the tie tells most about.
func (p *plan) told(c *study) []int {
	best, at := -1.0, 0
	for i := range p.doubts {
		if v := math.Abs(c.doubt[i]) * p.doubts[i].chance; v > best {
			best, at = v, i
		}
	}
	return p.doubts[at].obs
}

// sharper names the test that gains most in U95; a mark that nothing holds is fixed by it.
func (p *plan) sharper(order int, c *study) Reason {
	r := Reason{Code: "sharper", Marks: p.ends(c)}
	best := 0.0
	for t := range p.probes {
		k := &p.probes[t]
		if k.order != order || !k.placed {
			continue
		}
		was := k.u95(k.variance, p.o.Factor)
		is := k.u95(k.variance-c.figure[t]*c.figure[t]/c.total, p.o.Factor)
		if was > k.share*k.tolerance && was-is > best {
			best = was - is
			r.At, r.From, r.To = p.orders[order].Asks[k.ask].At, was, is
		}
	}
	for _, l := range p.s.Loose {
		if math.IsInf(l.Move, 1) && slices.Contains(r.Marks, l.Mark) {
			r.Code, r.Marks = "fixes", []int{l.Mark}
		}
	}
	return r
}

// control names the marks whose readings the tie would check.
func (p *plan) control(c *study) Reason {
	switch {
	case c.reads == 0:
		return p.controls(p.ends(c))
	case ordered(p.s.Base[0], p.s.Base[1]) == [2]int{c.a, c.b}:
		return Reason{Code: "base", Marks: []int{c.a, c.b}}
	}
	return Reason{Code: "repeat", Marks: []int{c.a, c.b}}
}

// controls says that a tie would control those of its ends that are not yet, else that a smaller
// mistake at them would show.
func (p *plan) controls(ends []int) Reason {
	var open []int
	for _, m := range ends {
		if !p.controlled(m) {
			open = append(open, m)
		}
	}
	if open == nil {
		return Reason{Code: "smaller", Marks: ends}
	}
	return Reason{Code: "control", Marks: open}
}

// controlled says that no reading whose mistake nothing would show moves the mark by more than
// adjust.Influence of its error, the planned readings counted.
func (p *plan) controlled(m int) bool {
	for c := range p.causes {
		k := &p.causes[c]
		if len(k.parts) != 1 {
			continue
		}
		sd := p.s.SD[k.parts[0]]
		if k.quad*sd*sd < adjust.LeastRed && math.Hypot(k.shift[2*m], k.shift[2*m+1]) > adjust.Influence {
			return false
		}
	}
	return true
}

// ends are the ends of the tie that are not pegs, or both pegs.
func (p *plan) ends(c *study) []int {
	var out []int
	for _, m := range []int{c.a, c.b} {
		if !peg(p.s.Net, m) {
			out = append(out, m)
		}
	}
	if out == nil {
		return []int{c.a, c.b}
	}
	return out
}
