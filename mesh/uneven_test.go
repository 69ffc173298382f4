package mesh_test

import (
	"fmt"
	"math"
	"testing"

	"brimline/mesh"
	"brimline/plane"
)

// uneven is a curved floor under a wavy ring, with a hole, breaks that cross and soundings.
func uneven(n int) (points []mesh.Point3, breaks [][]int, ring []int, holes [][]int) {
	points = append(star(60, 0, 0, 4, 0.2), star(8, 1, 1, 0.5, 0)...)
	points = append(points,
		mesh.Point3{X: -2.5, Y: -0.1, Z: -1.2}, mesh.Point3{X: 2.4, Y: -0.2, Z: -1.9},
		mesh.Point3{X: -0.3, Y: -2.2, Z: -0.9}, mesh.Point3{X: -0.1, Y: 2.1, Z: -1.1})
	for _, p := range scattered(77, n, 4) {
		q := plane.Point{X: p.X - 2, Y: p.Y - 2}
		if q.Len() < 2.9 && q.Dist(plane.Point{X: 1, Y: 1}) > 0.55 {
			points = append(points, mesh.Point3{X: q.X, Y: q.Y, Z: p.Z})
		}
	}
	return points, [][]int{{68, 69}, {70, 71}}, span(0, 60), [][]int{span(60, 68)}
}

// strips integrates depth over a surface along lines of one x, a second method: along each the
// surface is straight between edges, and there the depth is integrated exactly.
func strips(s *mesh.Surface, level float64, step float64) float64 {
	sum := 0.0
	for _, v := range s.Triangles {
		p := [3]mesh.Point3{s.Points[v[0]], s.Points[v[1]], s.Points[v[2]]}
		lo := math.Min(p[0].X, math.Min(p[1].X, p[2].X))
		hi := math.Max(p[0].X, math.Max(p[1].X, p[2].X))
		for k := math.Ceil(lo/step - 0.5); (k+0.5)*step < hi; k++ {
			sum += column(p, (k+0.5)*step, level)
		}
	}
	return sum * step
}

// column is the integral of the depth below level along x = at in one triangle.
func column(p [3]mesh.Point3, at, level float64) float64 {
	var y, d []float64
	for i := range p {
		a, b := p[i], p[(i+1)%3]
		if (a.X > at) != (b.X > at) {
			r := (at - a.X) / (b.X - a.X)
			y, d = append(y, a.Y+r*(b.Y-a.Y)), append(d, level-(a.Z+r*(b.Z-a.Z)))
		}
	}
	if len(y) < 2 {
		return 0
	}
	long := math.Abs(y[1] - y[0])
	switch {
	case d[0] <= 0 && d[1] <= 0:
		return 0
	case d[0] >= 0 && d[1] >= 0:
		return long * (d[0] + d[1]) / 2
	}
	deep, dry := math.Max(d[0], d[1]), math.Min(d[0], d[1])
	return long * deep / (deep - dry) * deep / 2
}

// TestVolumeByStrips: the volume under levels above, through and below the surface.
func TestVolumeByStrips(t *testing.T) {
	points, breaks, ring, holes := uneven(500)
	s, _ := mesh.Triangulate(points, breaks, ring, holes)
	demand(t, s)
	for _, level := range []float64{1, -0.5, -1.1, -1.5, -1.9, -2.1} {
		w := s.Under(level)
		near(t, fmt.Sprint("volume under ", level), w.Volume, strips(s, level, 1e-4), 1e-6*w.Volume)
	}
	if w := s.Under(-2.1); w.Volume != 0 || w.Plan != 0 || w.Wetted != 0 {
		t.Errorf("water below the floor: %+v", w)
	}
}

// TestVolumeGrowsWithArea: the volume between two levels is the area integrated over them; the area
// is a quadratic in the level between the heights of points, so Simpson's rule on fine steps is
// good to rounding but for the steps with a point.
func TestVolumeGrowsWithArea(t *testing.T) {
	points, breaks, ring, holes := uneven(200)
	s, _ := mesh.Triangulate(points, breaks, ring, holes)
	const from, to, n = -1.9, -0.8, 4000
	h := (to - from) / n
	sum := 0.0
	for i := range n {
		a := from + float64(i)*h
		sum += h / 6 * (s.Under(a).Plan + 4*s.Under(a+h/2).Plan + s.Under(a+h).Plan)
	}
	near(t, "volume between", s.Under(to).Volume-s.Under(from).Volume, sum, 1e-7*sum)
}

// TestVolumeGradient against central differences of the whole work, the crossing of breaks included.
func TestVolumeGradient(t *testing.T) {
	points, breaks, ring, holes := uneven(60)
	for _, level := range []float64{0, -1.3} {
		s, issues := mesh.Triangulate(points, breaks, ring, holes)
		if len(s.Made) != 1 {
			t.Fatalf("%d points made, want 1; issues %v", len(s.Made), issues)
		}
		g := s.VolumeGradient(level)
		if g[len(points)] != 0 {
			t.Errorf("a made point keeps %g", g[len(points)])
		}
		const h = 1e-4
		for i := range points {
			was := points[i].Z
			points[i].Z = was + h
			up, _ := mesh.Triangulate(points, breaks, ring, holes)
			points[i].Z = was - h
			down, _ := mesh.Triangulate(points, breaks, ring, holes)
			points[i].Z = was
			near(t, fmt.Sprint("by the height of point ", i), g[i], (up.Under(level).Volume-down.Under(level).Volume)/(2*h), 1e-7)
		}
		sum := 0.0
		for _, x := range g {
			sum += x
		}
		near(t, "all heights together", -sum, s.Under(level).Plan, 1e-12)
	}
}
