package mesh

import "brimline/plane"

// outer is the vertex beyond every edge of the convex hull: the cells that have it as a corner
// stand for the outside, so that every cell has three neighbours. Real vertices count from 1.
const outer = 0

// cell is one triangle. v[:3] are its corners counter-clockwise; n[i] is the way across the edge
// opposite corner i, the one from v[i+1] to v[i+2]: the neighbour's number times four plus its
// corner opposite the same edge. v[3] holds a bit for each edge that is a constraint, n[3] a
// mark for the walk that is under way. Thirty-two bytes, so that a cell never straddles two lines of cache.
type cell struct{ v, n [4]int32 }

// fabric is a triangulation while it is made.
type fabric struct {
	pts   []plane.Point // of the vertices; pts[outer] is no place
	cells []cell
	last  int32 // where the next walk starts: a cell with no outer corner
	at    []int32
	uses  useTable
}

// turned are the corners of a cell by number: turned[i] and turned[i+1] follow corner i.
var turned = [4]int32{1, 2, 0, 1}

// following are the corners that follow corner i counter-clockwise.
func following(i int32) (int32, int32) { return turned[i&3], turned[(i+1)&3] }

// way is the code of the edge opposite corner i of a cell.
func way(cell, i int32) int32 { return cell<<2 | i }

// start makes the first triangle of the vertices 1, 2, 3, which must turn counter-clockwise,
// and the outside around it.
func (f *fabric) start() {
	f.cells = append(f.cells[:0],
		cell{v: [4]int32{1, 2, 3}, n: [4]int32{way(1, 0), way(2, 0), way(3, 0)}},
		cell{v: [4]int32{outer, 3, 2}, n: [4]int32{way(0, 0), way(3, 2), way(2, 1)}},
		cell{v: [4]int32{outer, 1, 3}, n: [4]int32{way(0, 1), way(1, 2), way(3, 1)}},
		cell{v: [4]int32{outer, 2, 1}, n: [4]int32{way(0, 2), way(2, 2), way(1, 1)}},
	)
	f.last = 0
}

// outside says that a cell has the outer vertex as a corner.
func (c *cell) outside() bool { return c.v[0] == outer || c.v[1] == outer || c.v[2] == outer }

// corner is the place of vertex v in the cell, which has it.
func (c *cell) corner(v int32) int32 {
	switch v {
	case c.v[0]:
		return 0
	case c.v[1]:
		return 1
	}
	return 2
}

// split puts vertex p into cell t and makes three cells of it, each with p as corner 0.
func (f *fabric) split(t, p int32) {
	k := int32(len(f.cells))
	old := f.cells[t]
	a, b, c := old.v[0], old.v[1], old.v[2]
	f.cells = append(f.cells,
		cell{v: [4]int32{p, c, a}, n: [4]int32{old.n[1], way(k+1, 2), way(t, 1)}},
		cell{v: [4]int32{p, a, b}, n: [4]int32{old.n[2], way(t, 2), way(k, 1)}})
	f.cells[t] = cell{v: [4]int32{p, b, c}, n: [4]int32{old.n[0], way(k, 2), way(k+1, 1)}}
	f.link(old.n[0], way(t, 0))
	f.link(old.n[1], way(k, 0))
	f.link(old.n[2], way(k+1, 0))
}

// link tells the cell behind the code from what lies beyond that edge now.
func (f *fabric) link(from, to int32) { f.cells[from>>2].n[from&3] = to }

// flip takes the edge opposite corner 0 of cell t, p say, out of the quadrilateral around it and
// puts in the other diagonal, from p. Both cells have p as corner 0 afterwards; t comes first
// counter-clockwise around p.
func (f *fabric) flip(t int32) {
	cur := &f.cells[t]
	code := cur.n[0]
	o := code >> 2
	opp := &f.cells[o]
	j := code & 3
	j1, j2 := following(j)
	p, b, d := cur.v[0], cur.v[2], opp.v[j]
	low, high, next := opp.n[j1&3], opp.n[j2&3], cur.n[1]
	cur.v[2] = d
	cur.n[0], cur.n[1] = low, way(o, 2)
	opp.v[0], opp.v[1], opp.v[2] = p, d, b
	opp.n[0], opp.n[1], opp.n[2] = high, next, way(t, 1)
	f.link(low, way(t, 0))
	f.link(high, way(o, 0))
	f.link(next, way(o, 1))
}
