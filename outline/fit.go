package outline

import "math"

// Standard deviations that keep the weights finite: of a joint said to be tangent, and the least
// of a mark across the line.
const (
	tangentSD = 1e-4 // radians
	leastSD   = 1e-5 // metres
)

// settle minimises the misfits with the full covariance of the marks (Gauss–Newton with a
// shortened step; the derivatives of the few conditions by central differences) and gives their
// weighted sum of squares. The line is found in its own frame; the covariance kept is that in the
// datum.
func (c *chain) settle(edge []float64) float64 {
	if c.free() {
		c.frame = c.block.datum
		c.cov = c.misfitCov(edge)
		c.res, c.resSD = make([]float64, len(c.rows)), make([]float64, len(c.rows))
		return 0
	}
	w := c.iterate(edge)
	c.judge(edge)
	cost := c.cost(w)
	c.frame = c.block.datum
	n, _ := c.equations(c.whiten(edge))
	c.cov = invert(n, c.n)
	return cost
}

// score is settle's sum of squares alone, near enough to rank descriptions: with the weights of the
// start, until a step gains next to nothing.
func (c *chain) score(edge []float64) float64 {
	if c.free() {
		c.cov = c.misfitCov(edge)
		return 0
	}
	const mostSteps, little = 15, 1e-3
	w := c.whiten(edge)
	last := c.cost(w)
	for range mostSteps {
		c.step(w)
		now := c.cost(w)
		if last-now < little {
			return now
		}
		last = now
	}
	return last
}

// iterate takes steps until they move nothing, and gives the last weights. Those hang on where the
// line runs by the directions at its marks alone: once a step is short they stay.
func (c *chain) iterate(edge []float64) (w whitening) {
	const mostSteps, short, still = 40, 1e-6, 1e-10
	move := math.Inf(1)
	for range mostSteps {
		if move > short {
			w = c.whiten(edge)
		}
		if move = c.step(w); move < still {
			break
		}
	}
	return w
}

// step is one of Gauss and Newton's; it gives the largest move.
func (c *chain) step(w whitening) float64 {
	n, g := c.equations(w)
	c.cov = invert(n, c.n)
	d := make([]float64, c.n)
	for a := range d {
		for b := range d {
			d[a] -= c.cov[a*c.n+b] * g[b]
		}
	}
	return c.advance(w, d)
}

// advance adds the step d, halved until the misfits weighted by w do not grow (a line said to
// run where its marks do not lie would lead it astray), and gives its largest coordinate.
func (c *chain) advance(w whitening, d []float64) float64 {
	from, before := append([]float64(nil), c.q...), c.cost(w)
	f := 1.0
	for range 30 {
		largest := 0.0
		for a := range d {
			c.q[a] = from[a] + f*d[a]
			largest = math.Max(largest, math.Abs(f*d[a]))
		}
		if largest < 1e-7 || c.cost(w) <= before {
			return largest
		}
		f /= 2
	}
	copy(c.q, from)
	return 0
}

// free says that nothing but its own mark holds any unknown: a line of curves goes through its
// marks, and the covariance of its unknowns is theirs.
func (c *chain) free() bool {
	for _, r := range c.rows {
		if r.axis > 1 {
			return false
		}
	}
	return len(c.rows) == c.n
}
