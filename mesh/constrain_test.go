package mesh_test

import (
	"math"
	"slices"
	"testing"

	"brimline/mesh"
	"brimline/plane"
)

// fixedLength is the length in plan of all constraints, each counted once.
func fixedLength(s *mesh.Surface) float64 {
	sum := 0.0
	for t, v := range s.Triangles {
		for i := range 3 {
			if s.Fixed[t]>>i&1 == 0 {
				continue
			}
			l := s.Points[v[(i+1)%3]].Plan().Dist(s.Points[v[(i+2)%3]].Plan())
			if s.Beside[t][i] >= 0 {
				l /= 2
			}
			sum += l
		}
	}
	return sum
}

func lineLength(points []mesh.Point3, line []int) float64 {
	sum := 0.0
	for k := 1; k < len(line); k++ {
		sum += points[line[k-1]].Plan().Dist(points[line[k]].Plan())
	}
	return sum
}

// TestRingWithHoles: the area is the ring's less the holes', whichever way round they are given,
// every break is there in full, and points beyond are named.
func TestRingWithHoles(t *testing.T) {
	points := star(80, 0, 0, 5, 0.25)
	points = append(points, star(12, 1.5, 0.5, 0.8, 0)...)
	points = append(points, star(9, -1.5, -0.5, 0.7, 0.1)...)
	ring, first, second := span(0, 80), span(80, 92), span(92, 101)
	want := ringArea(points, ring) - ringArea(points, first) - ringArea(points, second)
	points = append(points, mesh.Point3{X: 1.5, Y: 0.5}, mesh.Point3{X: 9}, mesh.Point3{X: -3, Y: 2.2}, mesh.Point3{X: -2, Y: 2}, mesh.Point3{X: -1, Y: 2.4})
	for i, p := range scattered(6, 400, 5) {
		if q := p.Plan().Sub(plane.Point{X: 2.5, Y: 2.5}); q.Len() > 2.4 && q.Len() < 3.2 && i > 0 {
			points = append(points, mesh.Point3{X: q.X, Y: q.Y, Z: p.Z})
		}
	}
	slices.Reverse(first)
	breaks := [][]int{{103, 104, 105}}
	s, issues := mesh.Triangulate(points, breaks, ring, [][]int{first, second})
	demand(t, s)
	plan, _ := s.Areas()
	near(t, "area", plan, want, 1e-11)
	if got := euler(s); got != -1 {
		t.Errorf("vertices − edges + triangles = %d, want −1 with two holes", got)
	}
	length := lineLength(points, append(ring, 0)) + lineLength(points, append(first, first[0])) + lineLength(points, append(second, 92)) + lineLength(points, breaks[0])
	near(t, "length of edges", fixedLength(s), length, 1e-11)
	if len(issues) != 1 || issues[0].Kind != mesh.Apart || !slices.Equal(issues[0].Points[:2], []int{101, 102}) {
		t.Errorf("issues: %v", issues)
	}
}

// TestLongBreaks: breaks through a dense cloud are edges in full and every circle that no break
// shields stays empty, also where many triangles are crossed and breaks meet at a point.
func TestLongBreaks(t *testing.T) {
	points := scattered(7, 3000, 100)
	points = append(points, mesh.Point3{X: -1, Y: -1.5}, mesh.Point3{X: 101, Y: 100.3}, mesh.Point3{X: 50.1, Y: 49.7}, mesh.Point3{X: -1, Y: 101}, mesh.Point3{X: 101, Y: -1})
	breaks := [][]int{{3000, 3002, 3001}, {3003, 3002, 3004}}
	s, issues := mesh.Triangulate(points, breaks, nil, nil)
	if len(issues) != 0 {
		t.Errorf("issues: %v", issues)
	}
	demand(t, s)
	near(t, "length of breaks", fixedLength(s), lineLength(points, breaks[0])+lineLength(points, breaks[1]), 1e-9)
	if got := euler(s); got != 1 {
		t.Errorf("vertices − edges + triangles = %d, want 1", got)
	}
}

// TestBreakThroughPoints: along the rows of a grid a break runs through points exactly.
func TestBreakThroughPoints(t *testing.T) {
	points := lattice(9, 0.5)
	s, issues := mesh.Triangulate(points, [][]int{{0, 80}, {36, 44}}, nil, nil)
	demand(t, s)
	near(t, "length", fixedLength(s), 4*math.Sqrt2+4, 1e-12)
	through := 0
	for _, i := range issues {
		if i.Kind != mesh.Through {
			t.Errorf("issue %v", i)
			continue
		}
		through++
		z := points[i.Edges[0][0]].Z
		if i.Points[0] == 10 { // the first on the diagonal: an eighth of the way, before anything else is split
			near(t, "gap", i.Gap, points[10].Z-(z+(points[80].Z-z)/8), 1e-12)
		}
	}
	if through != 14 {
		t.Errorf("%d points run through, want 7 + 7", through)
	}
}

// TestBreakUnderAnother: a long break crosses the cells on both sides of a short one that ends just above
// it, which must outlive the new cells around it.
func TestBreakUnderAnother(t *testing.T) {
	points := []mesh.Point3{{X: -9}, {X: 9}, {X: -0.5, Y: -0.2}, {X: 0.5, Y: -0.2}, {X: 0, Y: 0.1}, {X: 0, Y: 1.3}, {X: 0, Y: -8}, {X: 0, Y: 8}}
	for _, first := range [][][]int{nil, {{4, 5}}} {
		breaks := append(first, []int{0, 1})
		s, issues := mesh.Triangulate(points, breaks, nil, nil)
		demand(t, s)
		if len(issues) > 0 {
			t.Errorf("issues %v", issues)
		}
		want := 0.0
		for _, b := range breaks {
			want += lineLength(points, b)
		}
		near(t, "length of breaks", fixedLength(s), want, 1e-12)
		if got := euler(s); got != 1 {
			t.Errorf("vertices − edges + triangles = %d", got)
		}
	}
}

// TestRingCrossesItself: a bow tie keeps both halves; its crossing is an issue.
func TestRingCrossesItself(t *testing.T) {
	points := []mesh.Point3{{X: 0, Y: 0}, {X: 2, Y: 2}, {X: 2, Y: 0}, {X: 0, Y: 2}}
	s, issues := mesh.Triangulate(points, nil, []int{0, 1, 2, 3}, nil)
	demand(t, s)
	plan, _ := s.Areas()
	near(t, "area", plan, 2, 1e-12)
	if k := kinds(issues); !slices.Equal(k, []mesh.Kind{mesh.Crossing}) {
		t.Errorf("issues %v", k)
	}
}

// TestRingOverlapsItself: a strip laid around a yard until its ends cross. What lies under both ends counts
// once, the yard not at all.
func TestRingOverlapsItself(t *testing.T) {
	var points []mesh.Point3
	for _, p := range [][2]float64{{-1, 0}, {6, 0}, {6, 6}, {0, 6}, {0, -1}, {1, -1}, {1, 5}, {5, 5}, {5, 1}, {-1, 1}} {
		points = append(points, mesh.Point3{X: p[0], Y: p[1]})
	}
	ring := span(0, len(points))
	for range 2 {
		s, issues := mesh.Triangulate(points, nil, ring, nil)
		demand(t, s)
		plan, _ := s.Areas()
		near(t, "area", plan, 7+5+5+4+1, 1e-12)
		if k := kinds(issues); !slices.Equal(k, slices.Repeat([]mesh.Kind{mesh.Crossing}, 4)) {
			t.Errorf("issues %v", k)
		}
		slices.Reverse(ring)
	}
}

// TestBreakBeyondRing: a break that leaves the ring is split there and cut off.
func TestBreakBeyondRing(t *testing.T) {
	points := append(star(24, 0, 0, 3, 0), mesh.Point3{X: 0.1, Y: 0.2, Z: -2}, mesh.Point3{X: 7, Y: 0.3, Z: -2})
	s, issues := mesh.Triangulate(points, [][]int{{24, 25}}, span(0, 24), nil)
	demand(t, s)
	plan, _ := s.Areas()
	near(t, "area", plan, ringArea(points, span(0, 24)), 1e-12)
	if k := kinds(issues); !slices.Equal(k, []mesh.Kind{mesh.Crossing, mesh.Apart}) {
		t.Errorf("issues %v", k)
	}
}
