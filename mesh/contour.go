package mesh

import "brimline/plane"

// Contour is a line of one height in plan.
type Contour struct {
	Level  float64
	Points []plane.Point
	Closed bool // its last point joins its first, which is not repeated
}

// Contours are the lines of the levels given, each chained as far as it goes, higher ground on
// its left. A point exactly at a level counts as above it: a flat at that height is followed along its edge
// where lower ground begins.
func (s *Surface) Contours(levels []float64) []Contour {
	var out []Contour
	done := make([]int32, len(s.Triangles)) // the level's place in the list, from 1, whose line went through
	for k, level := range levels {
		n := int32(k + 1)
		for t := range s.Triangles {
			if done[t] != n && s.leaving(t, level) >= 0 {
				if c := s.follow(t, level, done, n); len(c.Points) > 1 {
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// leaving is the corner opposite the edge by which the line leaves triangle t: counter-clockwise along
// that edge the surface goes from below to above, so that the higher ground is on the left. −1
// where the line does not come.
func (s *Surface) leaving(t int, level float64) int {
	return s.change(t, level, false)
}

// entering is the same for the edge by which it comes in.
func (s *Surface) entering(t int, level float64) int {
	return s.change(t, level, true)
}

func (s *Surface) change(t int, level float64, falling bool) int {
	v := s.Triangles[t]
	for i := range 3 {
		above, next := s.Points[v[(i+1)%3]].Z >= level, s.Points[v[(i+2)%3]].Z >= level
		if above != next && above == falling {
			return i
		}
	}
	return -1
}

// follow goes back along the line through triangle t to its beginning, or once around, then forward.
func (s *Surface) follow(t int, level float64, done []int32, n int32) Contour {
	first := t
	for {
		before := int(s.Beside[first][s.entering(first, level)])
		if before < 0 || before == t {
			if before == t {
				first = t
			}
			break
		}
		first = before
	}
	c := Contour{Level: level}
	if s.Beside[first][s.entering(first, level)] < 0 {
		c.add(s.onEdge(first, s.entering(first, level), level))
	}
	for at := first; ; {
		done[at] = n
		i := s.leaving(at, level)
		c.add(s.onEdge(at, i, level))
		at = int(s.Beside[at][i])
		if at < 0 || at == first {
			c.close(at == first)
			return c
		}
	}
}

// onEdge is where the level meets the edge opposite corner i.
func (s *Surface) onEdge(t, i int, level float64) plane.Point {
	v := s.Triangles[t]
	j, k := v[(i+1)%3], v[(i+2)%3]
	p, q := s.Points[min(j, k)], s.Points[max(j, k)]
	return plane.Lerp(p.Plan(), q.Plan(), ratio(p.Z-level, q.Z-level))
}

// add appends a point that differs from the last.
func (c *Contour) add(p plane.Point) {
	if n := len(c.Points); n == 0 || c.Points[n-1] != p {
		c.Points = append(c.Points, p)
	}
}

func (c *Contour) close(closed bool) {
	c.Closed = closed
	if n := len(c.Points); closed && n > 1 && c.Points[0] == c.Points[n-1] {
		c.Points = c.Points[:n-1]
	}
}
