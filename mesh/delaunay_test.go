package mesh_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"brimline/mesh"
	"brimline/plane"
)

// clouds are sets of points that have tripped triangulations: in a square, on a grid, on a
// circle, on two lines, in tight clusters, in a column, spiralling inward.
func clouds() map[string][]mesh.Point3 {
	out := map[string][]mesh.Point3{
		"square": scattered(1, 700, 10), "far away": scattered(2, 300, 1e-5), "grid": lattice(20, 0.25),
		"tenths": lattice(15, 0.1), "circle": star(90, 3, -2, 5, 0), "three": scattered(3, 3, 1),
	}
	for i := range out["far away"] {
		out["far away"][i].X += 4.5e5
		out["far away"][i].Y += 5.2e6
	}
	r := rand.New(rand.NewPCG(9, 9))
	for i := range 200 {
		f := float64(i)
		out["two lines"] = append(out["two lines"], mesh.Point3{X: f, Y: float64(i % 2)})
		out["clusters"] = append(out["clusters"], mesh.Point3{X: float64(i%4) + 1e-9*r.Float64(), Y: float64(i%3) + 1e-9*r.Float64()})
		out["spiral"] = append(out["spiral"], mesh.Point3{X: math.Cos(f/9) / (f + 1), Y: math.Sin(f/9) / (f + 1)})
	}
	out["column"] = []mesh.Point3{{X: 1}}
	for i := range 100 {
		out["column"] = append(out["column"], mesh.Point3{Y: float64(i)})
	}
	return out
}

func TestDelaunay(t *testing.T) {
	for name, points := range clouds() {
		t.Run(name, func(t *testing.T) {
			s, issues := mesh.Triangulate(points, nil, nil, nil)
			if len(issues) > 0 {
				t.Errorf("issues: %v", issues)
			}
			demand(t, s)
			if got := euler(s); got != 1 {
				t.Errorf("vertices − edges + triangles = %d, want 1", got)
			}
			used := map[int32]bool{}
			for _, v := range s.Triangles {
				used[v[0]], used[v[1]], used[v[2]] = true, true, true
			}
			if len(used) != len(points) {
				t.Errorf("%d points in triangles, want %d", len(used), len(points))
			}
		})
	}
}

// TestOrderOfPoints: the triangulation of a set of points is one, whatever their order, also
// where four and more lie on a circle.
func TestOrderOfPoints(t *testing.T) {
	for name, points := range clouds() {
		first, _ := mesh.Triangulate(points, nil, nil, nil)
		want := triangles(first)
		for seed := range uint64(3) {
			r := rand.New(rand.NewPCG(seed, 1))
			other := slices.Clone(points)
			r.Shuffle(len(other), func(i, j int) { other[i], other[j] = other[j], other[i] })
			s, _ := mesh.Triangulate(other, nil, nil, nil)
			if !reflect.DeepEqual(triangles(s), want) {
				t.Errorf("%s, order %d: other triangles", name, seed)
			}
		}
	}
}

func TestSameInputSameOutput(t *testing.T) {
	points := scattered(8, 500, 9)
	ring := span(0, 0)
	first, _ := mesh.Triangulate(points, [][]int{{1, 2, 3, 4}}, ring, nil)
	second, _ := mesh.Triangulate(points, [][]int{{1, 2, 3, 4}}, ring, nil)
	if !reflect.DeepEqual(first, second) {
		t.Error("two runs differ")
	}
}

// TestTurnedAndShifted: volume, areas and the triangles themselves do not change with the frame.
func TestTurnedAndShifted(t *testing.T) {
	points := append(star(40, 0, 0, 5, 0.2), scattered(4, 300, 4)...)
	for i := 40; i < len(points); i++ {
		points[i].X, points[i].Y = points[i].X-2, points[i].Y-2
	}
	breaks := [][]int{{60, 70, 80}, {90, 100}}
	s, issues := mesh.Triangulate(points, breaks, span(0, 40), nil)
	other := slices.Clone(points)
	for i, p := range other {
		q := p.Plan().Turn(0.7).Add(plane.Point{X: 100, Y: -40})
		other[i] = mesh.Point3{X: q.X, Y: q.Y, Z: p.Z + 3}
	}
	u, otherIssues := mesh.Triangulate(other, breaks, span(0, 40), nil)
	if len(issues) != len(otherIssues) || len(s.Triangles) != len(u.Triangles) {
		t.Fatalf("%d issues and %d triangles, turned %d and %d", len(issues), len(s.Triangles), len(otherIssues), len(u.Triangles))
	}
	w, v := s.Under(-1.4), u.Under(1.6)
	near(t, "volume", v.Volume, w.Volume, 1e-11)
	near(t, "plan", v.Plan, w.Plan, 1e-10)
	near(t, "wetted", v.Wetted, w.Wetted, 1e-9)
}

func ExampleTriangulate() {
	points := []mesh.Point3{{0, 0, -1}, {4, 0, -1}, {4, 2, -2}, {0, 2, -2}}
	s, issues := mesh.Triangulate(points, nil, []int{0, 1, 2, 3}, nil)
	w := s.Under(0)
	fmt.Printf("%d triangles, %d issues, %.3f m³, %.3f m² wetted\n", len(s.Triangles), len(issues), w.Volume, w.Wetted)
	// Output: 2 triangles, 0 issues, 12.000 m³, 8.944 m² wetted
}
