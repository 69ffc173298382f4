package mesh

import "brimline/plane"

// grow puts vertex p into a Delaunay triangulation and keeps it one (C. L. Lawson, "Software for
// C1 Surface Interpolation", Mathematical Software III, 1977: split, then flip the edges around
// the new vertex until every circle is empty). A vertex on the place of another is not put in;
// the other is returned, otherwise 0.
func (f *fabric) grow(p int32) int32 {
	t := f.walk(f.last, f.pts[p])
	if same := f.sameAs(t, f.pts[p]); same != outer {
		return same
	}
	f.split(t, p)
	f.legalize(t)
	f.settle(t)
	return 0
}

// legalize goes once around the new vertex, corner 0 of cell first, and flips every edge opposite
// to it whose cell beyond has the vertex inside its circle.
func (f *fabric) legalize(first int32) {
	at := f.pts[f.cells[first].v[0]]
	for t := first; ; {
		code := f.cells[t].n[0]
		if f.conflict(code>>2, code&3, at) {
			f.flip(t)
			continue
		}
		if t = f.cells[t].n[1] >> 2; t == first {
			return
		}
	}
}

// conflict says that a point lies inside the circle of cell t; corner j only says where to begin.
// The circle of a cell outside is the half plane beyond its edge, with the edge's inside itself.
func (f *fabric) conflict(t, j int32, p plane.Point) bool {
	c := &f.cells[t]
	j1, j2 := following(j)
	x, y, z := c.v[j&3], c.v[j1&3], c.v[j2&3]
	switch {
	case x == outer:
		return f.beyond(y, z, p)
	case y == outer:
		return f.beyond(z, x, p)
	case z == outer:
		return f.beyond(x, y, p)
	}
	return insideCircle(f.pts[x], f.pts[y], f.pts[z], p)
}

// beyond says that p is to the left of a→b, an edge of the outside, or on it between its ends.
func (f *fabric) beyond(a, b int32, p plane.Point) bool {
	pa, pb := f.pts[a], f.pts[b]
	if s := Orient(pa, pb, p); s != 0 {
		return s > 0
	}
	return before(pa, p) == before(p, pb)
}

// settle makes a cell around the new vertex that is not outside the start of the next walk.
func (f *fabric) settle(t int32) {
	for f.cells[t].outside() {
		t = f.cells[t].n[1] >> 2
	}
	f.last = t
}

// walk goes from cell t, which is not outside, across edges that have p on their far side, to the
// cell that holds p, within or on its edges; to a cell outside where p is beyond the hull. In a
// Delaunay triangulation it comes to an end.
func (f *fabric) walk(t int32, p plane.Point) int32 {
	c := &f.cells[t]
	came := int32(-1)
	for {
		a, b, d := f.pts[c.v[0]], f.pts[c.v[1]], f.pts[c.v[2]]
		var code int32
		switch {
		case came != 0 && Orient(b, d, p) < 0:
			code = c.n[0]
		case came != 1 && Orient(d, a, p) < 0:
			code = c.n[1]
		case came != 2 && Orient(a, b, p) < 0:
			code = c.n[2]
		default:
			return t
		}
		t, came = code>>2, code&3
		if c = &f.cells[t]; c.outside() {
			return t
		}
	}
}

// sameAs is the corner of cell t that lies exactly at p, outer if none does.
func (f *fabric) sameAs(t int32, p plane.Point) int32 {
	for _, v := range f.cells[t].v[:3] {
		if v != outer && f.pts[v] == p {
			return v
		}
	}
	return outer
}
