package outline

import (
	"math"

	"brimline/finding"
)

// judge keeps the misfits of inner marks with their standard deviations: the variance of a
// misfit after the fit is that before it less what the fit took up.
func (c *chain) judge(edge []float64) {
	cov := c.misfitCov(edge)
	j := c.jacobian()
	m := len(c.rows)
	c.res, c.resSD = make([]float64, m), make([]float64, m)
	for i, r := range c.rows {
		v := cov[i*m+i]
		row := j[i*c.n : (i+1)*c.n]
		for a := range c.n {
			if row[a] == 0 {
				continue
			}
			for b := range c.n {
				v -= row[a] * c.cov[a*c.n+b] * row[b]
			}
		}
		c.res[i], c.resSD[i] = c.value(c.q, r), math.Sqrt(math.Max(v, 0))
	}
}

// flat names arcs that are straight as far as their marks tell.
func (c *chain) flat() []finding.Finding {
	var out []finding.Finding
	for i := range c.pieces {
		p := &c.pieces[i]
		if p.bulge < 0 || math.Abs(c.segment(c.q, p).Sagitta()) > 1e-4 {
			continue
		}
		out = append(out, finding.Finding{Code: "arc-flat", Lines: []string{c.l.Name}, Marks: p.names[:]})
	}
	return out
}

// tests names inner marks that lie off the run said to go through them.
func (c *chain) tests() []finding.Finding {
	const limit, least = 3.29, 1e-4
	out := c.flat()
	for i, r := range c.rows {
		if r.axis != 2 || c.resSD[i] < least || math.Abs(c.res[i]) <= limit*c.resSD[i] {
			continue
		}
		out = append(out, finding.Finding{Code: "tight-fit", Lines: []string{c.l.Name}, Marks: []string{c.block.name(r.mark)},
			Figures: map[string]float64{"off": math.Abs(c.res[i]), "allowed": limit * c.resSD[i]},
			Words:   map[string]string{"kind": c.pieces[r.piece].kind}})
	}
	return out
}
