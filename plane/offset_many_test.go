package plane_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/plane"

	"pgregory.net/rapid"
)

// Random outlines inward and outward by distances that close gaps and eat arcs: every ring sound,
// and what Steiner says of each that has no part of the other side. Seed 13; 10,000 in a full run.
func TestManyOutlines(t *testing.T) {
	n := 10000
	if testing.Short() {
		n = 500
	}
	r := rand.New(rand.NewPCG(13, 13))
	for i := range n {
		p := randomOutline(r, false)
		if i%10 == 9 {
			p = wavy(r, 100, 0.05)
		}
		if p.Crossings() != nil {
			continue
		}
		d := math.Exp(math.Log(0.005) + r.Float64()*math.Log(300))
		corners := plane.Corners(i % 2)
		for _, side := range []float64{d, -d} {
			offset(t, p, side, corners)
		}
	}
}

// wavy is a ring of n straights about a circle of radius 4 with corners off it by up to noise.
func wavy(r *rand.Rand, n int, noise float64) plane.Path {
	var pts []plane.Point
	for i := range n {
		pts = append(pts, plane.Point{X: 4 + noise*(2*r.Float64()-1)}.Turn(2*math.Pi*float64(i)/float64(n)))
	}
	return plane.Polyline(pts, true)
}

// Grids make what random numbers never do: straights in line, parallels that coincide, arcs that
// shrink to a point, many boundaries through one place.
func TestGridOutlines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := gridRing(t)
		d := float64(rapid.IntRange(1, 12).Draw(t, "d")) / 4
		corners := plane.Corners(rapid.IntRange(0, 1).Draw(t, "corners"))
		for _, side := range []float64{d, -d} {
			r, err := p.Offset(side, corners)
			if err != nil {
				t.Fatal(err)
			}
			for _, q := range r.Paths {
				if err := q.Validate(); err != nil {
					t.Fatal(err)
				}
				if x := through(q); x != nil {
					t.Fatalf("by %g it crosses itself: %v", side, x)
				}
			}
		}
	})
}

// through are the crossings that are more than a touch: of two segments away from the ends of both,
// and not along each other.
func through(p plane.Path) []plane.Crossing {
	var out []plane.Crossing
	for _, c := range p.Crossings() {
		a, b := p.Segs[c.I], p.Segs[c.J]
		_, s := a.Nearest(c.At)
		_, u := b.Nearest(c.At)
		atEnd := math.Min(math.Min(s, 1-s), math.Min(u, 1-u)) < 1e-6
		if !atEnd && math.Abs(a.Tangent(s).Cross(b.Tangent(u))) > 1e-4 {
			out = append(out, c)
		}
	}
	return out
}

// gridRing is the outline of columns of whole heights side by side, some corners cut by an arc.
func gridRing(t *rapid.T) plane.Path {
	n := rapid.IntRange(1, 6).Draw(t, "columns")
	var low, high []plane.Point
	for i := range n {
		x := float64(2 * i)
		bottom := float64(rapid.IntRange(-3, -1).Draw(t, "low"))
		top := float64(rapid.IntRange(1, 3).Draw(t, "high"))
		low = append(low, plane.Point{X: x, Y: bottom}, plane.Point{X: x + 2, Y: bottom})
		high = append(high, plane.Point{X: x, Y: top}, plane.Point{X: x + 2, Y: top})
	}
	var pts []plane.Point
	add := func(q plane.Point) {
		if len(pts) == 0 || pts[len(pts)-1] != q {
			pts = append(pts, q)
		}
	}
	for _, q := range low {
		add(q)
	}
	for i := len(high) - 1; i >= 0; i-- {
		add(high[i])
	}
	p := plane.Polyline(pts, true)
	for i := range p.Segs {
		if s := p.Segs[i]; s.A.Y == s.B.Y && rapid.IntRange(0, 4).Draw(t, "arc") == 0 {
			p.Segs[i].Bulge = []float64{0.25, 0.5, 1}[rapid.IntRange(0, 2).Draw(t, "bulge")]
		}
	}
	return p
}

// Whatever the numbers, no crash, and nothing but numbers comes out.
func FuzzOffset(f *testing.F) {
	f.Add([]byte{0, 0, 0, 40, 0, 100, 40, 30, 0, 0, 30, 200}, 0.3)
	f.Add([]byte{0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 0, 0, 10, 0, 0}, -5.0)
	f.Add([]byte{9, 9, 9}, 1e300)
	f.Fuzz(func(t *testing.T, src []byte, d float64) {
		p := plane.Path{Closed: len(src)%2 == 0}
		var pts []plane.Point
		for i := 0; i+2 < len(src); i += 3 {
			pts = append(pts, plane.Point{X: float64(src[i]) / 8, Y: float64(src[i+1]) / 8})
		}
		p.Segs = plane.Polyline(pts, p.Closed).Segs
		for i := range p.Segs {
			p.Segs[i].Bulge = float64(int8(src[3*i+2])) / 64
		}
		for _, c := range []plane.Corners{plane.RoundCorners, plane.MitredCorners} {
			r, err := p.Offset(d, c)
			if err != nil {
				continue
			}
			for _, q := range r.Paths {
				if err := q.Validate(); err != nil {
					t.Fatal(err)
				}
			}
		}
	})
}

func benchmarkOffset(b *testing.B, p plane.Path, d float64) {
	for b.Loop() {
		if _, err := p.Offset(d, plane.RoundCorners); err != nil {
			b.Fatal(err)
		}
	}
}

// oval is an ellipse as 2,000 straights.
func oval() plane.Path {
	p := ellipse(5, 3, 2000)
	for i := range p.Segs {
		p.Segs[i].Bulge = 0
	}
	return p
}

func BenchmarkOffsetSmooth2000(b *testing.B) { benchmarkOffset(b, oval(), -0.3) }
func BenchmarkOffsetArcs2000(b *testing.B)   { benchmarkOffset(b, ellipse(5, 3, 2000), -0.3) }
func BenchmarkOffsetNoise2000(b *testing.B) {
	benchmarkOffset(b, wavy(rand.New(rand.NewPCG(14, 14)), 2000, 0.005), -0.3)
}
