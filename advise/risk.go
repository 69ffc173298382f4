package advise

import "math"

// risk of one order, in three parts: listed mistakes that would pass unseen and spoil it (their
// expected number), ordinary errors (the chance that one passes the tolerance, and how far U95
// is past its share), and readings that are suspect or doubtful (their chance × the move, in
// tolerances).
type risk struct{ unseen, wide, doubt float64 }

func (r risk) sum() float64 { return r.unseen + r.wide + r.doubt }

// plan is a ground on which readings are added one after another.
type plan struct {
	*ground
	orders   []Order
	doubts   []doubt
	o        Options
	all      []candidate
	reaches  [][]float64 // by order, then cause
	load     [][]float64 // by order, then cause: odds of its ways that spoil
	wide     []float64   // by probe: see ordinary
	template [][]int     // hypotheses of a single tie, by length: see likeness
	lengths  []float64
}

// ordinary is what ordinary errors of a figure with variance v of the readings put at stake: the
// chance that it is off by more than its tolerance, and the logarithm of U95 over its limit where
// it is past it, which falls to nothing where the test becomes fit.
func (p *plan) ordinary(t *probe, v float64) float64 {
	u := t.u95(v, p.o.Factor)
	if math.IsInf(u, 1) {
		return 1
	}
	r := 0.0
	if u > 0 {
		r = math.Erfc(t.tolerance / (u / two95) / math.Sqrt2)
	}
	if limit := t.share * t.tolerance; u > limit {
		r += math.Log(u / limit)
	}
	return r
}

// now is the risk of an order as the plan stands.
func (p *plan) now(order int) risk {
	var r risk
	for _, v := range p.load[order] {
		r.unseen += v
	}
	for t := range p.probes {
		if p.probes[t].order == order {
			r.wide += p.wide[t]
		}
	}
	for k := range p.doubts {
		r.doubt += p.stake(order, &p.doubts[k])
	}
	return r
}

// measure fills how far each cause reaches into each order and what it puts at stake there.
func (p *plan) measure() {
	p.reaches, p.load = make([][]float64, len(p.orders)), make([][]float64, len(p.orders))
	for o := range p.orders {
		p.reaches[o], p.load[o] = make([]float64, len(p.causes)), make([]float64, len(p.causes))
		for c := range p.causes {
			p.reaches[o][c] = p.reach(c, o)
			for w := p.causes[c].first; w < p.causes[c].last; w++ {
				if math.Abs(p.ways[w].size)*p.reaches[o][c] > 1 {
					p.load[o][c] += p.odds[w]
				}
			}
		}
	}
	p.wide = make([]float64, len(p.probes))
	for t := range p.probes {
		p.wide[t] = p.ordinary(&p.probes[t], p.probes[t].variance)
	}
}

// stake is what a doubt puts at risk: a suspect reading that moves the order too far keeps it
// from being used, whatever its chance; of a group its chance × the move in tolerances.
func (p *plan) stake(order int, d *doubt) float64 {
	far := 0.0
	for t := range p.probes {
		if k := &p.probes[t]; k.order == order {
			far = math.Max(far, math.Abs(d.figure[t])/k.tolerance)
		}
	}
	switch {
	case far <= moveShare:
		return 0
	case d.group == 0:
		return 1
	}
	return d.chance * math.Min(far, 1)
}

// ready says whether the order would be ready if everything planned were read as predicted, and
// what waits for a place were well placed. Values are left aside: reading more promises nothing
// of them.
func (p *plan) ready(order int, r risk) bool {
	if r.unseen > p.orders[order].Unseen || r.doubt > 0 {
		return false
	}
	for t := range p.probes {
		k := &p.probes[t]
		if k.order == order && k.placed && k.u95(k.variance, p.o.Factor) > k.share*k.tolerance {
			return false
		}
	}
	return true
}

func (p *plan) cost(order int) float64 {
	if c := p.orders[order].Cost; c > 0 {
		return c
	}
	return 1
}

// worst is the order with the highest risk × cost among those that are not ready, −1 when all are.
func (p *plan) worst() (int, risk) {
	best, at, kept := 0.0, -1, risk{}
	for o := range p.orders {
		r := p.now(o)
		if p.ready(o, r) {
			continue
		}
		if v := r.sum() * p.cost(o); at < 0 || v > best {
			best, at, kept = v, o, r
		}
	}
	return at, kept
}
