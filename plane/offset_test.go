package plane_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"brimline/internal/checks"
	"brimline/plane"

	"pgregory.net/rapid"
)

func offset(t rapid.TB, p plane.Path, d float64, c plane.Corners) plane.Parallel {
	t.Helper()
	r, err := p.Offset(d, c)
	if err != nil {
		t.Fatalf("offset by %g: %v", d, err)
	}
	sound(t, p, d, c, r)
	return r
}

// sound holds a parallel to what it promises: paths, no false loop, every place at d.
func sound(t rapid.TB, p plane.Path, d float64, c plane.Corners, r plane.Parallel) {
	t.Helper()
	beside := make([]bool, len(p.Segs))
	for k, q := range r.Paths {
		if err := q.Validate(); err != nil {
			t.Fatalf("offset by %g, path %d: %v", d, k, err)
		}
		if x := q.Crossings(); x != nil {
			t.Fatalf("offset by %g, path %d crosses itself: %v", d, k, x)
		}
		if len(r.Of[k]) != len(q.Segs) {
			t.Fatalf("path %d has %d segments and %d origins", k, len(q.Segs), len(r.Of[k]))
		}
		for i, s := range q.Segs {
			if of := r.Of[k][i]; of >= 0 {
				beside[of] = true
			} else if c == plane.MitredCorners {
				continue
			}
			_, _, foot := p.Nearest(s.At(0.5))
			near(t, "distance", foot.Dist(s.At(0.5)), math.Abs(d), 1e-7)
			if p.Closed && p.Contains(s.At(0.5)) != (d < 0) {
				t.Fatalf("offset by %g lies on the wrong side", d)
			}
		}
	}
	for i, b := range beside {
		if b == slices.Contains(r.Gone, i) {
			t.Fatalf("segment %d: beside it %v, gone %v", i, b, r.Gone)
		}
	}
}

func single(t rapid.TB, p plane.Path, d float64, c plane.Corners) plane.Path {
	t.Helper()
	r := offset(t, p, d, c)
	if len(r.Paths) != 1 {
		t.Fatalf("offset by %g gives %d paths", d, len(r.Paths))
	}
	return r.Paths[0]
}

func rectangle(w, h float64) plane.Path {
	return plane.Polyline([]plane.Point{{}, {X: w}, {X: w, Y: h}, {Y: h}}, true)
}

// P-01: Steiner's formula for convex outlines.
func TestPublishedConvexParallel(t *testing.T) {
	c := checks.Get(t, "P-01")
	side := c.Inputs.List("rectangle")
	out := single(t, rectangle(side[0], side[1]), c.Inputs.Number("d"), plane.RoundCorners)
	c.Compare("rect_perimeter", out.Length())
	c.Compare("rect_area", out.Area())
	out = single(t, plane.Polyline(pairs(c.Inputs.Rows("triangle")), true), c.Inputs.Number("d_triangle"), plane.RoundCorners)
	c.Compare("tri_perimeter", out.Length())
	c.Compare("tri_area", out.Area())
}

// signed is a distance to either side.
func signed(t *rapid.T) float64 {
	d := rapid.Float64Range(0.001, 1).Draw(t, "d")
	if rapid.Bool().Draw(t, "inward") {
		return -d
	}
	return d
}

// P-02: the same inward and outward for a smooth curve, an ellipse, here of arcs through three of its
// points each, close enough for the tolerance.
func TestPublishedSmoothParallel(t *testing.T) {
	c := checks.Get(t, "P-02")
	ab, d := c.Inputs.List("ellipse"), c.Inputs.List("d")
	p := ellipse(ab[0], ab[1], 400)
	out, in := single(t, p, d[0], plane.RoundCorners), single(t, p, d[1], plane.RoundCorners)
	c.Compare("perimeter_out", out.Length())
	c.Compare("area_out", out.Area())
	c.Compare("perimeter_in", in.Length())
	c.Compare("area_in", in.Area())
}

func ellipse(a, b float64, n int) plane.Path {
	at := func(k int) plane.Point {
		s, c := math.Sincos(math.Pi * float64(k) / float64(n))
		return plane.Point{X: a * c, Y: b * s}
	}
	p := plane.Path{Closed: true}
	for i := range n {
		p.Segs = append(p.Segs, plane.ArcThrough(at(2*i), at(2*i+1), at((2*i+2)%(2*n))))
	}
	return p
}

// Outward of a convex ring: P + 2πd and A + Pd + πd² (Steiner), once more for the ring of straights
// and arcs that it gives; and back inward from that smooth ring the first one.
func TestSteiner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t).Move(movement(t))
		d := rapid.Float64Range(0.001, 3).Draw(t, "d")
		hull := convex(p)
		out := single(t, hull, d, plane.RoundCorners)
		near(t, "perimeter", out.Length(), hull.Length()+2*math.Pi*d, 1e-6)
		near(t, "area", out.Area(), hull.Area()+hull.Length()*d+math.Pi*d*d, 1e-6)
		again := single(t, out, d, plane.RoundCorners)
		near(t, "area again", again.Area(), out.Area()+out.Length()*d+math.Pi*d*d, 1e-6)
		back := single(t, out, -d, plane.RoundCorners)
		near(t, "perimeter back", back.Length(), hull.Length(), 1e-6)
		near(t, "area back", back.Area(), hull.Area(), 1e-6)
	})
}

// convex is the ring of the corners of p that turn left, over and over, as straights.
func convex(p plane.Path) plane.Path {
	var pts []plane.Point
	for _, s := range p.Segs {
		pts = append(pts, s.A)
	}
	for again := true; again; {
		again = false
		for i := 0; i < len(pts) && len(pts) > 3; i++ {
			n := len(pts)
			a, b, c := pts[(i+n-1)%n], pts[i], pts[(i+1)%n]
			if b.Sub(a).Cross(c.Sub(b)) < 0.1 {
				pts, again = slices.Delete(pts, i, i+1), true
				break
			}
		}
	}
	return plane.Polyline(pts, true)
}

// Two steps outward are one; inward and out again leaves a ring that stays inside the first and
// touches it along every straight that is left.
func TestOffsetTwice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t).Move(movement(t))
		d := rapid.Float64Range(0.01, 0.6).Draw(t, "d")
		e := rapid.Float64Range(0.01, 0.6).Draw(t, "e")
		once := offset(t, p, d+e, plane.RoundCorners)
		twice := offset(t, offset(t, p, d, plane.RoundCorners).Paths[0], e, plane.RoundCorners)
		near(t, "area of the outer ring", twice.Paths[0].Area(), once.Paths[0].Area(), 1e-6)
		for _, in := range offset(t, p, -d, plane.RoundCorners).Paths {
			back := offset(t, in, d, plane.RoundCorners).Paths[0]
			if back.Area() > p.Area()+1e-6 {
				t.Fatalf("opened: area %g of %g", back.Area(), p.Area())
			}
			for _, s := range back.Segs {
				if far := p.Distance(s.At(0.5)); far > 1e-7 {
					t.Fatalf("opened: %g outside", far)
				}
			}
		}
	})
}

// A path run the other way has the same parallel, run the other way.
func TestOffsetReversed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t)
		d := signed(t)
		a, b := offset(t, p, d, plane.RoundCorners), offset(t, p.Reverse(), d, plane.RoundCorners)
		if len(a.Paths) != len(b.Paths) || len(a.Gone) != len(b.Gone) {
			t.Fatalf("%d paths and %v gone, reversed %d and %v", len(a.Paths), a.Gone, len(b.Paths), b.Gone)
		}
		for k := range a.Paths {
			near(t, "area", -b.Paths[k].Area(), a.Paths[k].Area(), 1e-7)
			near(t, "length", b.Paths[k].Length(), a.Paths[k].Length(), 1e-7)
		}
		for k, g := range a.Gone {
			if b.Gone[len(b.Gone)-1-k] != len(p.Segs)-1-g {
				t.Fatalf("gone %v, reversed %v", a.Gone, b.Gone)
			}
		}
	})
}

// Moved far away, the parallel moves along.
func TestOffsetMoved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t)
		d := signed(t)
		m := movement(t)
		m.T = m.T.Mul(100)
		a, b := offset(t, p, d, plane.RoundCorners), offset(t, p.Move(m), d, plane.RoundCorners)
		if len(a.Paths) != len(b.Paths) {
			t.Fatalf("%d paths, moved %d", len(a.Paths), len(b.Paths))
		}
		for k := range a.Paths {
			near(t, "area", b.Paths[k].Area(), a.Paths[k].Area(), 1e-7)
		}
	})
}

func TestOffsetSameTwice(t *testing.T) {
	p := kidney()
	a, b := offset(t, p, -0.4, plane.RoundCorners), offset(t, p, -0.4, plane.RoundCorners)
	if fmt.Sprint(a) != fmt.Sprint(b) {
		t.Error("two runs differ")
	}
}

// Arcs stay arcs about the same centre, and a ring away from every corner comes back exactly.
func TestArcsStayArcs(t *testing.T) {
	p := kidney()
	for _, d := range []float64{0.7, 0.3, -0.3, -0.9} {
		q := single(t, p, d, plane.RoundCorners)
		if len(q.Segs) != len(p.Segs) {
			t.Fatalf("offset by %g has %d segments", d, len(q.Segs))
		}
		near(t, "perimeter", q.Length(), p.Length()+2*math.Pi*d, 1e-9)
		near(t, "area", q.Area(), p.Area()+p.Length()*d+math.Pi*d*d, 1e-9)
		back := single(t, q, -d, plane.RoundCorners)
		for i, s := range p.Segs {
			nearPoint(t, "centre", q.Segs[i].Centre(), s.Centre(), 1e-9)
			nearPoint(t, "back again", back.Segs[i].A, s.A, 1e-9)
			near(t, "bulge", back.Segs[i].Bulge, s.Bulge, 1e-9)
		}
	}
}
