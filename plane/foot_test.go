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

// Beside the middle of a line nothing is past its ends; beyond an end it is so by the way along it.
func TestFootPastTheEnds(t *testing.T) {
	line := plane.Path{Segs: []plane.Segment{{B: plane.Point{X: 4}}, {A: plane.Point{X: 4}, B: plane.Point{X: 6, Y: 2}, Bulge: math.Tan(math.Pi / 8)}}}
	for _, c := range []struct{ x, y, past float64 }{
		{2, 1, 0}, {-1.5, 0.7, 1.5}, {0, -3, 0}, {6, 3, 1}, {7, 2.25, 0.25}, {4, -1, 0},
	} {
		pt := plane.Point{X: c.x, Y: c.y}
		near(t, "past", line.Foot(pt).Past, c.past, 1e-12)
		closed := line
		closed.Closed = true
		near(t, "past a ring", closed.Foot(pt).Past, 0, 0)
	}
}

func TestWayBetween(t *testing.T) {
	r := rectangle(8, 4)
	ahead, round := r.Between(plane.Point{X: 2, Y: -1}, plane.Point{X: 9, Y: 3})
	near(t, "ahead", ahead, 6+3, 1e-12)
	near(t, "round", round, 24, 1e-12)
	back, _ := r.Between(plane.Point{X: 9, Y: 3}, plane.Point{X: 2, Y: -1})
	near(t, "both ways", ahead+back, round, 1e-12)
	r.Closed = false
	ahead, round = r.Between(plane.Point{X: 9, Y: 3}, plane.Point{X: 2, Y: -1})
	near(t, "back on an open path", ahead, -9, 1e-12)
	near(t, "no way round", round, 0, 0)
}
