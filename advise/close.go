package advise

import "math"

// study is a candidate looked at closely: all that its reading would change for one order.
type study struct {
	candidate
	total   float64   // D
	along   []float64 // by cause
	figure  []float64 // by probe: covariance of the reading with the figure
	doubt   []float64 // by doubt
	reaches []float64 // by cause, afterwards
	after   risk
}

func (p *plan) study(order int, c candidate) study {
	s := study{candidate: c, total: c.total(p.ground)}
	s.along = make([]float64, len(p.causes))
	s.figure = make([]float64, len(p.probes))
	s.doubt = make([]float64, len(p.doubts))
	for i := range p.causes {
		s.along[i] = p.causes[i].shows(&c)
	}
	for t := range p.probes {
		if p.probes[t].placed {
			s.figure[t] = c.along(p.probes[t].response)
		}
	}
	for i := range p.doubts {
		if p.doubts[i].move != nil {
			s.doubt[i] = c.along(p.doubts[i].move)
		}
	}
	s.reaches = make([]float64, len(p.causes))
	for i := range p.causes {
		s.reaches[i] = p.reaches[order][i]
		if p.matters(order, i, s.along[i]*s.along[i]/s.total) {
			s.reaches[i] = p.reachAfter(order, i, &s)
		}
	}
	s.after = p.after(order, s.reaches, func(i int) float64 { return s.along[i] * s.along[i] / s.total },
		func(t int) float64 { return s.figure[t] * s.figure[t] / s.total },
		func(i int) float64 { return s.doubt[i] * s.doubt[i] / s.total })
	return s
}

// reachAfter is reach with the reading added: each figure's move falls by its share of what the
// reading would take.
func (p *plan) reachAfter(order, cause int, s *study) float64 {
	f := s.along[cause] / s.total
	most := 0.0
	for t, m := range p.moves[cause*len(p.probes) : (cause+1)*len(p.probes)] {
		if k := &p.probes[t]; k.order == order {
			if r := math.Abs(m-f*s.figure[t]) / k.tolerance; r > most {
				most = r
			}
		}
	}
	return most
}

// matters says whether adding quad to a cause changes the odds of any of its ways by more than one
// in ten thousand.
func (p *plan) matters(order, cause int, quad float64) bool {
	return p.load[order][cause] > nothing && quad*p.causes[cause].most > 2e-4
}

// after is the risk once readings add quad to each cause, take cut from each variance, and tell
// each doubt by tell.
func (p *plan) after(order int, reaches []float64, quad, cut, tell func(int) float64) risk {
	var r risk
	for c := range p.causes {
		more := quad(c)
		if !p.matters(order, c, more) {
			r.unseen += p.load[order][c]
			continue
		}
		k := &p.causes[c]
		for w := k.first; w < k.last; w++ {
			y := &p.ways[w]
			if p.odds[w] < nothing || math.Abs(y.size)*reaches[c] <= 1 {
				continue
			}
			if x := y.ln + y.size*(k.lin-(k.quad+more)*y.size/2); x > -25 {
				r.unseen += math.Min(1, math.Exp(x))
			}
		}
	}
	for t := range p.probes {
		k := &p.probes[t]
		if k.order != order {
			continue
		}
		if less := cut(t); less > 1e-5*k.variance {
			r.wide += p.ordinary(k, k.variance-less)
		} else {
			r.wide += p.wide[t]
		}
	}
	for i := range p.doubts {
		r.doubt += p.stake(order, &p.doubts[i]) * math.Exp(-tell(i)/8)
	}
	return r
}

// both is the risk after two readings, the second on the ground that the first leaves; what an
// error moves is then taken as the smaller of what it moves after either.
func (p *plan) both(order int, a, b *study, reaches []float64) risk {
	w := make([]float64, 4)
	for i, m := range []int{a.a, a.b} {
		for c := range 2 {
			row := p.cov[(2*m+c)*p.n:]
			w[2*i+c] = b.u.X*(row[2*b.b]-row[2*b.a]) + b.u.Y*(row[2*b.b+1]-row[2*b.a+1])
		}
	}
	x := a.u.X*(w[2]-w[0]) + a.u.Y*(w[3]-w[1])
	d := b.total - x*x/a.total
	two := func(i, j float64) float64 {
		k := j - x*i/a.total
		return i*i/a.total + k*k/d
	}
	for c := range reaches {
		reaches[c] = math.Min(a.reaches[c], b.reaches[c])
	}
	return p.after(order, reaches, func(c int) float64 { return two(a.along[c], b.along[c]) },
		func(t int) float64 { return two(a.figure[t], b.figure[t]) },
		func(i int) float64 { return two(a.doubt[i], b.doubt[i]) })
}

// choose looks two ahead: the pair that lowers the risk most per minute, and of it the one that
// does more alone; −1 where nothing helps by the share leastHelp.
func (p *plan) choose(order int, was risk, list []study) int {
	best, at := 0.0, -1
	for i := range list {
		gain := was.sum() - list[i].after.sum()
		if gain > leastHelp*was.sum() && gain/list[i].minutes > best {
			best, at = gain/list[i].minutes, i
		}
	}
	if at < 0 {
		return at
	}
	reaches := make([]float64, len(p.causes))
	single := func(i int) float64 { return (was.sum() - list[i].after.sum()) / list[i].minutes }
	pair := 0.0
	for i := range list {
		for j := range i {
			gain := (was.sum() - p.both(order, &list[j], &list[i], reaches).sum()) / (list[i].minutes + list[j].minutes)
			if gain <= pair {
				continue
			}
			pair = gain
			if at = i; single(j) > single(i) {
				at = j
			}
		}
	}
	return at
}

// leastHelp is the share of the risk that a reading must take away to be worth proposing.
const leastHelp = 0.001
