package locate

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// straighten looks once more at marks whose readings contradict each other, so that several
// places fit equally badly: the one at which the lines bend clearly least is taken.
func (g *growth) straighten() {
	c := &chooser{g: g, where: g.pos, known: g.placed}
	for range 2 {
		for m, ok := range g.placed {
			if !ok || g.ends[m] || !g.onLine(m) {
				continue
			}
			s := g.survey(m)
			if s == nil || len(s.places) < 2 || s.places[0].cost < capAt/2 {
				continue // nothing contradicts
			}
			g.leastBend(c, m, s)
		}
	}
}

func (g *growth) leastBend(c *chooser, m int, s *candidate) {
	was := g.pos[m]
	best, least := was, math.Inf(1)
	if now := s.costAt(was); now-s.places[0].cost <= certainBy {
		least = c.bendAt(m) - aLittle
	}
	for _, p := range s.places {
		if p.cost-s.places[0].cost > certainBy {
			break
		}
		g.pos[m] = p.p
		if b := c.bendAt(m); b < least {
			best, least = p.p, b
		}
	}
	g.pos[m] = best
}

func (g *growth) onLine(m int) bool {
	for _, p := range g.n.Paths {
		if onPath(p, m) {
			return true
		}
	}
	return false
}

func onPath(p network.Path, m int) bool {
	for _, q := range p.Marks {
		if q == m {
			return true
		}
	}
	return false
}

// bendAt is the turning of the lines through a mark.
func (c *chooser) bendAt(m int) float64 {
	sum := 0.0
	for _, p := range c.g.n.Paths {
		if onPath(p, m) {
			sum += c.turning(p)
		}
	}
	return sum
}

// apart lists, for a mark without a place, two of its readings whose circles miss each other.
func (g *growth) apart(m int) (a, b int, gap float64, ok bool) {
	for k, i := range g.of[m] {
		for _, j := range g.of[m][k+1:] {
			c := &candidate{g: g, mark: m}
			g.constraint(c, &g.n.Obs[i])
			g.constraint(c, &g.n.Obs[j])
			if len(c.circles) != 2 || c.circles[0].mark == c.circles[1].mark {
				continue
			}
			u, v := c.circles[0], c.circles[1]
			if _, _, d := plane.MeetCircles(u.centre, u.r, v.centre, v.r); math.Abs(d) > 6*math.Hypot(u.sd, v.sd)+3*(u.long+v.long) && math.Abs(d) > gap {
				a, b, gap, ok = i, j, math.Abs(d), true
			}
		}
	}
	return a, b, gap, ok
}
