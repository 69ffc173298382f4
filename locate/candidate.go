package locate

import (
	"math"
	"sort"

	"brimline/network"
	"brimline/plane"
)

// spot is a place that one reading gives outright.
type spot struct {
	p    plane.Point
	sd   float64
	lent bool
}

// candidate is what the placed marks say of a mark that has no place yet.
type candidate struct {
	g       *growth
	mark    int
	places  []place
	circles []circle
	spots   []spot
	rays    []ray
	votes   []*network.Obs // turns, squares and straights, which vote by all their placed marks
}

type place struct {
	p     plane.Point
	cost  float64
	angle float64 // sine of the crossing angle; 1 for a spot
	pair  [2]int  // marks whose circles cross here; -1 for a spot
}

// certainBy is the lead in cost over the next place from which readings have decided.
const certainBy = 6.0

// survey collects the places for mark m and sorts them, the best first. Nil: no two circles or
// rays, and no spot. Lent readings propose only where nothing else does, at the end.
func (g *growth) survey(m int) *candidate {
	c := &candidate{g: g, mark: m, circles: make([]circle, 0, len(g.of[m]))}
	for _, i := range g.of[m] {
		g.constraint(c, &g.n.Obs[i])
	}
	c.propose(false)
	if len(c.places) == 0 && g.lend {
		c.propose(true)
	}
	if len(c.places) == 0 {
		return nil
	}
	for i := range c.places {
		c.places[i].cost = c.costAt(c.places[i].p)
	}
	sort.SliceStable(c.places, func(i, j int) bool {
		a, b := c.places[i], c.places[j]
		if math.Abs(a.cost-b.cost) > 1 {
			return a.cost < b.cost
		}
		return a.angle > b.angle
	})
	c.distinct()
	return c
}

func (c *candidate) propose(all bool) {
	c.fromSpots(all)
	c.fromCircles(all)
	c.fromRays(all)
}

// constraint adds what one observation says of the mark, when its other ends are placed.
func (g *growth) constraint(c *candidate, o *network.Obs) {
	switch o.Kind.(type) {
	case network.Tie, network.Width:
		q := o.Marks[0] + o.Marks[1] - c.mark
		if g.placed[q] && length(o) > 0 {
			c.circles = append(c.circles, circle{q, g.pos[q], length(o), widened(o.SD[0]), o.Long, lent(o)})
		}
	case network.Offset:
		if o.Marks[0] != c.mark || !g.placed[o.Marks[1]] || !g.placed[o.Marks[2]] {
			return
		}
		p, q := g.pos[o.Marks[1]], g.pos[o.Marks[2]]
		u := q.Sub(p).Unit()
		at := p.Add(u.Mul(o.Values[0])).Add(u.Left().Mul(o.Values[1]))
		c.spots = append(c.spots, spot{at, widened(math.Max(o.SD[0], o.SD[1])), lent(o)})
	case network.Seen:
		if s := g.pose[o.Setup-len(g.n.Marks)]; s != nil {
			c.spots = append(c.spots, spot{s.out(local(o)), widened(o.SD[0]), lent(o)})
		}
	case network.Turn, network.Square:
		g.turnRay(c, o)
		c.votes = append(c.votes, o)
	case network.Straight:
		g.straightRay(c, o)
		c.votes = append(c.votes, o)
	}
}

func (c *candidate) fromSpots(all bool) {
	for _, s := range c.spots {
		if s.lent && !all {
			continue
		}
		c.places = append(c.places, place{p: s.p, angle: 1, pair: [2]int{-1, -1}})
	}
}

func (c *candidate) costAt(p plane.Point) float64 {
	sum := 0.0
	for _, k := range c.circles {
		u := k.off(p)
		sum += math.Min(u*u, capAt)
	}
	for _, s := range c.spots {
		u := p.Dist(s.p) / s.sd
		sum += math.Min(u*u, capAt)
	}
	if len(c.votes) > 0 {
		known := func(m int) bool { return m == c.mark || c.g.placed[m] }
		at := func(m int) plane.Point {
			if m == c.mark {
				return p
			}
			return c.g.pos[m]
		}
		for _, o := range c.votes {
			u := c.g.off(o, known, at)
			sum += math.Min(u*u, capAt)
		}
	}
	return sum
}

// readings counts what speaks of the mark, a spot twice.
func (c *candidate) readings() int { return len(c.circles) + 2*len(c.spots) + len(c.rays) }

// distinct keeps the best of places that mean the same.
func (c *candidate) distinct() {
	kept := c.places[:0]
	for _, p := range c.places {
		same := false
		for _, q := range kept {
			if p.p.Dist(q.p) < math.Max(0.08, 0.04/math.Max(q.angle, 0.05)) {
				same = true
				break
			}
		}
		if !same {
			kept = append(kept, p)
		}
	}
	c.places = kept
}

// decided says that readings leave one place.
func (c *candidate) decided() bool {
	if len(c.places) == 0 {
		return false
	}
	if len(c.places) == 1 {
		return true
	}
	return c.places[1].cost-c.places[0].cost > certainBy
}

// goodAngle is the sine of a crossing angle from which a place can be trusted while better ones
// may still come.
const goodAngle = 0.2

// placeCertain surveys every mark whose surroundings changed and places those that readings
// decide at a crossing of at least the sine given, the best-conditioned first; false when there
// is none.
func (g *growth) placeCertain(least float64) bool {
	g.poseSetups()
	var ready []*candidate
	for m := range g.placed {
		if g.placed[m] {
			continue
		}
		if g.dirty[m] {
			g.dirty[m] = false
			g.waiting[m] = g.survey(m)
		}
		if c := g.waiting[m]; c != nil && c.decided() && c.places[0].angle >= least {
			ready = append(ready, c)
		}
	}
	if len(ready) == 0 {
		return false
	}
	sort.SliceStable(ready, func(i, j int) bool { return ready[i].weight() > ready[j].weight() })
	floor := math.Min(0.35, ready[0].weight())
	for _, c := range ready {
		if c.weight() < floor {
			break
		}
		g.place(c.mark, c.places[0].p)
		g.pinned = g.pinned || (len(c.spots) > 0 && g.readsHand(c.mark))
	}
	g.settle(2)
	return true
}

// weight prefers good crossings and many votes.
func (c *candidate) weight() float64 {
	w := c.places[0].angle
	if c.readings() > 2 {
		w += 0.1
	}
	return w
}

// reconsider surveys every placed mark again, now that all its neighbours have places, and moves
// it where its readings clearly fit better.
func (g *growth) reconsider() {
	for m, ok := range g.placed {
		if !ok || g.ends[m] || len(g.of[m]) < 3 {
			continue
		}
		c := g.survey(m)
		if c == nil || c.readings() < 3 || !c.decided() {
			continue
		}
		if c.costAt(g.pos[m])-c.places[0].cost > certainBy {
			g.pos[m] = c.places[0].p
		}
	}
}
