package plane_test

import (
	"fmt"
	"math"
	"testing"

	"brimline/plane"
)

// Shapes whose parallels are known by hand.

func ell() plane.Path {
	return plane.Polyline([]plane.Point{{}, {X: 8}, {X: 8, Y: 3}, {X: 4, Y: 3}, {X: 4, Y: 7}, {Y: 7}}, true)
}

func TestEllByHand(t *testing.T) {
	q := math.Pi / 4 // area of a rounded corner over d²
	for _, c := range []struct {
		d            float64
		corners      plane.Corners
		area, length float64
	}{
		// Outward: five rounded or square corners; the hollow corner stays sharp.
		{0.5, plane.RoundCorners, 40 + 30*0.5 + (5*q-1)*0.25, 30 - 2*0.5 + 5*math.Pi/2*0.5},
		{0.5, plane.MitredCorners, 40 + 30*0.5 + 4*0.25, 30 + 8*0.5},
		// Inward: five sharp corners, the hollow one rounded or square.
		{-0.5, plane.RoundCorners, 40 - 30*0.5 + (5-q)*0.25, 30 - 10*0.5 + math.Pi/2*0.5},
		{-0.5, plane.MitredCorners, 40 - 30*0.5 + 4*0.25, 30 - 8*0.5},
	} {
		q := single(t, ell(), c.d, c.corners)
		near(t, fmt.Sprint(c.d, " area"), q.Area(), c.area, 1e-9)
		near(t, fmt.Sprint(c.d, " length"), q.Length(), c.length, 1e-9)
	}
}

func TestVanished(t *testing.T) {
	short := plane.Polyline([]plane.Point{{}, {X: 8}, {X: 8, Y: 4}, {X: 0.1, Y: 4}, {Y: 3.9}}, true) // a cut corner
	r := offset(t, short, -1, plane.RoundCorners)
	if len(r.Paths) != 1 || fmt.Sprint(r.Gone) != "[3]" {
		t.Errorf("cut corner: %d paths, gone %v", len(r.Paths), r.Gone)
	}
	near(t, "what is left", r.Paths[0].Area(), 6*2, 0.02)
	for _, d := range []float64{-2, -2.5, -100} {
		if r := offset(t, rectangle(8, 4), d, plane.RoundCorners); len(r.Paths) != 0 || len(r.Gone) != 4 {
			t.Errorf("a rectangle of 4 inward by %g: %v", d, r)
		}
	}
	// Corner arcs of radius 0.6 are gone at 0.6 and beyond, outward of a hollow arc likewise.
	pts := []plane.Point{{X: 0.6}, {X: 7.4}, {X: 8, Y: 0.6}, {X: 8, Y: 3.4}, {X: 7.4, Y: 4}, {X: 0.6, Y: 4}, {Y: 3.4}, {Y: 0.6}}
	rounded := tangentRing(pts, 0, math.Pi/2, 0, math.Pi/2, 0, math.Pi/2, 0, math.Pi/2)
	for _, d := range []float64{-0.6, -0.9} {
		r := offset(t, rounded, d, plane.RoundCorners)
		if fmt.Sprint(r.Gone) != "[1 3 5 7]" {
			t.Errorf("inward by %g: gone %v", d, r.Gone)
		}
		near(t, "area", r.Paths[0].Area(), (8+2*d)*(4+2*d), 1e-6)
	}
	if r := offset(t, kidney(), 1.6, plane.RoundCorners); fmt.Sprint(r.Gone) != "[2]" || len(r.Paths) != 1 {
		t.Errorf("kidney outward beyond its waist: %d paths, gone %v", len(r.Paths), r.Gone)
	}
}

// rooms are two squares of 4 joined by a corridor of 2 by 2.
func rooms() plane.Path {
	return plane.Polyline([]plane.Point{{}, {X: 4}, {X: 4, Y: 1}, {X: 6, Y: 1}, {X: 6}, {X: 10}, {X: 10, Y: 4}, {X: 6, Y: 4}, {X: 6, Y: 3}, {X: 4, Y: 3}, {X: 4, Y: 4}, {Y: 4}}, true)
}

func TestSplitAndClosed(t *testing.T) {
	// Beyond half the corridor's width, and at that width itself, the rooms part.
	for _, d := range []float64{-1, -1.2} {
		for _, c := range []plane.Corners{plane.RoundCorners, plane.MitredCorners} {
			if r := offset(t, rooms(), d, c); len(r.Paths) != 2 {
				t.Errorf("rooms inward by %g, corners %d: %d paths", d, c, len(r.Paths))
			}
		}
	}
	single(t, rooms(), -0.999, plane.RoundCorners)
	// A court open by a gate of 1: outward past 0.5 the gate closes and leaves a ring round the court.
	court := plane.Polyline([]plane.Point{{}, {X: 10}, {X: 10, Y: 10}, {X: 5.5, Y: 10}, {X: 5.5, Y: 9}, {X: 9, Y: 9}, {X: 9, Y: 1}, {X: 1, Y: 1}, {X: 1, Y: 9}, {X: 4.5, Y: 9}, {X: 4.5, Y: 10}, {Y: 10}}, true)
	single(t, court, 0.4, plane.RoundCorners)
	for _, d := range []float64{0.5, 0.6} {
		r := offset(t, court, d, plane.RoundCorners)
		if len(r.Paths) != 2 || r.Paths[0].Area() < 100 || r.Paths[1].Area() > 0 {
			t.Fatalf("court outward by %g: %d paths", d, len(r.Paths))
		}
	}
}

// Outlines that touch themselves: at a corner, along a slit, along a spike.
func TestSelfTouching(t *testing.T) {
	bow := plane.Polyline([]plane.Point{{}, {X: 2, Y: 2}, {X: 4}, {X: 4, Y: 4}, {X: 2, Y: 2}, {Y: 4}}, true)
	if r := offset(t, bow, -0.3, plane.RoundCorners); len(r.Paths) != 2 {
		t.Errorf("two triangles that touch, inward: %d paths", len(r.Paths))
	}
	single(t, bow, 0.3, plane.RoundCorners)
	spike := plane.Polyline([]plane.Point{{}, {X: 4}, {X: 4, Y: 2}, {X: 7, Y: 2}, {X: 4, Y: 2}, {X: 4, Y: 4}, {Y: 4}}, true)
	out := single(t, spike, 0.5, plane.RoundCorners)
	near(t, "spike outward", out.Area(), 16+16*0.5+math.Pi/4+2.5*1+math.Pi/8, 1e-9)
	near(t, "spike inward", single(t, spike, -0.5, plane.RoundCorners).Area(), 9, 1e-9)
	slit := plane.Polyline([]plane.Point{{}, {X: 4}, {X: 4, Y: 2}, {X: 2, Y: 2}, {X: 4, Y: 2}, {X: 4, Y: 4}, {Y: 4}}, true)
	near(t, "slit inward", single(t, slit, -0.5, plane.RoundCorners).Area(), 9-1.5*1-math.Pi/8, 1e-9)
	near(t, "slit outward", single(t, slit, 0.5, plane.RoundCorners).Area(), 16+16*0.5+math.Pi/4, 1e-9)
}

func TestOpenPath(t *testing.T) {
	line := plane.Polyline([]plane.Point{{}, {X: 4}, {X: 4, Y: 3}}, false)
	right, left := single(t, line, 1, plane.RoundCorners), single(t, line, -1, plane.RoundCorners)
	near(t, "right", right.Length(), 7+math.Pi/2, 1e-9)
	near(t, "left", left.Length(), 3+2, 1e-9)
	nearPoint(t, "begins right", right.Segs[0].A, plane.Point{Y: -1}, 1e-12)
	nearPoint(t, "begins left", left.Segs[0].A, plane.Point{Y: 1}, 1e-12)
	near(t, "mitred", single(t, line, 1, plane.MitredCorners).Length(), 9, 1e-9)
	// A hook comes within 1 of its own start: the parallel is cut there.
	hook := plane.Polyline([]plane.Point{{}, {X: 4}, {X: 4, Y: 1.5}, {X: -2, Y: 1.5}}, false)
	r := offset(t, hook, -1, plane.RoundCorners)
	if len(r.Paths) != 1 || len(r.Gone) != 2 {
		t.Errorf("hook: %d paths, gone %v", len(r.Paths), r.Gone)
	}
}

func TestMitreLimit(t *testing.T) {
	thin := plane.Polyline([]plane.Point{{}, {X: 10, Y: -1}, {X: 10, Y: 1}}, true) // 11.4° at the tip
	r := offset(t, thin, 0.5, plane.MitredCorners)
	box := r.Paths[0].Bounds()
	near(t, "the tip is rounded", box.Min.X, -0.5, 1e-9)
	near(t, "the others are not", box.Max.X, 10.5, 1e-9)
}

func TestOffsetRefused(t *testing.T) {
	for what, c := range map[string]struct {
		p plane.Path
		d float64
	}{
		"empty":          {plane.Path{}, 1},
		"infinite":       {rectangle(1, 1), math.Inf(1)},
		"no number":      {rectangle(1, 1), math.NaN()},
		"nothing inside": {plane.Polyline([]plane.Point{{}, {X: 1}}, true), 1},
		"a gap":          {plane.Path{Segs: []plane.Segment{{B: plane.Point{X: 1}}, {A: plane.Point{X: 2}, B: plane.Point{X: 3}}}}, 1},
	} {
		if r, err := c.p.Offset(c.d, plane.RoundCorners); err == nil {
			t.Errorf("%s: %v", what, r)
		}
	}
	r, err := ell().Offset(0, plane.RoundCorners)
	if err != nil || fmt.Sprint(r.Paths[0]) != fmt.Sprint(ell()) || r.Gone != nil {
		t.Errorf("no distance: %v, %v", r, err)
	}
}

// kidney is four tangent arcs: lobes of 2.4 and 1.8 with centres 5 apart, back 6.1, waist 1.5.
func kidney() plane.Path {
	a, b := plane.Point{}, plane.Point{X: 5}
	back, _, _ := plane.MeetCircles(a, 6.1-2.4, b, 6.1-1.8)
	waist, _, _ := plane.MeetCircles(a, 2.4+1.5, b, 1.8+1.5)
	pts := []plane.Point{
		back.Add(a.Sub(back).Unit().Mul(6.1)), back.Add(b.Sub(back).Unit().Mul(6.1)),
		waist.Add(b.Sub(waist).Unit().Mul(1.5)), waist.Add(a.Sub(waist).Unit().Mul(1.5)),
	}
	centres, signs := []plane.Point{back, b, waist, a}, []float64{1, 1, -1, 1}
	p := plane.Polyline(pts, true)
	for i, s := range p.Segs {
		w := plane.Between(s.A.Sub(centres[i]), s.B.Sub(centres[i]))
		if w*signs[i] < 0 {
			w += signs[i] * 2 * math.Pi
		}
		p.Segs[i].Bulge = math.Tan(w / 4)
	}
	return p
}
