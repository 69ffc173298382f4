package advise

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/mistake"
)

// Leaving is what it would mean for one order to leave now. Odds is the chance that a listed
// mistake, an ordinary error or a reading in doubt spoils the piece; Ways are its likeliest ways.
// Buy are the readings that would make the order ready, one after another, and Minutes what they
// take together; Ready says whether they would do, which nobody can while a mark has no place or a
// value is outside.
type Leaving struct {
	Order   string
	State   string
	Odds    float64
	Ways    []Way
	Buy     []Proposal
	Minutes float64
	Ready   bool
}

// Way is one way for a piece to be spoilt: a listed mistake (Obs and Size, 0 for a group), an
// ordinary error at a mark (code "error"), a suspect or doubtful reading.
type Way struct {
	Code string
	At   string
	Obs  []int
	Size float64
	Odds float64
}

// mostBought ends the list of what minutes would buy.
const mostBought = 60

// Leave says it for every order. Options.Count is not used.
func Leave(s *adjust.Solution, listed []mistake.Hypothesis, odd Odd, orders []Order, o Options) []Leaving {
	o = o.filled()
	verdicts := JudgeAll(s, listed, odd, orders, o.Factor)
	out := make([]Leaving, len(orders))
	for i := range orders {
		p := newPlan(s, listed, odd, orders[i:i+1], o)
		l := Leaving{Order: orders[i].Name, State: verdicts[i].State}
		l.Ways = p.waysOf(0)
		none := 0.0 // logarithm of the odds of none, which keeps the smallest
		for _, w := range l.Ways {
			none += math.Log1p(-w.Odds)
		}
		l.Odds = -math.Expm1(none)
		l.Ways = l.Ways[:min(3, len(l.Ways))]
		p.buy(&l)
		out[i] = l
	}
	return out
}

// waysOf lists every way for an order to be spoilt, the likeliest first; odds as chances.
func (p *plan) waysOf(order int) []Way {
	var out []Way
	for c := range p.causes {
		reach := p.reaches[order][c]
		for w := p.causes[c].first; w < p.causes[c].last; w++ {
			if math.Abs(p.ways[w].size)*reach <= 1 {
				continue
			}
			r := p.accuse(w, "")
			out = append(out, Way{Code: r.Mistake, Obs: r.Obs, Odds: p.odds[w] / (1 + p.odds[w])})
			if len(p.causes[c].parts) == 1 {
				out[len(out)-1].Size = p.ways[w].size
			}
		}
	}
	for t := range p.probes {
		k := &p.probes[t]
		if k.order != order {
			continue
		}
		chance := 1.0
		if u := k.u95(k.variance, p.o.Factor); !math.IsInf(u, 1) {
			chance = math.Erfc(k.tolerance / (u / two95) / math.Sqrt2)
		}
		out = append(out, Way{Code: "error", At: p.orders[order].Asks[k.ask].At, Odds: chance})
	}
	for i := range p.doubts {
		if d := &p.doubts[i]; p.stake(order, d) > 0 {
			out = append(out, Way{Code: d.code(), Obs: d.obs, Odds: math.Min(d.chance, 1)})
		}
	}
	slices.SortStableFunc(out, func(a, b Way) int { return compare(b.Odds, a.Odds) })
	return out
}

// buy plans readings until the order is ready.
func (p *plan) buy(l *Leaving) {
	l.Buy = append(l.Buy, p.fixing()...)
	if side, asked := p.siding(); asked {
		l.Buy = append(l.Buy, side...)
	}
	l.Buy = append(l.Buy, p.again()...)
	for len(l.Buy) < mostBought {
		next, ok := p.step()
		if !ok {
			break
		}
		l.Buy = append(l.Buy, next)
	}
	for _, b := range l.Buy {
		l.Minutes += b.Minutes
	}
	order, _ := p.worst()
	l.Ready = order < 0
	for t := range p.probes {
		k := &p.probes[t]
		a := &p.orders[k.order].Asks[k.ask]
		l.Ready = l.Ready && k.placed && math.Abs(a.Value) <= k.tolerance
	}
}
