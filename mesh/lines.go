package mesh

// line is one edge as given, between two points by number.
type line struct {
	from, to int32
	role     role
}

// role says what an edge is for: how often ring and holes run along it in its direction. They are
// taken counter-clockwise, so an edge of one that was given clockwise counts −1.
type role struct{ ring, hole int32 }

// piece is a part of a line between two vertices, in the line's direction.
type piece struct{ a, b, line int32 }

// readLines takes the edges of breaks, ring and holes; false when the ring
// given is none.
func (s *sewing) readLines(breaks [][]int, ring []int, holes [][]int) bool {
	for _, b := range breaks {
		for k := 1; k < len(b); k++ {
			s.line(b[k-1], b[k], role{})
		}
	}
	for _, h := range holes {
		if turn := s.ringTurn(h); turn != 0 {
			s.loop(h, role{hole: turn})
		}
	}
	if len(ring) == 0 {
		return true
	}
	turn := s.ringTurn(ring)
	if turn != 0 {
		s.loop(ring, role{ring: turn})
	}
	return turn != 0
}

func (s *sewing) loop(ring []int, r role) {
	for k, to := range ring {
		s.line(ring[(k+len(ring)-1)%len(ring)], to, r)
	}
}

// line notes one edge; the same vertex at both ends is none. An edge given twice, by a break and the
// ring say, is one line.
func (s *sewing) line(from, to int, r role) {
	if !s.usable(from) || !s.usable(to) {
		s.issues = append(s.issues, Issue{Kind: BadEdge, Edges: [][2]int{{from, to}}})
		return
	}
	a, b := s.vertex[from], s.vertex[to]
	if a == b {
		return
	}
	if s.between == nil {
		s.between = map[[2]int32]int32{}
	}
	k, again := s.between[edgeKey(a, b)]
	if !again {
		k = int32(len(s.lines))
		s.between[edgeKey(a, b)] = k
		s.lines = append(s.lines, line{int32(from), int32(to), role{}})
		s.todo = append(s.todo, piece{a, b, k})
	}
	l := &s.lines[k]
	sign := int32(1)
	if s.vertex[l.from] != a {
		sign = -1
	}
	l.role.ring += sign * r.ring
	l.role.hole += sign * r.hole
}

func (s *sewing) usable(i int) bool { return i >= 0 && i < len(s.vertex) && s.vertex[i] != outer }

// ringTurn is 1 for a ring given counter-clockwise, −1 for clockwise; 0, with an issue, for one
// with fewer than three different corners. One that encloses as much on either hand counts as 1.
func (s *sewing) ringTurn(ring []int) int32 {
	var kept []int32
	different := map[int32]bool{}
	for _, i := range ring {
		if s.usable(i) {
			kept = append(kept, s.vertex[i])
			different[s.vertex[i]] = true
		}
	}
	if len(different) < 3 {
		s.issues = append(s.issues, Issue{Kind: BadRing, Points: ring})
		return 0
	}
	twice := 0.0
	for k := 1; k+1 < len(kept); k++ {
		o := s.pts[kept[0]]
		twice += s.pts[kept[k]].Sub(o).Cross(s.pts[kept[k+1]].Sub(o))
	}
	if twice < 0 {
		return -1
	}
	return 1
}

// edge is the line as it was given.
func (l line) edge() [2]int { return [2]int{int(l.from), int(l.to)} }

// useTable holds which lines run along an edge of the fabric.
type useTable struct {
	first map[[2]int32]int32 // by the edge's vertices, the lower first: a place in list, plus 1
	list  []use
}

type use struct {
	piece
	next int32
}

func edgeKey(a, b int32) [2]int32 { return [2]int32{min(a, b), max(a, b)} }

func (u *useTable) add(p piece) {
	if u.first == nil {
		u.first = map[[2]int32]int32{}
	}
	k := edgeKey(p.a, p.b)
	u.list = append(u.list, use{p, u.first[k]})
	u.first[k] = int32(len(u.list))
}

// of are the pieces along an edge, the latest first.
func (u *useTable) of(a, b int32) []piece {
	var out []piece
	for i := u.first[edgeKey(a, b)]; i != 0; i = u.list[i-1].next {
		out = append(out, u.list[i-1].piece)
	}
	return out
}

// take is of, and forgets them.
func (u *useTable) take(a, b int32) []piece {
	out := u.of(a, b)
	delete(u.first, edgeKey(a, b))
	return out
}
