package mesh_test

import (
	"testing"

	"brimline/mesh"
)

// FuzzTriangulate reads points on a coarse grid, or a hair beside it, and edges between them from
// bytes: many points in a line, on a circle, twice, many edges that cross at points or along each
// other. Whatever comes out must keep the laws, and reading it must not fail.
func FuzzTriangulate(f *testing.F) {
	f.Add([]byte{12, 4, 3, 0, 0, 50, 1, 9, 4, 200, 3, 33, 77, 129, 64, 250, 16, 80, 90, 1, 2, 3, 4, 5, 6, 7, 8})
	f.Add([]byte{30, 9, 9, 0xff, 0x80, 0x40, 0x20, 0x10, 8, 4, 2, 1, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43})
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, data []byte) {
		points, breaks, ring, holes := decode(data)
		s, issues := mesh.Triangulate(points, breaks, ring, holes)
		demand(t, s)
		useEverything(s)
		for _, i := range issues {
			if i.Kind == mesh.Abandoned {
				t.Errorf("abandoned: %v", i)
			}
		}
		thinned, _ := mesh.Options{Tolerance: 0.5}.Triangulate(points, breaks, ring, holes)
		demand(t, thinned)
		plan, _ := s.Areas()
		if w := s.Under(10); !(w.Plan <= plan*(1+1e-12)) || !(plan >= 0) {
			t.Errorf("the water covers %g of %g", w.Plan, plan)
		}
	})
}

// decode makes the input of a triangulation out of bytes; each byte makes one number.
func decode(data []byte) (points []mesh.Point3, breaks [][]int, ring []int, holes [][]int) {
	next := func() int {
		if len(data) == 0 {
			return 0
		}
		b := data[0]
		data = data[1:]
		return int(b)
	}
	n, nb, nr := next()%40, next()%12, next()%12
	for range n {
		at, z := next(), next()
		p := mesh.Point3{X: float64(at & 7), Y: float64(at >> 3 & 7), Z: -float64(z&15) / 4}
		switch at >> 6 {
		case 1:
			p.X = moved(p.X, z>>4&3)
		case 2:
			p.X, p.Y = p.X/3+p.Y/7, p.Y/3-p.X/7
		case 3:
			p.X, p.Y = 0.1*p.X+float64(z>>4)*1e-15, 0.1*p.Y
		}
		points = append(points, p)
	}
	list := func(k int) []int {
		var out []int
		for range k {
			out = append(out, next()%(n+1)) // sometimes a number that there is not
		}
		return out
	}
	for range nb {
		breaks = append(breaks, list(2+next()%3))
	}
	ring = list(nr)
	for range next() % 3 {
		holes = append(holes, list(3+next()%4))
	}
	return points, breaks, ring, holes
}
