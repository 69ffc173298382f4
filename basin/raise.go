package basin

import (
	"math"
	"slices"
)

// raise builds the shell.
func (b *Basin) raise() {
	b.layFloor(b.floor, b.class, b.solids)
	downs := b.downs()
	for i := range b.nodes {
		b.wall(i, (i+1)%len(b.nodes), downs)
	}
	if len(b.bays) > 0 {
		b.layBays()
	}
}

// stands are vertices of the shell by point of a ground and by what stands there, −1 the floor.
type stands map[[2]int]int

// layFloor adds floor, tops and fronts. A class of −2 is left out.
func (b *Basin) layFloor(g *ground, class []int, solids []solid) {
	at := stands{}
	for t, v := range g.Triangles {
		if class[t] < -1 {
			continue
		}
		part := Floor
		if class[t] >= 0 {
			part = solids[class[t]].part
		}
		b.shell.face(b.stand3(at, g, v[0], class[t], solids), b.stand3(at, g, v[1], class[t], solids), b.stand3(at, g, v[2], class[t], solids), part)
		for i := range v {
			u := g.Beside[t][i]
			if class[t] < 0 || u < 0 || class[u] < -1 || class[u] == class[t] {
				continue
			}
			p, q := v[(i+1)%3], v[(i+2)%3]
			low := [2]int{b.stand3(at, g, p, class[u], solids), b.stand3(at, g, q, class[u], solids)}
			high := [2]int{b.stand3(at, g, p, class[t], solids), b.stand3(at, g, q, class[t], solids)}
			if b.shell.vertices[low[0]].p[2]+b.shell.vertices[low[1]].p[2] < b.shell.vertices[high[0]].p[2]+b.shell.vertices[high[1]].p[2] {
				b.shell.quad(low[0], low[1], high[1], high[0], part)
			}
		}
	}
}

// stand3 is the vertex at a point of a ground, on the floor or on a solid.
func (b *Basin) stand3(at stands, g *ground, point int32, class int, solids []solid) int {
	key := [2]int{int(point), class}
	if v, ok := at[key]; ok {
		return v
	}
	f := g.forms[point]
	if class >= 0 {
		f = solids[class].top
	}
	p := g.Points[point]
	v := vertex{p: vec{p.X, p.Y, b.value(f)}, z: f, node: -1}
	if k := b.nodeOf(g, point); k >= 0 {
		n := &b.nodes[k]
		v.node, v.down, v.foot = k, b.value(n.rim)-b.value(n.low), true
	}
	at[key] = b.shell.vertex(v)
	return at[key]
}

// nodeOf is the node with which a point of a ground moves: its foot or its toe; −1 for none.
func (b *Basin) nodeOf(g *ground, point int32) int {
	if int(point) < len(b.nodes) && (g == b.base || g == b.floor) {
		return int(point)
	}
	if g != b.floor || g == b.base {
		return -1
	}
	k := len(b.base.Points) // toes follow, in the order of the nodes that have one
	for i := range b.nodes {
		if b.nodes[i].cove > 0 {
			if k == int(point) {
				return i
			}
			k++
		}
	}
	return -1
}

// downs are the depths below the rim at which a wall may bend.
func (b *Basin) downs() []float64 {
	var out []float64
	for _, o := range b.outs {
		if o.Down > 0 {
			out = append(out, o.Down)
		}
	}
	slices.Sort(out)
	return slices.CompactFunc(out, func(p, q float64) bool { return q-p < 1e-3 })
}

// wall adds the wall between two nodes, from the cove or the floor, or what stands there, to its
// top, and the cove.
func (b *Basin) wall(i, j int, downs []float64) {
	n, m := &b.nodes[i], &b.nodes[j]
	length := b.ahead(n.s, m.s)
	middle := b.wrap(n.s + length/2)
	class := b.covering(b.beside(middle), (b.value(n.low)+b.value(m.low))/2)
	a := b.column(i, b.top(middle, n), class, downs)
	c := b.column(j, b.top(middle, m), class, downs)
	for k := 1; k < len(a); k++ { // downward
		b.shell.quad(a[k], a[k-1], c[k-1], c[k], Walls)
	}
	if class < 0 && (n.cove > 0 || m.cove > 0) {
		b.cove(i, j)
	}
}

// column are the vertices of the wall at a node, from the top down.
func (b *Basin) column(i int, top form, class int, downs []float64) []int {
	n := &b.nodes[i]
	rim, bottom := b.value(n.rim), n.low.up(n.cove)
	if class >= 0 {
		bottom = b.solids[class].top
	}
	low, high := b.value(bottom), b.value(top)
	if high < low {
		top, high = bottom, low
	}
	out := []int{b.hang(i, top, rim-high)}
	for _, d := range downs {
		switch z := rim - d; {
		case z >= high:
			out = append(out, out[0])
		case z <= low:
			out = append(out, -1)
		default:
			out = append(out, b.hang(i, n.rim.up(-d), d))
		}
	}
	bottomMost := b.shell.vertex(vertex{p: vec{n.foot.X, n.foot.Y, low}, z: bottom, node: i, down: rim - b.value(n.low), foot: true})
	for k := range out {
		if out[k] < 0 {
			out[k] = bottomMost
		}
	}
	return append(out, bottomMost)
}

// hang is a vertex of the wall at a node, so far below the rim.
func (b *Basin) hang(i int, z form, down float64) int {
	n := &b.nodes[i]
	u, _ := b.lean(n.s, math.Max(0, down))
	at := n.at.Add(n.out.Mul(u))
	return b.shell.vertex(vertex{p: vec{at.X, at.Y, b.value(z)}, z: z, node: i, down: math.Max(0, down)})
}
