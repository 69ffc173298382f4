package mesh

import "brimline/plane"

// put makes a vertex at m, found from a cell near it, and keeps every circle empty that no
// constraint shields. Where a vertex is already there it is returned; where m lies on a constraint that
// one is freed and its pieces are returned, to be split at the vertex.
func (s *sewing) put(m plane.Point, near int32) (v int32, broken []piece) {
	t := s.find(m, near)
	if v = s.sameAs(t, m); v != outer {
		return v, nil
	}
	v = int32(len(s.pts))
	s.pts, s.at = append(s.pts, m), append(s.at, 0)
	if i := s.onFixed(t, m); i >= 0 {
		j, k := following(i)
		broken = s.uses.take(s.cells[t].v[j&3], s.cells[t].v[k&3])
		s.free(t, i)
	}
	k := int32(len(s.cells))
	s.split(t, v)
	for _, c := range [3]int32{t, k, k + 1} {
		s.inherit(c)
	}
	s.legalizeFree(t)
	return v, broken
}

// onFixed is the corner opposite the constraint that m lies on exactly, −1 for none.
func (s *sewing) onFixed(t int32, m plane.Point) int32 {
	c := s.cells[t]
	for i := range int32(3) {
		j, k := following(i)
		a, b := c.v[j&3], c.v[k&3]
		if s.fixed(t, i) && Orient(s.pts[a], s.pts[b], m) == 0 {
			return i
		}
	}
	return -1
}

// inherit takes from its neighbours which edges of a cell are constraints.
func (f *fabric) inherit(t int32) {
	c := &f.cells[t]
	c.v[3] = 0
	for i := range int32(3) {
		if code := c.n[i&3]; f.fixed(code>>2, code&3) {
			c.v[3] |= 1 << i
		}
	}
}

// legalizeFree is legalize, which leaves constraints alone.
func (f *fabric) legalizeFree(first int32) {
	at := f.pts[f.cells[first].v[0]]
	for t := first; ; {
		code := f.cells[t].n[0]
		if !f.fixed(t, 0) && f.conflict(code>>2, code&3, at) {
			f.flipFree(t)
			continue
		}
		f.note(t)
		if t = f.cells[t].n[1] >> 2; t == first {
			return
		}
	}
}

// find is walk in a triangulation with constraints, where a walk could go in circles: then, and
// from outside, it looks at every cell.
func (f *fabric) find(p plane.Point, near int32) int32 {
	if f.cells[near].outside() {
		near = f.cells[near].n[f.cells[near].corner(outer)] >> 2
	}
	t := near
	for range len(f.cells) {
		next := f.towards(t, p)
		if next == t || f.cells[next].outside() {
			return next
		}
		t = next
	}
	return f.scan(p)
}

// scan looks at every cell for the one that holds p, which lies within the hull.
func (f *fabric) scan(p plane.Point) int32 {
	for t := range f.cells {
		if !f.cells[t].outside() && f.towards(int32(t), p) == int32(t) {
			return int32(t)
		}
	}
	panic("mesh: a place in no cell") // the cells and the outside cover the plane
}

// towards is the cell across the first edge of t that has p beyond it, t itself if none.
func (f *fabric) towards(t int32, p plane.Point) int32 {
	c := &f.cells[t]
	for i := range int32(3) {
		j, k := following(i)
		if Orient(f.pts[c.v[j&3]], f.pts[c.v[k&3]], p) < 0 {
			return c.n[i&3] >> 2
		}
	}
	return t
}

// relax flips the edge behind the code, and those around it in turn, until every circle is empty
// that no constraint shields (Lawson 1977).
func (f *fabric) relax(code int32) {
	for stack := []int32{code}; len(stack) > 0; {
		code, stack = stack[len(stack)-1], stack[:len(stack)-1]
		t, i := code>>2, code&3
		o := f.cells[t].n[i]
		if f.fixed(t, i) || f.cells[t].outside() || f.cells[o>>2].outside() {
			continue // edges of the hull and beyond it are as they must be
		}
		if !f.conflict(o>>2, o&3, f.pts[f.cells[t].v[i]]) {
			continue
		}
		f.rotate(t, i)
		f.flipFree(t)
		o >>= 2
		f.note(t)
		f.note(o)
		stack = append(stack, way(t, 0), way(t, 2), way(o, 0), way(o, 1))
	}
}

// flipFree is flip, which keeps account of the constraints around.
func (f *fabric) flipFree(t int32) {
	o := f.cells[t].n[0] >> 2
	f.flip(t)
	f.cells[t].v[3], f.cells[o].v[3] = 0, 0
	f.inherit(t)
	f.inherit(o)
}

// rotate makes corner i of cell t its corner 0.
func (f *fabric) rotate(t, i int32) {
	old := f.cells[t]
	c := &f.cells[t]
	for k := range int32(3) {
		from := (k + i) % 3
		c.v[k], c.n[k] = old.v[from], old.n[from]
		f.link(c.n[k], way(t, k))
	}
	f.inherit(t)
}
