package mesh

import (
	"math"

	"brimline/plane"
)

// Options of a triangulation.
type Options struct {
	// Tolerance in metres: of points that lie this near to each other in plan, only that with
	// the lowest number is used. 0, the default, joins only points on exactly the same place.
	Tolerance float64
}

// Triangulate is Options{}.Triangulate: points are the same only where their places are.
func Triangulate(points []Point3, breaks [][]int, ring []int, holes [][]int) (*Surface, []Issue) {
	return Options{}.Triangulate(points, breaks, ring, holes)
}

// Triangulate makes the constrained Delaunay triangulation of points (metres): every piece of
// a break, a polyline through points by number, is an edge of it. The ring bounds it, closed
// from its last corner to its first; none stands for the convex hull. Holes are rings cut out of it. Either
// direction of a ring will do. Edges that meet otherwise than at points they name are split
// there. The result does not depend on the order of the points beyond their numbering, unless
// edges cross. What is unusable in the input is left out and named in the issues.
func (o Options) Triangulate(points []Point3, breaks [][]int, ring []int, holes [][]int) (*Surface, []Issue) {
	s := &sewing{points: points[:len(points):len(points)]}
	if !s.begin(o.Tolerance) {
		return &Surface{Points: s.points}, s.issues
	}
	if !s.readLines(breaks, ring, holes) {
		return &Surface{Points: s.points}, s.issues
	}
	s.sew()
	return s.cut(len(ring) == 0), s.issues
}

// farthest and nearest bound the coordinates that the exact tests can take.
const farthest, nearest = 1e50, 1e-50

// sewing is the work in hand: the fabric, the points its vertices are, the edges to put in.
type sewing struct {
	fabric
	points  []Point3
	index   []int32 // of vertices: the number of the point
	vertex  []int32 // of points: the vertex that stands for it, outer for none
	made    []Made
	lines   []line
	between map[[2]int32]int32 // the line between two vertices, the lower first
	todo    []piece
	crossed int // crossings made so far
	issues  []Issue
}

// begin makes the Delaunay triangulation of the usable points; false where there is none.
func (s *sewing) begin(tolerance float64) bool {
	alias := make([]int32, len(s.points))
	var usable []int32
	for i, p := range s.points {
		if !inRange(p) {
			s.issues = append(s.issues, Issue{Kind: Unusable, Points: []int{i}})
			alias[i] = -1
			continue
		}
		alias[i] = int32(i)
		usable = append(usable, int32(i))
	}
	ok := s.delaunay(usable, alias)
	for ok && tolerance > 0 && s.thin(tolerance, alias) {
		kept := usable[:0]
		for _, i := range usable {
			if alias[i] == i {
				kept = append(kept, i)
			}
		}
		usable = kept
		ok = s.delaunay(usable, alias)
	}
	s.reportDuplicates(alias)
	if !ok {
		s.issues = append(s.issues, Issue{Kind: Flat})
		return false
	}
	s.name(alias)
	return true
}

func inRange(p Point3) bool {
	return math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest && math.Abs(p.Z) <= farthest
}

// flush is p with coordinates too small for the exact tests set to zero.
func flush(p Point3) plane.Point {
	if math.Abs(p.X) < nearest {
		p.X = 0
	}
	if math.Abs(p.Y) < nearest {
		p.Y = 0
	}
	return p.Plan()
}

// delaunay triangulates the points numbered; an exact duplicate gets the other as its alias.
// False where all lie in a line.
func (s *sewing) delaunay(numbers, alias []int32) bool {
	n := len(numbers)
	places := make([]plane.Point, n)
	for k, i := range numbers {
		places[k] = flush(s.points[i])
	}
	s.pts, s.index = make([]plane.Point, n+1), make([]int32, n+1)
	s.index[outer] = -1
	for k, j := range insertionOrder(places) {
		s.pts[k+1], s.index[k+1] = places[j], numbers[j]
	}
	if !s.corners() {
		return false
	}
	if cap(s.cells) == 0 {
		s.cells = make([]cell, 0, 2*n+16)
	}
	s.start()
	for v := int32(4); v <= int32(n); v++ {
		if same := s.grow(v); same != outer {
			s.sameVertex(same, v, alias)
		}
	}
	return true
}

// corners brings three vertices that turn counter-clockwise to the front.
func (s *sewing) corners() bool {
	n := len(s.pts)
	j := 2
	for j < n && s.pts[j] == s.pts[1] {
		j++
	}
	k := j + 1
	for k < n && Orient(s.pts[1], s.pts[j], s.pts[k]) == 0 {
		k++
	}
	if k >= n {
		return false
	}
	s.swap(2, j)
	s.swap(3, k)
	if Orient(s.pts[1], s.pts[2], s.pts[3]) < 0 {
		s.swap(1, 2)
	}
	return true
}

func (s *sewing) swap(a, b int) {
	s.pts[a], s.pts[b] = s.pts[b], s.pts[a]
	s.index[a], s.index[b] = s.index[b], s.index[a]
}

// name notes which vertex stands for each point.
func (s *sewing) name(alias []int32) {
	s.vertex = make([]int32, len(s.points))
	for v := len(s.index) - 1; v > outer; v-- {
		s.vertex[s.index[v]] = int32(v)
	}
	for i, a := range alias {
		if a >= 0 && a != int32(i) {
			s.vertex[i] = s.vertex[a]
		}
	}
}
