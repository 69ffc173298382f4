package outline

func (c *chain) jacobian() []float64 {
	const h = 1e-5
	j := make([]float64, len(c.rows)*c.n)
	for a := range c.n {
		keep := c.q[a]
		for i, r := range c.rows {
			if r.axis < 2 || r.axis > 4 {
				if a == 2*r.vertex+r.axis%5 {
					j[i*c.n+a] = 1
				}
				continue
			}
			if !c.touches(r, a) {
				continue
			}
			c.q[a] = keep + h
			up := c.value(c.q, r)
			c.q[a] = keep - h
			j[i*c.n+a] = (up - c.value(c.q, r)) / (2 * h)
			c.q[a] = keep
		}
	}
	return j
}

// touches says whether unknown a takes part in a condition.
func (c *chain) touches(r row, a int) bool {
	part := func(p *piece) bool {
		return a == p.bulge || a/2 == p.from && a < 2*len(c.vertex) || a/2 == p.to && a < 2*len(c.vertex)
	}
	if part(&c.pieces[r.piece]) {
		return true
	}
	return (r.axis == 3 || r.two) && part(&c.pieces[c.before(r.piece)])
}

// normal forms Jᵀ·W·J and Jᵀ·W·r; a condition touches few unknowns.
func (c *chain) normal(w, j []float64) (n, g []float64) {
	m := len(c.rows)
	r := make([]float64, m)
	touched := make([][]int, m)
	for i, x := range c.rows {
		r[i] = c.value(c.q, x)
		for k, v := range j[i*c.n : (i+1)*c.n] {
			if v != 0 {
				touched[i] = append(touched[i], k)
			}
		}
	}
	n, g = make([]float64, c.n*c.n), make([]float64, c.n)
	wj := make([]float64, c.n)
	for a := range m {
		wr := 0.0
		for k := range wj {
			wj[k] = 0
		}
		for b, v := range w[a*m : (a+1)*m] {
			if v == 0 {
				continue
			}
			wr += v * r[b]
			for _, k := range touched[b] {
				wj[k] += v * j[b*c.n+k]
			}
		}
		for _, k := range touched[a] {
			jv := j[a*c.n+k]
			g[k] += jv * wr
			for l, x := range wj {
				n[k*c.n+l] += jv * x
			}
		}
	}
	return n, g
}
