package plane_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/internal/oracle"
	"brimline/plane"
)

type ringQuestion struct {
	Points  [][2]float64 `json:"points"`
	Queries [][2]float64 `json:"queries"`
}

type ringAnswer struct {
	Area, Length float64
	Valid, CCW   bool
	Inside       []bool
	Distance     []float64
}

// 200 random outlines of straights and arcs, some of which cross themselves, flattened to
// 0.1 µm and given to shapely. Seed 11.
func TestRingsAgainstShapely(t *testing.T) {
	const rise = 1e-7
	r := rand.New(rand.NewPCG(11, 11))
	var rings []plane.Path
	var ask []ringQuestion
	for i := range 200 {
		p := randomOutline(r, i%4 == 3)
		var q ringQuestion
		for _, a := range p.Flatten(rise) {
			q.Points = append(q.Points, [2]float64{a.X, a.Y})
		}
		for range 10 {
			q.Queries = append(q.Queries, [2]float64{8*r.Float64() - 4, 8*r.Float64() - 4})
		}
		rings, ask = append(rings, p), append(ask, q)
	}
	var answers []ringAnswer
	oracle.Ask(t, "testdata/rings.py", []string{"shapely"}, ask, &answers)
	invalid := 0
	for i, p := range rings {
		a := answers[i]
		if crossed := len(p.Crossings()) > 0; crossed == a.Valid {
			t.Errorf("outline %d: crossings %v, shapely says valid %v", i, p.Crossings(), a.Valid)
		}
		if !a.Valid {
			invalid++
			continue
		}
		near(t, "length", p.Length(), a.Length, rise*p.Length())
		near(t, "area", math.Abs(p.Area()), a.Area, rise*p.Length())
		if (p.Area() > 0) != a.CCW {
			t.Errorf("outline %d: area %v, counter-clockwise %v", i, p.Area(), a.CCW)
		}
		for k, q := range ask[i].Queries {
			d := p.Distance(plane.Point{X: q[0], Y: q[1]})
			near(t, "distance", math.Abs(d), a.Distance[k], 2*rise)
			if math.Abs(d) > 2*rise && (d < 0) != a.Inside[k] {
				t.Errorf("outline %d: distance %v, inside %v", i, d, a.Inside[k])
			}
		}
	}
	if invalid < 20 || invalid > 100 {
		t.Errorf("%d of 200 outlines cross themselves: the test wants some of both", invalid)
	}
}

// randomOutline is a star of straights and arcs, either way round; a wild one has its corners
// out of order.
func randomOutline(r *rand.Rand, wild bool) plane.Path {
	n := 4 + r.IntN(8)
	var pts []plane.Point
	for i := range n {
		u := 2 * math.Pi * (float64(i) + 0.6*(r.Float64()-0.5)) / float64(n)
		pts = append(pts, plane.Point{X: 2 + 2*r.Float64()}.Turn(u))
	}
	if wild {
		k := r.IntN(n)
		pts[k], pts[(k+2)%n] = pts[(k+2)%n], pts[k]
	}
	p := plane.Polyline(pts, true)
	for i := range p.Segs {
		if r.IntN(3) > 0 {
			p.Segs[i].Bulge = -0.2 + 0.6*r.Float64()
		}
	}
	if r.IntN(2) == 0 {
		return p.Reverse()
	}
	return p
}
