package plane_test

import (
	"math"
	"testing"

	"brimline/plane"

	"pgregory.net/rapid"
)

func TestFootByHand(t *testing.T) {
	p := plane.Polyline([]plane.Point{{}, {X: 4}, {X: 4, Y: 3}}, false)
	for _, c := range []struct {
		pt, at plane.Point
		along  float64
		right  float64
	}{
		{plane.Point{X: 1, Y: -2}, plane.Point{X: 1}, 1, 2},
		{plane.Point{X: 1, Y: 0.5}, plane.Point{X: 1}, 1, -0.5},
		{plane.Point{X: 5, Y: -1}, plane.Point{X: 4}, 4, math.Sqrt2},
		{plane.Point{X: 6, Y: 2}, plane.Point{X: 4, Y: 2}, 6, 2},
		{plane.Point{X: -3, Y: 4}, plane.Point{}, 0, -5},
		{plane.Point{X: 2}, plane.Point{X: 2}, 2, 0},
	} {
		f := p.Foot(c.pt)
		nearPoint(t, "foot", f.At, c.at, 1e-14)
		near(t, "along", f.Along, c.along, 1e-14)
		near(t, "right", f.Right, c.right, 1e-14)
	}
	if f := (plane.Path{}).Foot(plane.Point{}); f.Seg != -1 || !math.IsInf(f.Right, 1) {
		t.Errorf("empty path: %v", f)
	}
	if _, _, ok := (plane.Path{}).Place(1); ok {
		t.Error("a place on nothing")
	}
}

// Place and Foot undo each other, and a foot's distance is that of Distance.
func TestFootAndPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t)
		p.Closed = rapid.Bool().Draw(t, "closed")
		along := rapid.Float64Range(0.001, 0.999).Draw(t, "share") * p.Length()
		off := rapid.Float64Range(-0.05, 0.05).Draw(t, "off")
		seg, share, ok := p.Place(along)
		if !ok {
			t.Fatal("no place")
		}
		s := p.Segs[seg]
		at := s.At(share)
		f := p.Foot(at)
		near(t, "along", f.Along, along, 1e-9)
		near(t, "on it", f.Right, 0, 1e-12)
		q := at.Sub(s.Tangent(share).Left().Mul(off))
		f = p.Foot(q)
		near(t, "distance", math.Abs(f.Right), math.Abs(p.Distance(q)), 1e-12)
		p.Closed = true
		for _, round := range []float64{-2, 3} {
			seg, share, _ := p.Place(along + round*p.Length())
			nearPoint(t, "round again", p.Segs[seg].At(share), at, 1e-9)
		}
	})
}
