package outline

import (
	"cmp"
	"math"
	"slices"
)

// link leads from one piece to one that may follow it; rival is how much dearer the next way of
// joining them is, which is other.
type link struct {
	to    int
	how   joint
	other joint
	rival float64
}

// tie is the difference of scores below which the description found first stands: far above what
// coordinates that differ by rounding make of a score.
const tie = 1e-4

// graph is the trail's pieces with what may follow what.
type graph struct {
	t     *trail
	c     prices
	piece []primitive
	cost  []float64
	next  [][]link
	first []int // number of the first piece that begins at a mark
}

func newGraph(t *trail) *graph {
	g := &graph{t: t, c: t.prices(), piece: t.pieces()}
	g.first = make([]int, len(t.at)+1)
	for i := range g.first {
		g.first[i], _ = slices.BinarySearchFunc(g.piece, i, func(p primitive, m int) int { return cmp.Compare(p.from, m) })
	}
	for i := range g.piece {
		g.cost = append(g.cost, g.price(&g.piece[i]))
	}
	for i := range g.piece {
		g.next = append(g.next, g.links(i))
	}
	return g
}

func (g *graph) price(p *primitive) float64 {
	switch p.kind {
	case "straight":
		return g.c.straight + p.chi
	case "arc":
		return g.c.arc + g.t.uneven(p.from, p.to) + p.chi
	}
	return g.c.curveMark + g.t.rough(p.from) + g.t.steep(p.from)
}

// links joins a piece to all that may follow it.
func (g *graph) links(i int) []link {
	p := &g.piece[i]
	var out []link
	for skip := range 2 + mostFilled {
		start := p.to + skip
		if !g.t.ring && start >= len(g.t.at)-1 || skip > 1 && p.kind != "straight" {
			break
		}
		m := g.t.index(start)
		for j := g.first[m]; j < g.first[m+1]; j++ {
			q := &g.piece[j]
			if q.to-q.from+p.to-p.from+max(0, skip-1) > g.t.longest() {
				continue
			}
			if skip > 1 {
				if f := g.t.fillet(p, q, g.c); len(f) > 0 {
					out = append(out, link{to: j, how: f[0], rival: math.Inf(1)})
				}
			} else if l, ok := g.best(p, q, j); ok {
				out = append(out, l)
			}
		}
	}
	return out
}

// best is the cheapest way of joining two pieces, with the next.
func (g *graph) best(p, q *primitive, j int) (link, bool) {
	ways := g.t.meet(p, q, g.c)
	if len(ways) == 0 {
		return link{}, false
	}
	if q.kind == "curve" && p.kind != "curve" {
		for i := range ways {
			ways[i].cost += g.c.curve
		}
	}
	slices.SortStableFunc(ways, func(a, b joint) int { return cmp.Compare(a.cost, b.cost) })
	l := link{to: j, how: ways[0], rival: math.Inf(1)}
	if len(ways) > 1 {
		l.other, l.rival = ways[1], ways[1].cost-ways[0].cost
	}
	return l, true
}
