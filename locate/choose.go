package locate

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// group is a set of waiting marks that readings bind together: when one takes its other place,
// all do. at[k] is the place in use of marks[k] (0 or 1).
type group struct {
	marks  []int
	at     []int
	locked bool // a `side` entry decides it
	open   bool // nothing read decides it
	first  int  // order along the lines
}

// choose settles marks that wait between two places and that no reading decides: first on the
// side of the rest of their line, then wherever the line turns least and does not cross itself.
// The figure as a whole keeps its hand. False when nothing waits.
func (g *growth) choose() bool {
	gs := g.groups()
	if len(gs) == 0 {
		return false
	}
	c := &chooser{g: g, groups: gs, where: make([]plane.Point, len(g.pos)), known: append([]bool(nil), g.placed...)}
	copy(c.where, g.pos)
	c.begin()
	if c.crossings() > 0 {
		c.improve(true, aLittle)
	} else {
		c.improve(false, muchLess)
	}
	for i := range gs {
		for k, m := range gs[i].marks {
			w := g.waiting[m]
			g.other[m] = []plane.Point{w.places[1-gs[i].at[k]].p}
			g.chosen[m] = true
			g.mirror[m] = w.places[0].pair
			g.place(m, w.places[gs[i].at[k]].p)
		}
		g.kept = append(g.kept, gs[i])
	}
	return true
}

// groups collects the waiting marks with two places, bound by ties among them.
func (g *growth) groups() []group {
	n := len(g.pos)
	parent, flip := make([]int, n), make([]int, n)
	for m := range parent {
		parent[m] = m
	}
	find := func(m int) (int, int) {
		f := 0
		for parent[m] != m {
			f ^= flip[m]
			m = parent[m]
		}
		return m, f
	}
	waits := func(m int) bool { return !g.placed[m] && g.waiting[m] != nil && len(g.waiting[m].places) >= 2 }
	for i := range g.n.Obs {
		o := &g.n.Obs[i]
		if _, ok := o.Kind.(network.Tie); !ok || !o.Use || !waits(o.Marks[0]) || !waits(o.Marks[1]) {
			continue
		}
		differ, lead := g.parity(o)
		if lead <= certainBy {
			continue
		}
		ra, fa := find(o.Marks[0])
		rb, fb := find(o.Marks[1])
		if ra != rb {
			parent[rb], flip[rb] = ra, fa^fb^differ
		}
	}
	at := map[int]int{}
	var out []group
	for m := range n {
		if !waits(m) {
			continue
		}
		r, f := find(m)
		k, ok := at[r]
		if !ok {
			k = len(out)
			at[r] = k
			out = append(out, group{open: true, first: math.MaxInt})
		}
		out[k].marks = append(out[k].marks, m)
		out[k].at = append(out[k].at, f)
	}
	return out
}

// parity asks a tie between two waiting marks whether they take places of the same number (0) or
// of different ones (1), and by how much it prefers that.
func (g *growth) parity(o *network.Obs) (differ int, lead float64) {
	a, b := g.waiting[o.Marks[0]].places, g.waiting[o.Marks[1]].places
	var e [2]float64
	for d := range e {
		e[d] = math.Inf(1)
		for k := range 2 {
			u := misread(o, a[k].p.Dist(b[k^d].p), 1.5*widened(o.SD[0]))
			e[d] = math.Min(e[d], math.Min(u*u, 2*capAt))
		}
	}
	if e[0] <= e[1] {
		return 0, e[1] - e[0]
	}
	return 1, e[0] - e[1]
}

// chooser minimises the bend of the lines over the places of the groups.
type chooser struct {
	g      *growth
	groups []group
	where  []plane.Point
	known  []bool
}

// begin puts every group on the side of its line's placed marks, or where a `side` entry says,
// and sorts the groups along the lines.
func (c *chooser) begin() {
	hand := 1
	if !c.g.pinned {
		hand = c.g.votes() // nought: not known, the figure may still be turned over as a whole
	}
	for i := range c.groups {
		c.startGroup(i, &hand)
	}
	c.sortAlong()
}

// startGroup puts one group on its side. hand says whether `side` entries hold as they stand
// (positive), turned over (negative), or whether the first group to meet one shall tell.
func (c *chooser) startGroup(i int, hand *int) {
	gr := &c.groups[i]
	vote, said := 0.0, 0
	for k, m := range gr.marks {
		w := c.g.waiting[m]
		here, there := w.places[gr.at[k]].p, w.places[1-gr.at[k]].p
		if s, ok := c.g.said(m); ok {
			a, b := c.g.pos[s.A], c.g.pos[s.B]
			if (b.Sub(a).Cross(here.Sub(a)) > 0) == s.Left {
				said++
			} else {
				said--
			}
		}
		if q, ok := c.middleOf(m); ok {
			vote += q.Dist(there) - q.Dist(here)
		}
	}
	if said != 0 && *hand != 0 {
		gr.locked = true
		vote = float64(said * *hand)
	}
	if vote < 0 {
		c.flip(i)
		said = -said
	}
	if said != 0 && *hand == 0 {
		*hand = said
	}
	c.set(i)
}

// sortAlong orders the groups as their first marks stand along the lines.
func (c *chooser) sortAlong() {
	order := 0
	for _, p := range c.g.n.Paths {
		for _, m := range p.Marks {
			order++
			for i := range c.groups {
				for _, q := range c.groups[i].marks {
					if q == m {
						c.groups[i].first = min(c.groups[i].first, order)
					}
				}
			}
		}
	}
	for i := 1; i < len(c.groups); i++ {
		for j := i; j > 0 && c.groups[j-1].first > c.groups[j].first; j-- {
			c.groups[j-1], c.groups[j] = c.groups[j], c.groups[j-1]
		}
	}
}

// middleOf is the middle of the placed marks on the mark's line, else of all placed marks off
// the base.
func (c *chooser) middleOf(m int) (plane.Point, bool) {
	var sum plane.Point
	n := 0.0
	take := func(q int) {
		if c.g.placed[q] && !c.g.n.Pegs[q] {
			sum, n = sum.Add(c.g.pos[q]), n+1
		}
	}
	for _, p := range c.g.n.Paths {
		if onPath(p, m) {
			for _, q := range p.Marks {
				take(q)
			}
		}
	}
	if n == 0 {
		for q := range c.g.pos {
			take(q)
		}
	}
	if n == 0 {
		return sum, false
	}
	return sum.Mul(1 / n), true
}

func (c *chooser) flip(i int) {
	for k := range c.groups[i].at {
		c.groups[i].at[k] ^= 1
	}
}

func (c *chooser) set(i int) {
	for k, m := range c.groups[i].marks {
		c.where[m] = c.g.waiting[m].places[c.groups[i].at[k]].p
		c.known[m] = true
	}
}

// How much less bend (radians of turning) makes marks change sides: a little where the line
// crosses itself, much where it does not, since a waist may well bend. Common practice, no source.
const (
	aLittle  = 0.7
	muchLess = 2.5
)

// improve flips stretches of groups while that lowers the bend by more than clearly.
func (c *chooser) improve(crossing bool, clearly float64) {
	longest := len(c.groups)
	if longest > 250 {
		longest = 3
	}
	now := c.bend(crossing)
	for range 2 * len(c.groups) {
		bi, bj, best := -1, -1, now-clearly
		for i := range c.groups {
			k := i
			for ; k < len(c.groups) && k-i < longest; k++ {
				if !c.groups[k].locked {
					c.flip(k)
					c.set(k)
				}
				if e := c.bend(crossing); e < best {
					bi, bj, best = i, k, e
				}
			}
			c.flipRange(i, k-1)
		}
		if bi < 0 {
			return
		}
		c.flipRange(bi, bj)
		now = best
	}
}

func (c *chooser) flipRange(i, j int) {
	for k := i; k <= j; k++ {
		if !c.groups[k].locked {
			c.flip(k)
			c.set(k)
		}
	}
}

// bend is the total turning of all lines, their length against the figure's size, what ties
// between waiting marks say, and three radians for each crossing when asked.
func (c *chooser) bend(crossing bool) float64 {
	sum := 0.0
	for _, p := range c.g.n.Paths {
		sum += c.turning(p)
	}
	for i := range c.g.n.Obs {
		o := &c.g.n.Obs[i]
		if _, ok := o.Kind.(network.Tie); !ok || !o.Use || !c.known[o.Marks[0]] || !c.known[o.Marks[1]] {
			continue
		}
		if c.g.placed[o.Marks[0]] && c.g.placed[o.Marks[1]] {
			continue
		}
		u := misread(o, c.where[o.Marks[0]].Dist(c.where[o.Marks[1]]), 1.5*widened(o.SD[0]))
		sum += 0.3 * math.Min(u*u, capAt)
	}
	if crossing {
		sum += 3 * float64(c.crossings())
	}
	return sum
}

func (c *chooser) turning(p network.Path) float64 {
	at := c.track(p)
	n := len(at)
	if n < 3 {
		return 0
	}
	length, lo, hi := 0.0, at[0], at[0]
	sum := 0.0
	last := n - 2
	if p.Closed {
		last = n
	}
	for i := range n {
		length += at[i].Dist(at[(i+1)%n])
		lo = plane.Point{X: math.Min(lo.X, at[i].X), Y: math.Min(lo.Y, at[i].Y)}
		hi = plane.Point{X: math.Max(hi.X, at[i].X), Y: math.Max(hi.Y, at[i].Y)}
	}
	for i := range last {
		u, v := at[(i+1)%n].Sub(at[i]), at[(i+2)%n].Sub(at[(i+1)%n])
		sum += math.Abs(math.Atan2(u.Cross(v), u.Dot(v)))
	}
	return sum + 0.5*length/math.Max(1, c.size())
}

// size is a length of the figure that flips do not change: the spread of placed marks.
func (c *chooser) size() float64 {
	s := 0.0
	var a plane.Point
	first := true
	for m, ok := range c.g.placed {
		if ok {
			if first {
				a, first = c.g.pos[m], false
			}
			s = math.Max(s, a.Dist(c.g.pos[m]))
		}
	}
	return s
}

func (c *chooser) track(p network.Path) []plane.Point {
	var at []plane.Point
	for _, m := range p.Marks {
		if c.known[m] && (len(at) == 0 || at[len(at)-1].Dist(c.where[m]) > 0.02) {
			at = append(at, c.where[m])
		}
	}
	return at
}

// crossings counts pairs of stretches that cross within each line.
func (c *chooser) crossings() int {
	count := 0
	for _, p := range c.g.n.Paths {
		at := c.track(p)
		n := len(at)
		m := n - 1
		if p.Closed {
			m = n
		}
		for i := range m {
			for j := i + 2; j < m; j++ {
				if (j+1)%n != i && meet(at[i], at[(i+1)%n], at[j], at[(j+1)%n]) {
					count++
				}
			}
		}
	}
	return count
}

func meet(a, b, c, d plane.Point) bool {
	u, v := b.Sub(a), d.Sub(c)
	return u.Cross(c.Sub(a))*u.Cross(d.Sub(a)) < 0 && v.Cross(a.Sub(c))*v.Cross(b.Sub(c)) < 0
}
