package plane_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/internal/oracle"
	"brimline/plane"
)

type bufferQuestion struct {
	Points  [][2]float64 `json:"points"`
	D       float64      `json:"d"`
	Mitred  bool         `json:"mitred"`
	Quarter int          `json:"quarter"` // chords to a quarter circle
}

type bufferAnswer struct {
	Area, Length float64
	Rings        int
}

// Random outlines, inward and outward, against shapely: straights, mitred and rounded, and straights
// with arcs. The last are given as chords that leave their arcs by rise, and shapely's round corners
// are chords too: over a length of 30 m they leave out two thirds of rise and of d·(π/4q)²/2. Seed 12.
func TestOffsetAgainstShapely(t *testing.T) {
	const rise = 1e-5
	r := rand.New(rand.NewPCG(12, 12))
	var ask []bufferQuestion
	var got []plane.Parallel
	var tols []float64
	for i := range 90 {
		p := randomOutline(r, false)
		q := bufferQuestion{D: 1.2*r.Float64() + 0.02, Quarter: 2000}
		corners, tol := plane.RoundCorners, 1e-6
		switch i % 6 {
		case 0, 1:
			q.Quarter, tol = 100, 30*(rise+1.22*7.8e-6)
		case 2, 3:
			corners, q.Mitred = plane.MitredCorners, true
			fallthrough
		default:
			for k := range p.Segs {
				p.Segs[k].Bulge = 0
			}
		}
		if i%2 == 1 {
			q.D = -q.D
		}
		if p.Crossings() != nil || q.Mitred && sharp(p) {
			continue
		}
		for _, a := range p.Flatten(rise) {
			q.Points = append(q.Points, [2]float64{a.X, a.Y})
		}
		ask, tols, got = append(ask, q), append(tols, tol), append(got, offset(t, p, q.D, corners))
	}
	var answers []bufferAnswer
	oracle.Ask(t, "testdata/buffers.py", []string{"shapely"}, ask, &answers)
	for i, a := range answers {
		area, length := 0.0, 0.0
		for _, p := range got[i].Paths {
			area, length = area+p.Area(), length+p.Length() // rings of holes count less
		}
		if len(got[i].Paths) != a.Rings {
			t.Errorf("outline %d by %g: %d rings, shapely says %d", i, ask[i].D, len(got[i].Paths), a.Rings)
		}
		near(t, "area", math.Abs(area), a.Area, tols[i])
		near(t, "length", length, a.Length, tols[i])
	}
	if len(answers) < 60 {
		t.Errorf("only %d outlines", len(answers))
	}
}

// sharp says that a corner reaches past the limit of mitres.
func sharp(p plane.Path) bool {
	for i, s := range p.Segs {
		next := p.Segs[(i+1)%len(p.Segs)]
		if math.Cos(plane.Between(s.Tangent(1), next.Tangent(0))/2) < 0.26 {
			return true
		}
	}
	return false
}
