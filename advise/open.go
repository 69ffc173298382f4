package advise

import (
	"math"
	"slices"

	"brimline/network"
)

// fixing proposes for every mark that waits for a place the ties from pegs that it lacks: two
// are needed, from different pegs. Where it has them and still waits, they contradict each other:
// then the peg read least often is read again.
func (p *plan) fixing() []Proposal {
	var out []Proposal
	for _, m := range p.o.Waiting {
		if !p.s.Net.Taped(m) {
			continue
		}
		reads, have := p.readsOf(m)
		again := have >= 2
		for _, a := range append(p.pegs(), p.others(reads)...) {
			if have >= 2 {
				break
			}
			if a != m && reads[a] == 0 && !p.o.cannot(a, m) {
				have++
				out = append(out, p.fix(a, m))
			}
		}
		if a := p.leastRead(m, reads); again && a >= 0 {
			out = append(out, p.fix(a, m))
		}
	}
	return out
}

// readsOf counts the ties of a mark by the placed mark at their other end, and these marks.
func (p *plan) readsOf(m int) (reads []int, have int) {
	n := p.s.Net
	reads = make([]int, len(n.Marks))
	for i := range n.Obs {
		o := &n.Obs[i]
		if !o.Use || o.Kind.Name() != (network.Tie{}).Name() {
			continue
		}
		other := o.Marks[0] + o.Marks[1] - m
		if (o.Marks[0] == m || o.Marks[1] == m) && p.placed([]int{other}) {
			if reads[other] == 0 {
				have++
			}
			reads[other]++
		}
	}
	return reads, have
}

// leastRead is the peg whose ties to a mark are fewest, −1 where each was read too often.
func (p *plan) leastRead(m int, reads []int) int {
	at := -1
	for _, a := range p.pegs() {
		if a != m && reads[a] <= mostRead && !p.o.cannot(a, m) && (at < 0 || reads[a] < reads[at]) {
			at = a
		}
	}
	return at
}

func (p *plan) fix(a, m int) Proposal {
	return Proposal{Kind: "tie", Marks: []int{a, m}, About: math.NaN(), Gain: 1, Unit: "odds", Minutes: p.o.minutes(0),
		Alone: p.o.hooks(p.s.Net, a, m), Why: Reason{Code: "fixes", Marks: []int{m}}, Order: p.orderOf(m)}
}

// others are the placed marks that are no pegs, the one furthest from what the mark is tied to first:
// for marks that find too few pegs.
func (p *plan) others(reads []int) []int {
	var out []int
	far := make([]float64, len(reads))
	for m := range p.s.Net.Marks {
		if peg(p.s.Net, m) || !p.s.Net.Taped(m) || reads[m] > 0 || !p.placed([]int{m}) {
			continue
		}
		far[m] = math.Inf(1)
		for a, n := range reads {
			if n > 0 {
				far[m] = math.Min(far[m], p.s.X.Point(a).Dist(p.s.X.Point(m)))
			}
		}
		out = append(out, m)
	}
	slices.SortStableFunc(out, func(a, b int) int { return compare(far[b], far[a]) })
	return out
}

// pegs are the marks to tie from: pegs and benchmarks with a place, else the base; none that was
// moved since.
func (p *plan) pegs() []int {
	var out []int
	for m := range p.s.Net.Marks {
		if peg(p.s.Net, m) && p.s.Net.Taped(m) && p.placed([]int{m}) {
			out = append(out, m)
		}
	}
	if len(out) < 2 {
		out = out[:0]
		for _, m := range p.s.Base {
			if m >= 0 && p.s.Net.Taped(m) {
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

// again proposes to read every suspect reading again that moves an order too far and was not read
// again yet, and every member of a doubtful group without which marks would be lost, and takes the
// doubt off the plan. What was read to a peg before it was moved cannot be read again.
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
		if d.again || slices.ContainsFunc(o.Marks, func(m int) bool { return !n.Taped(m) }) {
			continue
		}
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
