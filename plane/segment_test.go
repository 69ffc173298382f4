package plane_test

import (
	"math"
	"testing"

	"brimline/plane"

	"pgregory.net/rapid"
)

// A segment is compared with the circle that its definition gives: centre and radius.
func TestSegmentIsItsCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segment(t, "s")
		if math.Abs(s.Bulge) < 1e-3 {
			return
		}
		c, r := s.Centre(), math.Abs(s.Radius())
		near(t, "length", s.Length(), r*math.Abs(s.Sweep()), 1e-9*r)
		for _, f := range []float64{0, 0.2, 0.5, 0.9, 1} {
			p := s.At(f)
			near(t, "on the circle", p.Dist(c), r, 1e-10*(1+r))
			nearPoint(t, "swept", p, c.Add(s.A.Sub(c).Turn(f*s.Sweep())), 1e-9*(1+r))
			near(t, "tangent", s.Tangent(f).Dot(p.Sub(c))/r, 0, 1e-9)
		}
		if math.Signbit(s.Radius()) != math.Signbit(s.Bulge) || s.Tangent(0).Left().Dot(c.Sub(s.A))*s.Bulge < 0 {
			t.Fatal("the centre of a left turn is on the left")
		}
	})
}

// As an arc flattens every figure goes to that of the straight, to first order in the rise.
func TestFlatArc(t *testing.T) {
	a, b := plane.Point{X: 3, Y: -2}, plane.Point{X: 11, Y: 4}
	for _, bulge := range []float64{1e-4, 1e-7, 1e-10, 1e-13, 1e-300, 0} {
		s := plane.Segment{A: a, B: b, Bulge: bulge}
		near(t, "length", s.Length(), 10*(1+2*bulge*bulge/3), 1e-14)
		near(t, "rise", s.Sagitta(), 5*bulge, 1e-16)
		nearPoint(t, "middle", s.At(0.5), plane.Lerp(a, b, 0.5).Sub(b.Sub(a).Unit().Left().Mul(5*bulge)), 2e-15)
		// The area between chord and flat arc is 2/3 of chord times rise (Archimedes).
		near(t, "area", s.SignedArea(), a.Cross(b)/2+2.0/3*10*5*bulge, 1e-12+40*math.Pow(bulge, 3))
		q, share := s.Nearest(plane.Point{X: 7 - 0.6, Y: 1 + 0.8})
		near(t, "foot", share, 0.5, 1e-12)
		nearPoint(t, "foot", q, s.At(0.5), 1e-12)
	}
	if s := (plane.Segment{A: a, B: b}); !s.Straight() || !math.IsInf(s.Radius(), 1) || s.Curvature() != 0 {
		t.Error("a straight has no curvature")
	}
}

func TestSegmentLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segment(t, "s")
		size := 1 + math.Max(s.Bounds().Diagonal(), s.Length())
		m := movement(t)
		near(t, "length moved", moved(s, m).Length(), s.Length(), 1e-11*size)
		r := s.Reverse()
		near(t, "area reversed", r.SignedArea(), -s.SignedArea(), 1e-11*size*size)
		nearPoint(t, "reversed", r.At(0.3), s.At(0.7), 1e-10*size)
		nearPoint(t, "tangent reversed", r.Tangent(0.3), s.Tangent(0.7).Mul(-1), 1e-12)
		mirror := plane.Segment{A: plane.Point{X: -s.A.X, Y: s.A.Y}, B: plane.Point{X: -s.B.X, Y: s.B.Y}, Bulge: -s.Bulge}
		near(t, "area mirrored", mirror.SignedArea(), -s.SignedArea(), 1e-11*size*size)
		big := plane.Segment{A: s.A.Mul(3), B: s.B.Mul(3), Bulge: s.Bulge}
		near(t, "area scaled", big.SignedArea(), 9*s.SignedArea(), 1e-10*size*size)

		cut := rapid.Float64Range(0.01, 0.99).Draw(t, "cut")
		u, v := s.Part(0, cut), s.Part(cut, 1)
		near(t, "length cut", u.Length()+v.Length(), s.Length(), 1e-9*size)
		near(t, "area cut", u.SignedArea()+v.SignedArea(), s.SignedArea(), 1e-9*size*size)
		near(t, "share of length", u.Length(), cut*s.Length(), 1e-9*size)
		nearPoint(t, "smooth at the cut", u.Tangent(1), v.Tangent(0), 1e-6)
	})
}

func TestTangentByDifference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segment(t, "s")
		f := rapid.Float64Range(0.1, 0.9).Draw(t, "at")
		const h = 1e-5
		d := s.At(f + h).Sub(s.At(f - h)).Mul(1 / (2 * h * s.Length()))
		nearPoint(t, "tangent", d, s.Tangent(f), 1e-6)
	})
}

// The area is compared with the trapezoidal sum of ½(x dy − y dx) over many points.
func TestSignedAreaByQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segment(t, "s")
		const n = 2000
		sum := 0.0
		for i := range n {
			sum += s.At(float64(i)/n).Cross(s.At(float64(i+1)/n)) / 2
		}
		r := s.Length() / (2 * math.Pi)
		near(t, "area", s.SignedArea(), sum, 1e-9+30*r*r*math.Pow(2*math.Pi/n, 2))
	})
}

func TestNearestBySearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, p := segment(t, "s"), point(t, "p")
		q, f := s.Nearest(p)
		nearPoint(t, "the share gives the foot", s.At(f), q, 1e-9*(1+s.Length()))
		best := math.Inf(1)
		for i := range 401 {
			best = math.Min(best, s.At(float64(i)/400).Dist(p))
		}
		if d := q.Dist(p); d > best+1e-10 || d < best-s.Length()/800 {
			t.Fatalf("nearest at %v, by search %v", d, best)
		}
	})
}

func TestBoundsBySearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segment(t, "s")
		var pts []plane.Point
		for i := range 1001 {
			pts = append(pts, s.At(float64(i)/1000))
		}
		want, got := plane.BoundsOf(pts...), s.Bounds()
		slack := 1e-12 + s.Length()*s.Length()*math.Abs(s.Curvature())/8e6*1.1 // rise of a chord
		for _, c := range [][2]float64{{want.Min.X, got.Min.X}, {want.Min.Y, got.Min.Y}, {got.Max.X, want.Max.X}, {got.Max.Y, want.Max.Y}} {
			near(t, "side", c[0]-c[1], slack/2, slack/2+1e-10)
		}
	})
}

func TestArcMakers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segment(t, "s")
		f := rapid.Float64Range(0.05, 0.95).Draw(t, "middle")
		near(t, "through", plane.ArcThrough(s.A, s.At(f), s.B).Sweep(), s.Sweep(), 1e-7)
		near(t, "tangent", plane.ArcTangent(s.A, s.Tangent(0).Mul(7), s.B).Sweep(), s.Sweep(), 1e-9)
	})
	back := plane.ArcTangent(plane.Point{}, plane.Point{X: -1}, plane.Point{X: 1})
	if w := back.Sweep(); !(w > 6.283 && w < 2*math.Pi) {
		t.Errorf("straight away: sweep %v", w)
	}
	if s := plane.ArcThrough(plane.Point{}, plane.Point{}, plane.Point{X: 1}); s.Bulge != 0 {
		t.Errorf("middle at the start: %v", s)
	}
}

func TestNearestFromTheCentre(t *testing.T) {
	s := plane.Segment{A: plane.Point{X: 1}, B: plane.Point{X: -1}, Bulge: 1}
	q, f := s.Nearest(plane.Point{})
	nearPoint(t, "middle", q, plane.Point{Y: 1}, 1e-12)
	near(t, "share", f, 0.5, 1e-12)
	if q, f := (plane.Segment{A: plane.Point{X: 2}, B: plane.Point{X: 2}}).Nearest(plane.Point{}); q.X != 2 || f != 0 {
		t.Errorf("a segment without length: %v %v", q, f)
	}
}
