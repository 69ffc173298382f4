package mesh_test

import (
	"math"
	"slices"
	"testing"

	"brimline/mesh"
	"brimline/plane"
)

// square is a square of 2 m with its middle.
func square() []mesh.Point3 {
	return []mesh.Point3{{}, {X: 2}, {X: 2, Y: 2}, {Y: 2}, {X: 1, Y: 1, Z: -1}}
}

func TestIssues(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	line := []mesh.Point3{{}, {X: 1, Y: 1}, {X: 2, Y: 2}, {X: 7, Y: 7}}
	cases := []struct {
		name      string
		points    []mesh.Point3
		breaks    [][]int
		ring      []int
		holes     [][]int
		want      []mesh.Kind
		triangles int
	}{
		{"nothing", nil, nil, nil, nil, []mesh.Kind{mesh.Flat}, 0},
		{"one point", square()[:1], nil, nil, nil, []mesh.Kind{mesh.Flat}, 0},
		{"in a line", line, [][]int{{0, 3}}, []int{0, 1, 2}, nil, []mesh.Kind{mesh.Flat}, 0},
		{"all on one place", slices.Repeat(line[:1], 3), nil, nil, nil, []mesh.Kind{mesh.Flat}, 0},
		{"good", square(), nil, []int{0, 1, 2, 3}, nil, nil, 4},
		{"clockwise", square(), nil, []int{3, 2, 1, 0}, nil, nil, 4},
		{"closed ring", square(), nil, []int{0, 1, 2, 3, 0}, nil, nil, 4},
		{"duplicate", append(square(), mesh.Point3{X: 1, Y: 1, Z: -3}), nil, nil, nil, []mesh.Kind{mesh.Duplicate}, 4},
		{"not a number", append(square(), mesh.Point3{X: nan}, mesh.Point3{Z: inf}, mesh.Point3{Y: 1e60}), nil, nil, nil, []mesh.Kind{mesh.Unusable, mesh.Unusable, mesh.Unusable}, 4},
		{"break to nowhere", square(), [][]int{{0, 9}, {-1, 2}, {0}, {}, {4, 4}}, nil, nil, []mesh.Kind{mesh.BadEdge, mesh.BadEdge}, 4},
		{"break to no number", append(square(), mesh.Point3{X: nan}), [][]int{{0, 5}}, nil, nil, []mesh.Kind{mesh.Unusable, mesh.BadEdge}, 4},
		{"ring of two", square(), nil, []int{0, 1, 0}, nil, []mesh.Kind{mesh.BadRing}, 0},
		{"ring without area", append(square(), mesh.Point3{X: 1}), nil, []int{0, 5, 1}, nil, []mesh.Kind{mesh.Through, mesh.Apart}, 0},
		{"hole of one", square(), nil, nil, [][]int{{0}}, []mesh.Kind{mesh.BadRing}, 4},
		{"hole over everything", square(), nil, []int{0, 1, 2, 3}, [][]int{{0, 1, 2, 3}}, []mesh.Kind{mesh.Apart}, 0},
		{"point outside", append(square(), mesh.Point3{X: 5}), nil, []int{0, 1, 2, 3}, nil, []mesh.Kind{mesh.Apart}, 4},
		{"ring through the middle", square(), nil, []int{0, 2, 3}, nil, []mesh.Kind{mesh.Through, mesh.Apart}, 2},
		{"spike", square(), nil, []int{0, 1, 2, 4, 2, 3}, nil, nil, 4},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s, issues := mesh.Triangulate(c.points, c.breaks, c.ring, c.holes)
			if got := kinds(issues); !slices.Equal(got, c.want) {
				t.Errorf("issues %v, want %v", got, c.want)
			}
			if len(s.Triangles) != c.triangles {
				t.Errorf("%d triangles, want %d", len(s.Triangles), c.triangles)
			}
			demand(t, s)
			useEverything(s)
		})
	}
}

// TestDuplicateKeepsTheFirst: whichever is put in first, the lower number stays, and edges to the
// other lead to it.
func TestDuplicateKeepsTheFirst(t *testing.T) {
	points := square()
	for i := range 30 {
		points = append(points, mesh.Point3{X: 1, Y: 1, Z: -2 - float64(i)})
	}
	s, issues := mesh.Triangulate(points, [][]int{{0, 20}}, nil, nil)
	if len(issues) != 30 {
		t.Fatalf("%d issues, want 30", len(issues))
	}
	for k, i := range issues {
		if !slices.Equal(i.Points, []int{4, 5 + k}) || i.Gap != -1-float64(k) {
			t.Errorf("issue %v", i)
		}
	}
	near(t, "volume", s.Under(0).Volume, 4.0/3, 1e-12)
	near(t, "length of the break", fixedLength(s), math.Sqrt2, 1e-12)
}

// TestTolerance: of points nearer than the tolerance only the lowest number stays, none of those left is
// nearer than that to another, and a chain of such points does not fall together.
func TestTolerance(t *testing.T) {
	points := scattered(12, 2000, 10)
	s, issues := mesh.Options{Tolerance: 0.2}.Triangulate(points, nil, nil, nil)
	demand(t, s)
	gone := map[int]bool{}
	for _, i := range issues {
		if i.Kind != mesh.Duplicate || i.Points[0] >= i.Points[1] {
			t.Fatalf("issue %v", i)
		}
		gone[i.Points[1]] = true
	}
	for i, p := range points {
		within := 0
		for j, q := range points[:i] {
			if !gone[j] && p.Plan().Dist(q.Plan()) <= 0.2 {
				within++
			}
		}
		if !gone[i] && within > 0 {
			t.Fatalf("point %d stays beside %d others", i, within)
		}
	}
	if len(gone) < 500 || len(gone) > 1600 {
		t.Errorf("%d points left out of 2000", len(gone))
	}
}

// useEverything calls all that reads a surface; none of it may panic.
func useEverything(s *mesh.Surface) {
	s.Under(-0.5)
	s.VolumeGradient(-0.5)
	s.Areas()
	s.Steepest(0)
	s.Contours([]float64{-1, -0.5, 0})
	if len(s.Points) > 1 {
		a, b := s.Points[0].Plan(), s.Points[1].Plan()
		s.Section([]plane.Point{a, b, a})
		s.Height(b, 0)
	}
}
