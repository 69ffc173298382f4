package draft

import (
	"math"

	"brimline/plane"
	"brimline/sheet"
)

// Distances of a number from its mark in millimetres: the nearest, and the one from which a leader
// is drawn.
const (
	nearNumber = 1.8
	leadNumber = 3.2
)

// The longest leaders of names in millimetres: usually, where every mark has its name in a detail,
// and at all.
const (
	longLead     = 17.0
	thinnedLead  = 9.0
	farthestLead = 38.0
)

// longestLead is the one for a mark; names of pegs, which no detail has, may stand anywhere.
func (c *canvas) longestLead(m string) float64 {
	switch {
	case c.lasting(m):
		return farthestLead
	case c.every > 1:
		return thinnedLead
	}
	return longLead
}

// numbered says that a mark's name is written beside it.
func (c *canvas) numbered(m string) bool {
	return !c.lasting(m) && !c.skipped[m]
}

// lasting marks are pegs and benchmarks, with larger names.
func (c *canvas) lasting(m string) bool {
	k := c.kind(m)
	return k == peg || k == benchmark
}

// number is a mark's name in the making.
type number struct {
	mark  string
	owner int
	ways  []candidate
	done  bool
	now   candidate
}

// numbers writes the names of the marks outside the pool: pegs first, then one after another
// along the outline, then again as long as one finds a better place now that the others are there.
func (c *canvas) numbers() {
	var list []*number
	for _, lasting := range []bool{true, false} {
		for _, m := range c.marks {
			if p, ok := c.at(m); ok && c.lasting(m) == lasting && !c.skipped[m] {
				list = append(list, &number{mark: m, owner: c.next(), ways: c.numberWays(m, p, c.longestLead(m))})
			}
		}
	}
	for sweep := 0; sweep < 4; sweep++ {
		moved := false
		for _, n := range list {
			moved = c.settle(n) || moved
		}
		if !moved {
			break
		}
	}
	c.further(list)
	for _, n := range list {
		if !n.done {
			c.unplaced = append(c.unplaced, n.mark)
			if c.nameless == nil {
				c.nameless = map[string]bool{}
			}
			c.nameless[n.mark] = true
			continue
		}
		c.draw(n.now.draw()...)
	}
}

// further looks a long way off for the few names that found no room: a detail for them alone would
// be a sheet more.
func (c *canvas) further(list []*number) {
	var left []*number
	for _, n := range list {
		if !n.done {
			left = append(left, n)
		}
	}
	if c.window == nil && len(left) > fewNames {
		return
	}
	for _, n := range left {
		p, _ := c.at(n.mark)
		n.ways = c.numberWays(n.mark, p, farthestLead)
		c.settle(n)
	}
}

// fewNames is how many names are worth a long leader.
const fewNames = 4

// settle places or moves one number; it says whether that changed anything.
func (c *canvas) settle(n *number) bool {
	c.field.release(n.owner)
	was := n.now
	best, ok := c.field.best(n.ways, n.owner, forbidden)
	changed := ok != n.done || ok && best.rooms[0] != was.rooms[0]
	n.done, n.now = ok, best
	if ok {
		c.field.keep(best, n.owner, crossThin)
	}
	return changed
}

// numberWays are the places of a mark's name: straight out of the pool first, then aside and
// further away with a leader. Pegs have larger, bold names, on any side.
func (c *canvas) numberWays(m string, p plane.Point, longest float64) []candidate {
	out, turns, inside := c.numberSide(p)
	text := sheet.Text{S: m, Height: smallHeight, Anchor: sheet.MidCentre}
	gap := nearNumber
	if c.lasting(m) {
		text.Height, text.Bold = dimHeight, true
		gap = pegR + 1.2
	}
	var list []candidate
	for _, d := range []float64{0, 0.8, 1.8, 3.2, 5, 7, 9, 11.5, 14, 17, 20, 24, 28, 33, 38} {
		if d > longest {
			break
		}
		for _, a := range turns {
			way := numberCandidate(sheet.LayerNumbers, text, p, out.Turn(a), gap+d, 0.4*d+1.6*abs(a))
			if inside || !c.inPool(middleOf(way.rooms[0].bounds())) {
				list = append(list, way)
			}
		}
	}
	return list
}

// numberSide is the direction out of the pool at a mark and how far it may be turned: any way
// for marks that lie away from every outline. Only a mark in the middle of the pool has its name there.
func (c *canvas) numberSide(p plane.Point) (out plane.Point, turns []float64, inside bool) {
	turns = []float64{0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9, 1.2, -1.2, 1.4, -1.4}
	i, seg, t, foot := c.nearest(p)
	if i < 0 {
		return plane.Point{Y: 1}, round(), true
	}
	o := c.paper[i]
	if foot.Dist(p) < 3 {
		return c.corner(o, seg, t), turns, false
	}
	return p.Sub(foot).Unit(), round(), c.inPool(p)
}

// corner is the outward direction at a place of an outline; near a joint the mean of both sides.
func (c *canvas) corner(o outline, seg int, t float64) plane.Point {
	here := o.outward(seg, t)
	n := len(o.path.Segs)
	l := o.path.Segs[seg].Length()
	switch {
	case t*l < 1 && (seg > 0 || o.line.Closed):
		here = here.Add(o.outward((seg+n-1)%n, 1))
	case (1-t)*l < 1 && (seg+1 < n || o.line.Closed):
		here = here.Add(o.outward((seg+1)%n, 0))
	}
	if here.Len() < 1e-6 {
		return o.outward(seg, t)
	}
	return here.Unit()
}

// round are turns all about, straight on first.
func round() []float64 {
	out := []float64{0}
	for k := 1; k <= 7; k++ {
		out = append(out, float64(k)*math.Pi/8, -float64(k)*math.Pi/8)
	}
	return append(out, math.Pi)
}

// numberCandidate sets a name d from its mark in a direction; from leadNumber on a hairline leads
// back to the mark.
func numberCandidate(layer sheet.Layer, text sheet.Text, p, dir plane.Point, d, cost float64) candidate {
	w := sheet.Width(text.S, text.Height, text.Bold)
	text.At = p.Add(dir.Mul(d + reach(dir, w/2, tallHalf*text.Height)))
	cand := candidate{cost: cost, rooms: []room{roomOf(text, 0.35)}}
	lead := line{p.Add(dir.Mul(1.1)), p.Add(dir.Mul(d - 0.5)), true}
	led := d > leadNumber && !text.Bold || d > leadNumber+pegR
	if led {
		cand.lines = []line{lead}
		cand.cost++
	}
	cand.draw = func() []sheet.Item {
		items := []sheet.Item{{Layer: layer, Shape: text}}
		if led {
			items = append(items, sheet.Item{Layer: layer, Pen: sheet.PenHair, Shape: sheet.Line(lead.a, lead.b)})
		}
		return items
	}
	return cand
}
