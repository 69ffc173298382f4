package mesh

import (
	"math"

	"brimline/plane"
)

// mostCrossings bounds the points that are made, so that a flood of edges ends in an issue.
const mostCrossings = 1 << 22

// snap is how near, as a share of its coordinates, a crossing may come to an end of what crosses
// before it is taken to be that end: some hundred units in the last place. Without it two edges that
// all but coincide would meet again and again, one unit further on each time.
const snap = 1.0 / (1 << 44)

// cross splits a piece and the constraint behind the code, which it crosses, at a new vertex.
// Rounding puts that vertex beside both lines by a unit in the last place or so, so the
// parts are put in anew like other pieces.
func (s *sewing) cross(p piece, code int32) {
	c := s.cells[code>>2]
	j, k := following(code & 3)
	a, b := c.v[j&3], c.v[k&3]
	if before(s.pts[b], s.pts[a]) {
		a, b = b, a
	}
	if s.crossed >= min(mostCrossings, len(s.lines)*len(s.lines)+100) {
		s.issues = append(s.issues, Issue{Kind: Abandoned, Edges: [][2]int{s.lines[p.line].edge()}})
		return
	}
	s.crossed++
	m, share := s.meeting(p, a, b)
	m = s.snapped(m, p.a, p.b, a, b)
	s.free(code>>2, code&3)
	s.relax(code)
	broken := s.uses.take(a, b)
	v, more := s.put(m, code>>2)
	if int(v) == len(s.index) {
		s.makePoint(p, piece{a, b, broken[0].line}, v, share)
	}
	s.reportCrossing(p, broken[0], a, b, v, share)
	s.todo = append(s.todo, piece{p.a, v, p.line}, piece{v, p.b, p.line})
	for _, q := range append(broken, more...) {
		s.todo = append(s.todo, piece{q.a, v, q.line}, piece{v, q.b, q.line})
	}
}

// meeting is where the piece crosses the edge a–b, with the shares of both before it.
func (s *sewing) meeting(p piece, a, b int32) (plane.Point, [2]float64) {
	u, v, pa, pb := s.pts[p.a], s.pts[p.b], s.pts[a], s.pts[b]
	along := [2]float64{ratio(Orient(pa, pb, u), Orient(pa, pb, v)), ratio(Orient(u, v, pa), Orient(u, v, pb))}
	return plane.Lerp(pa, pb, along[1]), along
}

// snapped is m, or the nearest of the vertices if that is too near for a place of its own.
func (s *sewing) snapped(m plane.Point, ends ...int32) plane.Point {
	near, best := snap*(math.Abs(m.X)+math.Abs(m.Y)), m
	for _, v := range ends {
		if d := s.pts[v].Dist(m); d <= near {
			near, best = d, s.pts[v]
		}
	}
	return best
}

// ratio is how far from one end to the other a number changes sign.
func ratio(x, y float64) float64 { return x / (x - y) }

// makePoint adds the point of a new vertex: its height is the mean of those on both pieces.
func (s *sewing) makePoint(p, q piece, v int32, share [2]float64) {
	from := [4]int32{s.index[p.a], s.index[p.b], s.index[q.a], s.index[q.b]}
	weight := [4]float64{(1 - share[0]) / 2, share[0] / 2, (1 - share[1]) / 2, share[1] / 2}
	n := int32(len(s.points))
	z := 0.0
	for i, f := range from {
		z += float64(weight[i] * s.points[f].Z)
	}
	at := s.pts[v]
	s.points = append(s.points, Point3{at.X, at.Y, z})
	s.index = append(s.index, n)
	s.made = append(s.made, Made{n, from, weight})
}

func (s *sewing) reportCrossing(p, q piece, a, b, v int32, share [2]float64) {
	z := func(i int32) float64 { return s.points[s.index[i]].Z }
	first := z(p.a)*(1-share[0]) + z(p.b)*share[0]
	second := z(a)*(1-share[1]) + z(b)*share[1]
	s.issues = append(s.issues, Issue{
		Kind: Crossing, Points: []int{int(s.index[v])},
		Edges: [][2]int{s.lines[p.line].edge(), s.lines[q.line].edge()},
		At:    s.pts[v], Gap: first - second,
	})
}
