package mesh

// region is a part of the fabric that no constraint divides, with how often ring and holes go
// counter-clockwise around it.
type region struct{ turns role }

// inside says that a region belongs to the surface.
func (r region) inside(hull bool) bool { return (hull || r.turns.ring != 0) && r.turns.hole == 0 }

// cut makes the surface of the cells inside the ring and outside the holes, or of all within the hull.
func (s *sewing) cut(hull bool) *Surface {
	regions := s.colour()
	out := &Surface{Points: s.points, Made: s.made}
	n := int32(0)
	for t := range s.cells {
		c := &s.cells[t]
		if !c.outside() && regions[c.n[3]-1].inside(hull) {
			c.n[3] = n
			n++
		} else {
			c.n[3] = -1
		}
	}
	out.Triangles, out.Beside, out.Fixed = make([][3]int32, n), make([][3]int32, n), make([]uint8, n)
	for t := range s.cells {
		c := &s.cells[t]
		k := c.n[3]
		if k < 0 {
			continue
		}
		out.Triangles[k] = [3]int32{s.index[c.v[0]], s.index[c.v[1]], s.index[c.v[2]]}
		out.Beside[k] = [3]int32{s.cells[c.n[0]>>2].n[3], s.cells[c.n[1]>>2].n[3], s.cells[c.n[2]>>2].n[3]}
		out.Fixed[k] = uint8(c.v[3])
	}
	s.reportApart(out)
	return out
}

// reportApart names the points that stand for a vertex in no triangle.
func (s *sewing) reportApart(out *Surface) {
	used := make([]bool, len(s.points))
	for _, t := range out.Triangles {
		used[t[0]], used[t[1]], used[t[2]] = true, true, true
	}
	var apart []int
	for i, v := range s.vertex {
		if v != outer && s.index[v] == int32(i) && !used[i] {
			apart = append(apart, i)
		}
	}
	if apart != nil {
		s.issues = append(s.issues, Issue{Kind: Apart, Points: apart})
	}
}

// colour gives every cell the number of its region, counted from 1, in n[3].
func (s *sewing) colour() []region {
	if len(s.lines) == 0 {
		for t := range s.cells {
			s.cells[t].n[3] = 1
		}
		return []region{{}}
	}
	for t := range s.cells {
		s.cells[t].n[3] = 0
	}
	type gate struct {
		cell  int32
		turns role
	}
	gates := []gate{{s.at[outer], role{}}}
	var regions []region
	var stack []int32
	for len(gates) > 0 {
		g := gates[len(gates)-1]
		gates = gates[:len(gates)-1]
		if s.cells[g.cell].n[3] != 0 {
			continue
		}
		regions = append(regions, region{g.turns})
		colour := int32(len(regions))
		s.cells[g.cell].n[3] = colour
		stack = append(stack[:0], g.cell)
		for len(stack) > 0 {
			t := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for i := range int32(3) {
				next := s.cells[t].n[i] >> 2
				switch {
				case s.cells[next].n[3] != 0:
				case s.fixed(t, i):
					gates = append(gates, gate{next, s.across(t, i, g.turns)})
				default:
					s.cells[next].n[3] = colour
					stack = append(stack, next)
				}
			}
		}
	}
	return regions
}

// across are the turns beyond the edge opposite corner i of cell t: a piece in the edge's own
// direction has the cell on its left, so the turn it is part of ends there.
func (s *sewing) across(t, i int32, turns role) role {
	j, k := following(i)
	a, b := s.cells[t].v[j&3], s.cells[t].v[k&3]
	for _, p := range s.uses.of(a, b) {
		sign := int32(-1)
		if p.a != a {
			sign = 1
		}
		r := s.lines[p.line].role
		turns.ring += sign * r.ring
		turns.hole += sign * r.hole
	}
	return turns
}
