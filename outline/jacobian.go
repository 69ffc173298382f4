package outline

// jacobian is the slope of each condition by each unknown, by central differences.
func (c *chain) jacobian() []float64 {
	const h = 1e-5
	j := make([]float64, len(c.rows)*c.n)
	for a := range c.n {
		keep := c.q[a]
		for i, r := range c.rows {
			if r.axis < 2 || r.axis == 5 || r.axis == 6 {
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
