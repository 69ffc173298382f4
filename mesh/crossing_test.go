package mesh_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"brimline/mesh"
	"brimline/plane"
)

// TestCrossing: two breaks that cross meet in a new point at the mean height, and its gap is named.
func TestCrossing(t *testing.T) {
	points := []mesh.Point3{{X: 0, Y: 0, Z: 0}, {X: 4, Y: 0, Z: 0}, {X: 4, Y: 4, Z: -4}, {X: 0, Y: 4, Z: -2}}
	s, issues := mesh.Triangulate(points, [][]int{{0, 2}, {1, 3}}, nil, nil)
	demand(t, s)
	if len(issues) != 1 || issues[0].Kind != mesh.Crossing {
		t.Fatalf("issues: %v", issues)
	}
	i := issues[0]
	first, second := -2.0, -1.0 // half way along each
	if i.Edges[0] != [2]int{0, 2} {
		first, second = second, first
	}
	near(t, "gap", i.Gap, first-second, 1e-12)
	if len(s.Points) != 5 || s.Points[4] != (mesh.Point3{X: 2, Y: 2, Z: -1.5}) || i.At != (plane.Point{X: 2, Y: 2}) || i.Points[0] != 4 {
		t.Errorf("points %v, issue %v", s.Points, i)
	}
	if len(s.Triangles) != 4 {
		t.Errorf("%d triangles, want 4", len(s.Triangles))
	}
}

// TestManyCrossings: a bundle of random breaks, most of which cross. The breaks are all there, up to the
// rounding of the crossings.
func TestManyCrossings(t *testing.T) {
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 2))
		points := scattered(seed+50, 60, 10)
		var breaks [][]int
		want := 0.0
		for range 25 {
			b := []int{r.IntN(60), r.IntN(60)}
			breaks = append(breaks, b)
			if lineLength(points, b) > 0 && !slices.ContainsFunc(breaks[:len(breaks)-1], func(o []int) bool {
				return o[0] == b[0] && o[1] == b[1] || o[0] == b[1] && o[1] == b[0]
			}) {
				want += lineLength(points, b)
			}
		}
		s, issues := mesh.Triangulate(points, breaks, nil, nil)
		demand(t, s)
		near(t, "length", fixedLength(s), want, 1e-9)
		if len(s.Points)-60 < len(issues)-2 || len(s.Points) == 60 {
			t.Errorf("seed %d: %d points made, %d issues", seed, len(s.Points)-60, len(issues))
		}
		if got := euler(s); got != 1 {
			t.Errorf("seed %d: vertices − edges + triangles = %d", seed, got)
		}
	}
}

// TestBundle: breaks that all but meet in one point, so that their crossings lie some units in the
// last place apart, on top of each other or on each other's lines.
func TestBundle(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 400 {
		var points []mesh.Point3
		var breaks [][]int
		centre := plane.Point{X: 3 * r.Float64(), Y: 3 * r.Float64()}
		want := 0.0
		for k := range 3 + r.IntN(5) {
			d := plane.Point{X: 1}.Turn(math.Pi * (float64(k) + 0.8*r.Float64()) / 8)
			a, b := centre.Add(d.Mul(1+r.Float64())), centre.Sub(d.Mul(1+r.Float64()))
			points = append(points, mesh.Point3{X: a.X, Y: a.Y}, mesh.Point3{X: b.X, Y: b.Y})
			breaks = append(breaks, []int{2 * k, 2*k + 1})
			want += a.Dist(b)
		}
		s, issues := mesh.Triangulate(points, breaks, nil, nil)
		demand(t, s)
		near(t, "length", fixedLength(s), want, 1e-9)
		if slices.Contains(kinds(issues), mesh.Abandoned) {
			t.Errorf("issues %v", issues)
		}
	}
}

// TestTwins: two breaks one unit in the last place apart, and others across both, whose crossings with one
// are rounded onto the other.
func TestTwins(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for range 100 {
		y, z := 1+r.Float64(), 1+r.Float64()
		points := []mesh.Point3{{X: -4, Y: y}, {X: 4, Y: z}, {X: -4, Y: moved(y, 1)}, {X: 4, Y: moved(z, 1)}}
		breaks := [][]int{{0, 1}, {2, 3}}
		want := lineLength(points, breaks[0]) + lineLength(points, breaks[1])
		for k := range 30 {
			x := -3.5 + float64(k)/5 + 0.1*r.Float64()
			points = append(points, mesh.Point3{X: x, Y: 4}, mesh.Point3{X: x + 0.05*r.Float64(), Y: -3})
			breaks = append(breaks, []int{4 + 2*k, 5 + 2*k})
			want += lineLength(points, breaks[k+2])
		}
		s, issues := mesh.Triangulate(points, breaks, nil, nil)
		demand(t, s)
		// Where the twins meet in a vertex they are one edge from there to the next: what is left is between.
		if got := fixedLength(s); got > want+1e-9 || got < want-8.1 {
			t.Errorf("length %g of %g", got, want)
		}
		if slices.Contains(kinds(issues), mesh.Abandoned) {
			t.Errorf("issues %v", issues)
		}
	}
}
