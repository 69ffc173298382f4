package mesh

import (
	"math/rand/v2"
	"testing"

	"brimline/plane"
)

// sewn is a grid of 5 by 5 points, 1 m apart, with the breaks given sewn in.
func sewn(breaks ...[]int) *sewing {
	s := &sewing{}
	for i := range 25 {
		s.points = append(s.points, Point3{X: float64(i % 5), Y: float64(i / 5)})
	}
	s.begin(0)
	s.readLines(breaks, nil, nil)
	s.sew()
	return s
}

// whole fails where cells do not know each other, or do not turn counter-clockwise.
func whole(t *testing.T, f *fabric) {
	t.Helper()
	for k := range f.cells {
		c := &f.cells[k]
		if !c.outside() && Orient(f.pts[c.v[0]], f.pts[c.v[1]], f.pts[c.v[2]]) <= 0 {
			t.Fatalf("cell %d does not turn counter-clockwise", k)
		}
		for i := range int32(3) {
			code := c.n[i]
			if f.cells[code>>2].n[code&3] != way(int32(k), i) {
				t.Fatalf("cell %d is not known across its edge %d", k, i)
			}
			if f.fixed(int32(k), i) != f.fixed(code>>2, code&3) {
				t.Fatalf("edge %d of cell %d is fixed on one side", i, k)
			}
		}
	}
}

// TestPutOnAConstraint: a vertex exactly on one frees it and hands back its piece.
func TestPutOnAConstraint(t *testing.T) {
	s := sewn([]int{6, 7})
	v, broken := s.put(plane.Point{X: 1.25, Y: 1}, 0)
	whole(t, &s.fabric)
	if len(broken) != 1 || edgeKey(broken[0].a, broken[0].b) != edgeKey(s.vertex[6], s.vertex[7]) {
		t.Fatalf("broken %v", broken)
	}
	if rest := s.uses.of(s.vertex[6], s.vertex[7]); rest != nil {
		t.Errorf("the piece is still in use: %v", rest)
	}
	if s.pts[v] != (plane.Point{X: 1.25, Y: 1}) {
		t.Errorf("vertex at %v", s.pts[v])
	}
}

// TestPutBeyondTheHull and beside a constraint on it: the hull grows, the constraint stays.
func TestPutBeyondTheHull(t *testing.T) {
	s := sewn([]int{4, 24})
	if _, broken := s.put(plane.Point{X: 6, Y: 2.2}, s.at[outer]); broken != nil {
		t.Errorf("broken %v", broken)
	}
	whole(t, &s.fabric)
	kept := 0
	for k := range s.cells {
		for i := range int32(3) {
			if s.fixed(int32(k), i) {
				kept++
			}
		}
	}
	if kept != 8 {
		t.Errorf("%d sides of fixed edges, want 4 edges on both sides", kept)
	}
}

// TestPutOnAVertex gives that vertex.
func TestPutOnAVertex(t *testing.T) {
	s := sewn()
	s.at = make([]int32, len(s.pts))
	if v, _ := s.put(plane.Point{X: 3, Y: 2}, 0); v != s.vertex[13] {
		t.Errorf("vertex %d, want %d", v, s.vertex[13])
	}
}

// TestScanAgreesWithFind on places within the hull.
func TestScanAgreesWithFind(t *testing.T) {
	s := sewn([]int{0, 13}, []int{20, 9})
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		p := plane.Point{X: 4 * r.Float64(), Y: 4 * r.Float64()}
		if a, b := s.find(p, 0), s.scan(p); a != b {
			t.Fatalf("%v: found in %d, scanned in %d", p, a, b)
		}
	}
}

// TestAbandoned: when the most crossings are made the edge is given up and named.
func TestAbandoned(t *testing.T) {
	s := sewn([]int{1, 8})
	s.crossed = mostCrossings
	s.readLines([][]int{{2, 6}}, nil, nil)
	s.sew()
	whole(t, &s.fabric)
	last := s.issues[len(s.issues)-1]
	if last.Kind != Abandoned || last.Edges[0] != [2]int{2, 6} || len(s.points) != 25 {
		t.Errorf("issues %v, %d points", s.issues, len(s.points))
	}
}
