package mesh

// sew makes every piece an edge of the fabric, splitting it where it runs through a vertex or
// crosses another piece.
func (s *sewing) sew() {
	if len(s.todo) == 0 {
		return
	}
	s.at = make([]int32, len(s.pts))
	for t := range s.cells {
		s.note(int32(t))
	}
	for i, j := 0, len(s.todo)-1; i < j; i, j = i+1, j-1 { // the first given comes first off the end
		s.todo[i], s.todo[j] = s.todo[j], s.todo[i]
	}
	for len(s.todo) > 0 {
		p := s.todo[len(s.todo)-1]
		s.todo = s.todo[:len(s.todo)-1]
		s.sewPiece(p)
	}
}

// note makes the cell the one to start from at each of its corners.
func (f *fabric) note(t int32) {
	for _, v := range f.cells[t].v[:3] {
		f.at[v] = t
	}
}

// sewPiece puts in the first part of a piece, up to the next vertex on it, and leaves the rest to do.
func (s *sewing) sewPiece(p piece) {
	if p.a == p.b {
		return
	}
	t, i, hit := s.leave(p.a, p.b)
	if hit != outer {
		s.reach(p, hit)
		s.fix(t, i)
		return
	}
	g := s.march(p.a, p.b, t, i)
	if g.blocked >= 0 {
		s.cross(p, g.blocked)
		return
	}
	s.reach(p, g.end)
	s.refill(g, p.a)
}

// reach notes that the piece runs along the edge to vertex end, and what remains of it.
func (s *sewing) reach(p piece, end int32) {
	s.uses.add(piece{p.a, end, p.line})
	if end == p.b {
		return
	}
	s.through(p, end)
	s.todo = append(s.todo, piece{end, p.b, p.line})
}

// through names the point that an edge runs through.
func (s *sewing) through(p piece, v int32) {
	l := s.lines[p.line]
	at := s.points[s.index[v]]
	s.issues = append(s.issues, Issue{
		Kind: Through, Points: []int{int(s.index[v])}, Edges: [][2]int{l.edge()},
		At: at.Plan(), Gap: at.Z - s.heightOn(p, v),
	})
}

// heightOn is the height on the piece at the foot of vertex v.
func (s *sewing) heightOn(p piece, v int32) float64 {
	a, b := s.pts[p.a], s.pts[p.b]
	d := b.Sub(a)
	share := s.pts[v].Sub(a).Dot(d) / d.Dot(d)
	return s.points[s.index[p.a]].Z*(1-share) + s.points[s.index[p.b]].Z*share
}

// leave finds the way from vertex u towards v: the vertex hit where an edge leads straight there
// or to one on the way, with the cell and the corner opposite that edge; else hit is outer and
// the edge opposite corner i of cell t, u itself, is the first to be crossed.
func (f *fabric) leave(u, v int32) (t, i, hit int32) {
	pu, pv := f.pts[u], f.pts[v]
	t = f.at[u]
	for range f.cells {
		c := &f.cells[t]
		i = c.corner(u)
		j, k := following(i)
		a, b := c.v[j&3], c.v[k&3]
		if a == v || a != outer && f.ahead(u, v, a) {
			return t, k, a
		}
		if a != outer && b != outer && Orient(pu, pv, f.pts[a]) < 0 && Orient(pu, pv, f.pts[b]) > 0 {
			return t, i, outer
		}
		t = c.n[j&3] >> 2
	}
	panic("mesh: no way from a vertex to another") // every direction lies in some cell around u
}

// ahead says that w lies on the ray from u to v: on its line exactly, and on v's side of u.
func (f *fabric) ahead(u, v, w int32) bool {
	pu, pv, pw := f.pts[u], f.pts[v], f.pts[w]
	return Orient(pu, pv, pw) == 0 && before(pu, pv) == before(pu, pw)
}

// fix makes the edge opposite corner i of cell t a constraint, on both sides.
func (f *fabric) fix(t, i int32) {
	c := &f.cells[t]
	code := c.n[i&3]
	c.v[3] |= 1 << i
	f.cells[code>>2].v[3] |= 1 << (code & 3)
}

// free makes it none.
func (f *fabric) free(t, i int32) {
	c := &f.cells[t]
	code := c.n[i&3]
	c.v[3] &^= 1 << i
	f.cells[code>>2].v[3] &^= 1 << (code & 3)
}

func (f *fabric) fixed(t, i int32) bool { return f.cells[t].v[3]>>i&1 != 0 }
