package advise

import (
	"slices"

	"brimline/adjust"
)

// group is the cause of a hypothesis in several parts.
func (g *ground) group(h int, proof *adjust.Space) cause {
	q := adjust.Pattern{Parts: g.listed[h].Parts, Size: g.listed[h].Size}
	c := cause{parts: q.Parts, first: len(g.ways)}
	if g.listed[h].Code == sharedZero {
		c.carry = g.listed[h].Size[0]
	}
	if !g.sum(q, &c) {
		c.shift = g.s.Shift(q)
		c.lin, c.quad = proof.Effect(q)
	}
	g.ways = append(g.ways, way{size: 1, ln: g.listed[h].LnPrior, from: h})
	g.close(&c)
	return c
}

// sum makes a group of the causes of its parts, which saves solving: Δ = Σ e·Δ(part), lin = Σ e·lin(part),
// quad = Σ e²/sd² − Σ e·(a·Δ)/sd². False where a part has no cause, touches more than marks, or
// where check readings add to what shows.
func (g *ground) sum(q adjust.Pattern, c *cause) bool {
	s := g.s
	if slices.Contains(s.Agrees, true) {
		return false
	}
	for _, p := range q.Parts {
		if i := s.ObsOf(p); g.unit[p] == 0 || !s.In[i] || s.Out[p] || !marksOnly(s.Net, &s.Net.Obs[i]) {
			return false
		}
	}
	c.shift = make([]float64, g.n)
	for k, p := range q.Parts {
		one := &g.causes[g.unit[p]-1]
		add(c.shift, one.shift, q.Size[k])
		c.lin += q.Size[k] * one.lin
	}
	for k, p := range q.Parts {
		i := s.ObsOf(p)
		o := &s.Net.Obs[i]
		along, at := 0.0, 0
		row := g.derivatives(o, p-s.First[i])
		for _, b := range o.Blocks {
			along += row[at]*c.shift[2*b] + row[at+1]*c.shift[2*b+1]
			at += 2
		}
		c.quad += q.Size[k] * (q.Size[k] - along) / (s.SD[p] * s.SD[p])
	}
	c.quad = max(c.quad, 0)
	return true
}
