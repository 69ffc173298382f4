package mesh

import (
	"math"

	"brimline/plane"
)

// Slope is how steep a surface is at a place.
type Slope struct {
	Rise     float64     // rise over level length, 0 or more
	Uphill   plane.Point // the direction of the rise, of length 1; zero where level
	Triangle int         // number into Triangles
	At       plane.Point // the middle of that triangle
}

// SlopeOf is the slope of triangle t. One that has no area to speak of, so that its slope is no
// number, is level.
func (s *Surface) SlopeOf(t int) Slope {
	a, b, c := s.corners(t)
	twice := 2 * area(a, b, c)
	g := plane.Point{
		X: ((b.Z-a.Z)*(c.Y-a.Y) - (c.Z-a.Z)*(b.Y-a.Y)) / twice,
		Y: ((c.Z-a.Z)*(b.X-a.X) - (b.Z-a.Z)*(c.X-a.X)) / twice,
	}
	if !g.Finite() {
		g = plane.Point{}
	}
	at := a.Plan().Add(b.Plan()).Add(c.Plan()).Mul(1.0 / 3)
	return Slope{Rise: g.Len(), Uphill: g.Unit(), Triangle: t, At: at}
}

// Steepest is the steepest slope among the triangles that are nowhere narrower than width
// (metres; their least height in plan): in a thin one a small error of a height makes a cliff. False
// where there is no such triangle.
func (s *Surface) Steepest(width float64) (Slope, bool) {
	best, found := Slope{}, false
	for t := range s.Triangles {
		if s.leastHeight(t) < width {
			continue
		}
		if g := s.SlopeOf(t); !found || g.Rise > best.Rise {
			best, found = g, true
		}
	}
	return best, found
}

// leastHeight is the height of triangle t in plan over its longest side.
func (s *Surface) leastHeight(t int) float64 {
	a, b, c := s.corners(t)
	p, q, r := a.Plan(), b.Plan(), c.Plan()
	return 2 * area(a, b, c) / math.Max(p.Dist(q), math.Max(q.Dist(r), r.Dist(p)))
}
