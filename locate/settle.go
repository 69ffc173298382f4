package locate

import (
	"math"

	"brimline/plane"
)

// settle moves each placed mark a few times to where its readings agree best, wrong ones losing
// their weight: a Gauss–Seidel pass that keeps errors from growing along a chain of marks.
func (g *growth) settle(times int) {
	for range times {
		for m, ok := range g.placed {
			if ok && !g.ends[m] {
				g.nudge(m)
			}
		}
	}
}

func (g *growth) nudge(m int) {
	c := &g.nudged
	*c = candidate{g: g, mark: m, circles: c.circles[:0], spots: c.spots[:0], rays: c.rays[:0], votes: c.votes[:0]}
	for _, i := range g.of[m] {
		if o := &g.n.Obs[i]; o.Use && !lent(o) {
			g.constraint(c, o)
		}
	}
	if c.readings() < 3 {
		return
	}
	p := g.pos[m]
	var nxx, nxy, nyy, bx, by float64
	add := func(u plane.Point, r, sd float64) {
		w := 1 / (sd * sd * (1 + r*r/(sd*sd)))
		nxx += w * u.X * u.X
		nxy += w * u.X * u.Y
		nyy += w * u.Y * u.Y
		bx += w * u.X * r
		by += w * u.Y * r
	}
	for _, k := range c.circles {
		d := p.Sub(k.centre)
		sd := k.sd
		if k.long > 0 && d.Len() < k.r {
			sd = math.Hypot(sd, k.long)
		}
		add(d.Unit(), k.r-d.Len(), sd)
	}
	for _, s := range c.spots {
		d := s.p.Sub(p)
		add(plane.Point{X: 1}, d.X, s.sd)
		add(plane.Point{Y: 1}, d.Y, s.sd)
	}
	for _, r := range c.rays {
		d := p.Sub(r.from)
		add(r.along.Left(), -r.along.Cross(d), r.sdAt(d.Len()))
	}
	det := nxx*nyy - nxy*nxy
	if det < 0.02*nxx*nyy || det <= 0 {
		return // too flat a crossing to move by
	}
	step := plane.Point{X: (nyy*bx - nxy*by) / det, Y: (nxx*by - nxy*bx) / det}
	if l := step.Len(); l < 0.2 && !math.IsNaN(l) {
		g.pos[m] = p.Add(step)
	}
}
