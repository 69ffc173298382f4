package mesh

// Codes of an edge that has the gorge on both sides, so that the cells there are not made yet.
const (
	loose      = -1
	looseFixed = -2 // and it is a constraint
)

// refilling is the work of filling a gorge with new cells.
type refilling struct {
	*fabric
	free []int32            // cells to use again
	open map[[2]int32]int32 // loose edges with a cell on one side, by their vertices
}

// refill fills both sides of a gorge from u with Delaunay cells and fixes the edge between them
// (M. V. Anglada, "An improved incremental algorithm for constructing restricted Delaunay
// triangulations", Computers & Graphics 21, 1997).
func (f *fabric) refill(g gorge, u int32) {
	r := refilling{f, g.cells, map[[2]int32]int32{}}
	r.loosen(g.left.ways, g.right.ways)
	right := r.fill(append([]int32{u}, g.right.verts...), g.right.ways)
	left := r.fill(append(reversed(g.left.verts), u), reversed(g.left.ways))
	r.join(right>>2, right&3, left)
	f.fix(right>>2, right&3)
}

// loosen replaces the ways that lead back into the gorge, along an edge that sticks out into it.
func (r *refilling) loosen(banks ...[]int32) {
	for _, t := range r.free {
		r.cells[t].n[3] = loose
	}
	for _, ways := range banks {
		for i, code := range ways {
			switch {
			case r.cells[code>>2].n[3] != loose:
			case r.fixed(code>>2, code&3):
				ways[i] = looseFixed
			default:
				ways[i] = loose
			}
		}
	}
}

func reversed(s []int32) []int32 {
	out := make([]int32, len(s))
	for i, v := range s {
		out[len(s)-1-i] = v
	}
	return out
}

// fill triangulates the polygon along a chain and back from its last vertex to its first; ways[i]
// lies beyond the edge from chain[i] to chain[i+1]. It returns the code of the edge back.
func (r *refilling) fill(chain, ways []int32) int32 {
	m := len(chain) - 1
	if m == 1 {
		return ways[0]
	}
	best := 1
	a, b := r.pts[chain[0]], r.pts[chain[m]]
	for k := 2; k < m; k++ {
		if insideCircle(a, r.pts[chain[best]], b, r.pts[chain[k]]) {
			best = k
		}
	}
	last := len(r.free) - 1
	t := r.free[last]
	r.free = r.free[:last]
	head := r.fill(chain[:best+1], ways[:best])
	tail := r.fill(chain[best:], ways[best:])
	r.cells[t] = cell{v: [4]int32{chain[0], chain[best], chain[m]}}
	r.join(t, 2, head)
	r.join(t, 0, tail)
	r.note(t)
	return way(t, 1)
}

// join puts the edge opposite corner i of cell t and the one behind the code together; what is
// fixed there is fixed here. A loose edge waits for its second cell.
func (r *refilling) join(t, i, code int32) {
	if code < 0 {
		r.joinLoose(t, i, code)
		return
	}
	r.cells[t].n[i&3] = code
	r.link(code, way(t, i))
	if r.fixed(code>>2, code&3) {
		r.cells[t].v[3] |= 1 << i
	}
}

func (r *refilling) joinLoose(t, i, code int32) {
	if code == looseFixed {
		r.cells[t].v[3] |= 1 << i
	}
	j, k := following(i)
	key := edgeKey(r.cells[t].v[j&3], r.cells[t].v[k&3])
	other, met := r.open[key]
	if !met {
		r.open[key] = way(t, i)
		return
	}
	r.cells[t].n[i&3] = other
	r.link(other, way(t, i))
}
