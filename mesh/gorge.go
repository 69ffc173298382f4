package mesh

// gorge is what a new edge crosses: the cells from its start to the vertex it reaches, and the two
// banks, each a chain of vertices with the ways across the edges between them.
type gorge struct {
	cells       []int32
	left, right bank
	end         int32 // the vertex reached
	blocked     int32 // the code of a constraint in the way, −1 for none; then the rest means nothing
}

type bank struct{ verts, ways []int32 }

func (b *bank) step(v, way int32) {
	b.verts = append(b.verts, v)
	b.ways = append(b.ways, way)
}

// march follows the straight from u to v out of cell t, whose corner i is u, to the first vertex on it.
func (f *fabric) march(u, v, t, i int32) gorge {
	j, k := following(i)
	c := &f.cells[t]
	g := gorge{cells: []int32{t}, blocked: -1}
	g.right.step(c.v[j&3], c.n[k&3])
	g.left.step(c.v[k&3], c.n[j&3])
	code := c.n[i&3]
	for {
		if f.fixed(code>>2, code&3) {
			g.blocked = code
			return g
		}
		t, i = code>>2, code&3
		c = &f.cells[t]
		j, k = following(i)
		d := c.v[i&3]
		g.cells = append(g.cells, t)
		// Seen from here the edge crossed runs from the left bank, corner j, to the right, corner k.
		side := 0.0
		if d != v {
			side = Orient(f.pts[u], f.pts[v], f.pts[d])
		}
		switch {
		case side > 0:
			g.left.step(d, c.n[k&3])
			code = c.n[j&3]
		case side < 0:
			g.right.step(d, c.n[j&3])
			code = c.n[k&3]
		default:
			g.left.step(d, c.n[k&3])
			g.right.step(d, c.n[j&3])
			g.end = d
			return g
		}
	}
}
