package mesh

import "brimline/plane"

// Find is the triangle that holds a place, on its edges too, and −1 where the surface has none. It goes there
// from triangle from, such as the last one found, and looks at all of them when that way ends
// at the surface's edge; any number will do.
func (s *Surface) Find(p plane.Point, from int) int {
	if len(s.Triangles) == 0 || !p.Finite() {
		return -1
	}
	p = flush(Point3{X: p.X, Y: p.Y})
	t := max(0, min(from, len(s.Triangles)-1))
	for range s.Triangles {
		i := s.beyond(t, p)
		if i < 0 {
			return t
		}
		next := int(s.Beside[t][i])
		if next < 0 {
			break
		}
		t = next
	}
	for t := range s.Triangles {
		if s.beyond(t, p) < 0 {
			return t
		}
	}
	return -1
}

// beyond is the corner opposite an edge of triangle t that has p on its far side, −1 for none.
func (s *Surface) beyond(t int, p plane.Point) int {
	v := s.Triangles[t]
	for i := range 3 {
		if Orient(flush(s.Points[v[(i+1)%3]]), flush(s.Points[v[(i+2)%3]]), p) < 0 {
			return i
		}
	}
	return -1
}

// Height is the height of the surface at a place, with the triangle it lies in as Find has it;
// false where there is no surface.
func (s *Surface) Height(p plane.Point, from int) (z float64, triangle int, ok bool) {
	t := s.Find(p, from)
	if t < 0 {
		return 0, t, false
	}
	share := s.Shares(t, p)
	for i, v := range s.Triangles[t] {
		z += float64(share[i] * s.Points[v].Z)
	}
	return z, t, true
}

// Shares are the weights, adding up to 1, with which the heights of the corners of triangle t
// make the height of its plane at p: what a point's height counts there. In one without an area
// that a number can hold, the first corner counts alone.
func (s *Surface) Shares(t int, p plane.Point) [3]float64 {
	a, b, c := s.corners(t)
	o := Point3{X: p.X, Y: p.Y}
	whole := area(a, b, c)
	if !(whole > 0) {
		return [3]float64{1, 0, 0}
	}
	u, v := area(o, b, c)/whole, area(a, o, c)/whole
	return [3]float64{u, v, 1 - u - v}
}
