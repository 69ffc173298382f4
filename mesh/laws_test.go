package mesh_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"brimline/mesh"
	"brimline/plane"
)

// faults are the laws of a constrained Delaunay triangulation that a surface breaks.
func faults(s *mesh.Surface) []string {
	var out []string
	fault := func(broken bool, what string) {
		if broken && !slices.Contains(out, what) {
			out = append(out, what)
		}
	}
	at := func(v int32) plane.Point { return s.Points[v].Plan() }
	for t, v := range s.Triangles {
		fault(mesh.Orient(at(v[0]), at(v[1]), at(v[2])) <= 0, "a triangle does not turn counter-clockwise")
		for i := range 3 {
			u := s.Beside[t][i]
			if u < 0 {
				continue
			}
			j := slices.Index(s.Beside[u][:], int32(t))
			if j < 0 {
				fault(true, "a neighbour does not know its neighbour")
				continue
			}
			w := s.Triangles[u]
			fault(w[(j+1)%3] != v[(i+2)%3] || w[(j+2)%3] != v[(i+1)%3], "neighbours share no edge")
			fault(s.Fixed[t]>>i&1 != s.Fixed[u]>>j&1, "an edge is fixed on one side only")
			if s.Fixed[t]>>i&1 == 0 {
				fault(mesh.InCircle(at(v[0]), at(v[1]), at(v[2]), at(w[j])) > 0, "a circle is not empty")
			}
		}
	}
	return out
}

func demand(t *testing.T, s *mesh.Surface) {
	t.Helper()
	for _, f := range faults(s) {
		t.Error(f)
	}
}

// euler is vertices less edges plus triangles: 1 for a disc, 1 less for each hole.
func euler(s *mesh.Surface) int {
	vertices := map[int32]bool{}
	ends := 0
	for t, v := range s.Triangles {
		for i := range 3 {
			vertices[v[i]] = true
			if s.Beside[t][i] < 0 {
				ends++
			}
		}
	}
	edges := (3*len(s.Triangles) + ends) / 2
	return len(vertices) - edges + len(s.Triangles)
}

// scattered are n points in the unit square times size, seeded.
func scattered(seed uint64, n int, size float64) []mesh.Point3 {
	r := rand.New(rand.NewPCG(seed, 5))
	out := make([]mesh.Point3, n)
	for i := range out {
		out[i] = mesh.Point3{X: size * r.Float64(), Y: size * r.Float64(), Z: -1 - r.Float64()}
	}
	return out
}

// lattice is a grid of k by k points, step metres apart: every four neighbours on a circle.
func lattice(k int, step float64) []mesh.Point3 {
	var out []mesh.Point3
	for i := range k {
		for j := range k {
			out = append(out, mesh.Point3{X: step * float64(i), Y: step * float64(j), Z: math.Sin(float64(3*i + j))})
		}
	}
	return out
}

// star is a ring of n corners around (x, y) with a radius that goes in and out, counter-clockwise.
func star(n int, x, y, radius, wobble float64) []mesh.Point3 {
	out := make([]mesh.Point3, n)
	for i := range out {
		a := 2 * math.Pi * float64(i) / float64(n)
		r := radius * (1 + wobble*math.Cos(5*a))
		out[i] = mesh.Point3{X: x + r*math.Cos(a), Y: y + r*math.Sin(a), Z: -1 - 0.1*math.Sin(a)}
	}
	return out
}

// span are the numbers from a to b, b not among them.
func span(a, b int) []int {
	var out []int
	for i := a; i < b; i++ {
		out = append(out, i)
	}
	return out
}

// ringArea is the area inside a ring, counter-clockwise positive (Gauss's trapezium formula).
func ringArea(points []mesh.Point3, ring []int) float64 {
	sum := 0.0
	for k, i := range ring {
		p, q := points[ring[(k+len(ring)-1)%len(ring)]], points[i]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}

// triangles are those of a surface by the places of their corners, in an order of their own.
func triangles(s *mesh.Surface) [][6]float64 {
	var out [][6]float64
	for _, v := range s.Triangles {
		p := []plane.Point{s.Points[v[0]].Plan(), s.Points[v[1]].Plan(), s.Points[v[2]].Plan()}
		first := 0
		for i := range p {
			if p[i].X < p[first].X || p[i].X == p[first].X && p[i].Y < p[first].Y {
				first = i
			}
		}
		var t [6]float64
		for i := range 3 {
			q := p[(first+i)%3]
			t[2*i], t[2*i+1] = q.X, q.Y
		}
		out = append(out, t)
	}
	slices.SortFunc(out, func(a, b [6]float64) int { return slices.Compare(a[:], b[:]) })
	return out
}

func kinds(issues []mesh.Issue) []mesh.Kind {
	var out []mesh.Kind
	for _, i := range issues {
		out = append(out, i.Kind)
	}
	return out
}

// near fails where got is further than tolerance from want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.12g, want %.12g ± %g", what, got, want, tolerance)
	}
}
