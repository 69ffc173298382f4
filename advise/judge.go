package advise

import (
	"math"

	"brimline/adjust"
	"brimline/mistake"
)

// Judge says whether what stands is good enough for one order; factor widens the standard
// deviations of the readings (1, or the reference sd where that is used). See JudgeAll.
func Judge(s *adjust.Solution, listed []mistake.Hypothesis, odd Odd, o Order, factor float64) Verdict {
	return JudgeAll(s, listed, odd, []Order{o}, factor)[0]
}

// JudgeAll judges several orders at once. A test is unfit where its U95 passes its share of the
// tolerance, its value is known to lie outside, or a suspect or doubtful reading moves it by more
// than a third of its tolerance; unproven where its value may lie outside, or a listed mistake
// that moves it by more than its tolerance may be there unseen, with odds above the order's. The
// order is as bad as its worst test; it is unproven too where the odds of all mistakes that spoil
// any of its tests add up to more than it allows. Guard band as in JCGM 106:2012, section 8.
//
// The odds that a listed mistake is there are its prior odds × the likelihood ratio of exactly
// this mistake against none, and count at most 1.
func JudgeAll(s *adjust.Solution, listed []mistake.Hypothesis, odd Odd, orders []Order, factor float64) []Verdict {
	g := newGround(s, listed)
	g.addProbes(orders)
	g.weigh()
	return g.verdicts(orders, g.doubts(odd), factor)
}

// Look is JudgeAll and Next at once, in little more time than one of them takes.
func Look(s *adjust.Solution, listed []mistake.Hypothesis, odd Odd, orders []Order, o Options) ([]Verdict, []Proposal) {
	p := newPlan(s, listed, odd, orders, o.filled())
	verdicts := p.verdicts(orders, p.doubts, p.o.Factor)
	return verdicts, p.proposals()
}

func (g *ground) verdicts(orders []Order, doubts []doubt, factor float64) []Verdict {
	out := make([]Verdict, len(orders))
	for o := range orders {
		out[o] = g.verdict(o, orders[o], doubts, factor)
	}
	return out
}

// weigh fills the odds of the ways.
func (g *ground) weigh() {
	g.odds = make([]float64, len(g.ways))
	for c := range g.causes {
		g.weighOne(&g.causes[c])
	}
}

func (g *ground) weighOne(c *cause) {
	c.heavy = 0
	for w := c.first; w < c.last; w++ {
		g.odds[w] = oddsOf(g.ways[w], c.lin, c.quad)
		c.heavy += g.odds[w]
	}
}

// nothing is the odds of a cause below which it is not looked at further.
const nothing = 1e-12

func oddsOf(w way, lin, quad float64) float64 {
	return math.Min(1, math.Exp(w.ln+w.size*(lin-quad*w.size/2)))
}

// reach is the largest share of its tolerance by which one unit of a cause moves a test of the
// order.
func (g *ground) reach(cause, order int) float64 {
	most := 0.0
	for t, m := range g.moves[cause*len(g.probes) : (cause+1)*len(g.probes)] {
		if p := &g.probes[t]; p.order == order {
			most = math.Max(most, math.Abs(m)/p.tolerance)
		}
	}
	return most
}

func (g *ground) verdict(o int, order Order, doubts []doubt, factor float64) Verdict {
	v := Verdict{Name: order.Name, State: Ready, Worst: -1}
	heaviest, weight := -1, 0.0
	for c := range g.causes {
		reach := g.reach(c, o)
		for w := g.causes[c].first; w < g.causes[c].last; w++ {
			if math.Abs(g.ways[w].size)*reach <= 1 {
				continue
			}
			v.Unseen += g.odds[w]
			if g.odds[w] > weight {
				heaviest, weight = w, g.odds[w]
			}
		}
	}
	for t := range g.probes {
		if g.probes[t].order == o {
			v.Tests = append(v.Tests, g.test(t, &order, doubts, factor))
		}
	}
	v.conclude(order, g, heaviest)
	return v
}

// test judges one figure.
func (g *ground) test(at int, order *Order, doubts []doubt, factor float64) Test {
	p := &g.probes[at]
	a := &order.Asks[p.ask]
	t := Test{Name: a.Name, At: a.At, Value: a.Value, U95: p.u95(p.variance, factor), Tolerance: p.tolerance, Share: p.share, State: Ready}
	heaviest := g.unseen(at, &t)
	limit := p.share * p.tolerance
	moved, far := worstDoubt(doubts, at, p.tolerance)
	switch {
	case !p.placed:
		t.State, t.Why = Unfit, Reason{Code: "unplaced", At: a.At}
	case math.Abs(t.Value)-t.U95 > p.tolerance:
		t.State, t.Why = Unfit, Reason{Code: "outside", At: a.At, From: t.Value, To: p.tolerance}
	case far > moveShare:
		t.State, t.Why = Unfit, Reason{Code: moved.code(), At: a.At, Obs: moved.obs, From: far * p.tolerance, To: p.tolerance * moveShare, Again: moved.again}
	case t.U95 > limit:
		t.State, t.Why = Unfit, Reason{Code: "wide", At: a.At, From: t.U95, To: limit}
	case math.Abs(t.Value) > p.tolerance:
		t.State, t.Why = Unproven, Reason{Code: "near", At: a.At, From: t.Value, To: p.tolerance}
	case t.Unseen > order.Unseen:
		t.State, t.Why = Unproven, g.accuse(heaviest, a.At)
	}
	return t
}

// unseen fills the odds that a listed mistake spoils test at, and gives the weightiest way.
func (g *ground) unseen(at int, t *Test) int {
	heaviest, weight := -1, 0.0
	tolerance := g.probes[at].tolerance
	for c := range g.causes {
		move := math.Abs(g.moves[c*len(g.probes)+at])
		if g.causes[c].heavy < nothing || g.causes[c].most*move*move <= tolerance*tolerance {
			continue
		}
		for w := g.causes[c].first; w < g.causes[c].last; w++ {
			if math.Abs(g.ways[w].size)*move <= tolerance {
				continue
			}
			t.Unseen += g.odds[w]
			if g.odds[w] > weight {
				heaviest, weight = w, g.odds[w]
			}
		}
	}
	t.Unseen = math.Min(t.Unseen, 1)
	return heaviest
}

// accuse names the listed mistake of a way.
func (g *ground) accuse(w int, at string) Reason {
	h := g.listed[g.ways[w].from]
	r := Reason{Code: "unseen", At: at, Mistake: h.Code, From: g.odds[w]}
	if len(h.Parts) == 1 {
		r.From, r.To = h.Size[0], g.odds[w]
	}
	for _, p := range h.Parts {
		i := g.s.ObsOf(p)
		if len(r.Obs) == 0 || r.Obs[len(r.Obs)-1] != i {
			r.Obs = append(r.Obs, i)
		}
	}
	return r
}

// conclude makes the order as bad as its worst test and gathers the reasons.
func (v *Verdict) conclude(o Order, g *ground, heaviest int) {
	for t := range v.Tests {
		if v.Worst < 0 || worse(&v.Tests[t], &v.Tests[v.Worst]) {
			v.Worst = t
		}
	}
	if v.Worst >= 0 {
		v.State = v.Tests[v.Worst].State
		if v.State != Ready {
			v.Why = append(v.Why, v.Tests[v.Worst].Why)
		}
	}
	if v.Unseen > o.Unseen {
		if rank(v.State) == 0 {
			v.State = Unproven
		}
		r := g.accuse(heaviest, "")
		r.Sum = v.Unseen
		if len(v.Why) == 1 && v.Why[0].Code == "unseen" {
			r.At = v.Why[0].At
			v.Why = v.Why[:0]
		}
		v.Why = append(v.Why, r)
	}
}

// worse orders tests: by state, then by odds, then by U95 against its limit.
func worse(a, b *Test) bool {
	if rank(a.State) != rank(b.State) {
		return rank(a.State) > rank(b.State)
	}
	if a.State == Unproven && a.Unseen != b.Unseen {
		return a.Unseen > b.Unseen
	}
	return a.U95/a.Tolerance > b.U95/b.Tolerance
}
