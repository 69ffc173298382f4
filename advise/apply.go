package advise

import "math"

// apply adds a reading to the plan as if it had read what the figure predicts. Its own listed
// mistakes are those of the tie in the book whose length is nearest.
func (p *plan) apply(c candidate) {
	if !p.own {
		p.cov, p.own = append([]float64(nil), p.cov...), true
	}
	w := make([]float64, p.n)
	c.spread(p.ground, w)
	d := c.total(p.ground)
	n := len(p.probes)
	figure := make([]float64, n)
	for t := range p.probes {
		k := &p.probes[t]
		if !k.placed {
			continue
		}
		figure[t] = c.along(k.response)
		k.variance = math.Max(k.variance-figure[t]*figure[t]/d, 0)
		add(k.response, w, -figure[t]/d)
	}
	for i := range p.causes {
		k := &p.causes[i]
		f := k.shows(&c) / d
		if f == 0 {
			continue
		}
		k.quad += f * f * d
		add(k.shift, w, -f)
		add(p.moves[i*n:(i+1)*n], figure, -f)
	}
	for i := range p.doubts {
		if q := &p.doubts[i]; q.move != nil {
			f := c.along(q.move) / d
			q.chance *= math.Exp(-f * f * d / 8)
			if q.group == 0 {
				continue
			}
			add(q.move, w, -f)
			add(q.figure, figure, -f)
		}
	}
	p.carry(c, w, figure, d)
	for i := range w {
		if w[i] != 0 {
			add(p.cov[i*p.n:(i+1)*p.n], w, -w[i]/d)
		}
	}
	p.weigh()
	p.measure()
}

func add(to, v []float64, f float64) {
	for i, x := range v {
		to[i] += f * x
	}
}

// carry lists the mistakes that could be made in the planned reading: it moves the marks by
// C′aᵀ/s² = C·aᵀ/D and has the redundancy s²/D.
func (p *plan) carry(c candidate, w, figure []float64, d float64) {
	like := p.likeness(c.about)
	k := cause{planned: [2]int{c.a, c.b}, quad: 1 / d, first: len(p.ways), shift: make([]float64, p.n)}
	add(k.shift, w, 1/d)
	for _, h := range like {
		p.ways = append(p.ways, way{size: p.listed[h].Size[0], ln: p.listed[h].LnPrior, from: h})
	}
	p.close(&k)
	p.causes = append(p.causes, k)
	for _, f := range figure {
		p.moves = append(p.moves, f/d)
	}
}

// likeness is the hypotheses of the tie whose length is nearest.
func (p *plan) likeness(about float64) []int {
	best, at := math.Inf(1), -1
	for i, l := range p.lengths {
		if d := math.Abs(l - about); d < best {
			best, at = d, i
		}
	}
	if at < 0 {
		return nil
	}
	return p.template[at]
}
