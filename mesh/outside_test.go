package mesh_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"brimline/internal/checks"
	"brimline/internal/oracle"
	"brimline/mesh"
)

// TestPrismAndFrustum: items V-06 and V-05 of the published checks, a prism cut aslant and the
// frustum of a cone, here with 6000 sides.
func TestPrismAndFrustum(t *testing.T) {
	prism := checks.Get(t, "V-06")
	var points []mesh.Point3
	heights := prism.Inputs.List("triangle_heights")
	for k, row := range prism.Inputs.Rows("triangle") {
		points = append(points, mesh.Point3{X: row[0], Y: row[1], Z: -heights[k]})
	}
	s, _ := mesh.Triangulate(points, nil, nil, nil)
	prism.Compare("prism_volume", s.Under(0).Volume)

	frustum := checks.Get(t, "V-05")
	const n = 6000
	rim := star(n, 0, 0, frustum.Inputs.Number("R"), 0)
	toe := star(n, 0, 0, frustum.Inputs.Number("r"), 0)
	for i := range n {
		rim[i].Z, toe[i].Z = 0, -frustum.Inputs.Number("h")
	}
	u, issues := mesh.Triangulate(append(rim, toe...), [][]int{append(span(n, 2*n), n)}, span(0, n), nil)
	if len(issues) > 0 {
		t.Errorf("issues %v", issues)
	}
	frustum.Compare("volume", u.Under(0).Volume)
}

// TestDelaunayAgainstScipy: the same triangles as Qhull's, on random points of several sizes. Seeds 30 to 49.
func TestDelaunayAgainstScipy(t *testing.T) {
	var ask [][][2]float64
	var got [][][3]int
	for k := range 20 {
		points := scattered(uint64(30+k), 10+40*k, math.Pow(10, float64(k%7-3)))
		var plan [][2]float64
		for _, p := range points {
			plan = append(plan, [2]float64{p.X, p.Y})
		}
		s, _ := mesh.Triangulate(points, nil, nil, nil)
		var mine [][3]int
		for _, v := range s.Triangles {
			one := [3]int{int(v[0]), int(v[1]), int(v[2])}
			slices.Sort(one[:])
			mine = append(mine, one)
		}
		slices.SortFunc(mine, func(a, b [3]int) int { return slices.Compare(a[:], b[:]) })
		ask, got = append(ask, plan), append(got, mine)
	}
	var want [][][3]int
	oracle.Ask(t, "testdata/delaunay.py", []string{"scipy"}, ask, &want)
	for k := range got {
		if !reflect.DeepEqual(got[k], want[k]) {
			t.Errorf("set %d: other triangles than Qhull's", k)
		}
	}
}
