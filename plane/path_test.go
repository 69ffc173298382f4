package plane_test

import (
	"math"
	"testing"

	"brimline/plane"

	"pgregory.net/rapid"
)

func TestRingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, m := ring(t), movement(t)
		if err := p.Validate(); err != nil {
			t.Fatal(err)
		}
		area, length := p.Area(), p.Length()
		if area <= 0 {
			t.Fatalf("counter-clockwise ring has area %v", area)
		}
		far := m.Then(plane.Turned(0, plane.Point{X: 1e5, Y: -3e5}))
		near(t, "area moved", p.Move(m).Area(), area, 1e-11)
		near(t, "area far away", p.Move(far).Area(), area, 1e-7)
		near(t, "length moved", p.Move(m).Length(), length, 1e-12)
		near(t, "area reversed", p.Reverse().Area(), -area, 1e-12)
		near(t, "length reversed", p.Reverse().Length(), length, 1e-12)
		near(t, "area open", plane.Path{Segs: p.Segs}.Area(), 0, 0)
		sum := 0.0
		for _, s := range p.Segs {
			sum += s.SignedArea()
		}
		near(t, "pieces add up", sum, area, 1e-11)

		i := rapid.IntRange(0, len(p.Segs)-1).Draw(t, "cut")
		s := p.Segs[i]
		q := plane.Path{Closed: true}
		q.Segs = append(append(append(q.Segs, p.Segs[:i]...), s.Part(0, 0.37), s.Part(0.37, 1)), p.Segs[i+1:]...)
		near(t, "area with a segment split", q.Area(), area, 1e-12)
		near(t, "length with a segment split", q.Length(), length, 1e-12)
	})
}

func TestFlatten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t)
		const rise = 1e-4
		pts := p.Flatten(rise)
		near(t, "area", plane.PolygonArea(pts), p.Area(), rise*p.Length())
		for i, a := range pts {
			q := plane.Lerp(a, pts[(i+1)%len(pts)], 0.5)
			if d := math.Abs(p.Distance(q)); d > rise*(1+1e-9) {
				t.Fatalf("a chord leaves the path by %v", d)
			}
			near(t, "on the path", p.Distance(a), 0, 1e-12)
		}
	})
	open := plane.Path{Segs: []plane.Segment{{A: plane.Point{X: 1}, B: plane.Point{X: -1}, Bulge: 1}}}
	if pts := open.Flatten(0.3); len(pts) != 3 || pts[0].X != 1 || pts[2].X != -1 {
		t.Errorf("half circle of radius 1 to 0.3 m: %v", pts)
	}
	if pts := open.Flatten(0); len(pts) < 30 {
		t.Errorf("no sagitta counts as 1 mm: %d points", len(pts))
	}
}

// Inside and outside are compared with the even-odd count of a fine polygon.
func TestContainsByPolygon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ring(t)
		pts := p.Flatten(1e-5)
		q := point(t, "q").Mul(0.6)
		if _, _, on := p.Nearest(q); on.Dist(q) < 1e-4 {
			return
		}
		in := false
		for i, a := range pts {
			b := pts[(i+1)%len(pts)]
			if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				in = !in
			}
		}
		if p.Contains(q) != in || p.Reverse().Contains(q) != in {
			t.Fatalf("contains %v, polygon says %v", p.Contains(q), in)
		}
		if d := p.Distance(q); (d < 0) != in {
			t.Fatalf("distance %v, inside %v", d, in)
		}
		if w := p.Reverse().Winding(q); in && w != -1 {
			t.Fatalf("clockwise ring winds %d times", w)
		}
	})
}

// Places level with corners and with the ends of arcs, where counting rays goes wrong.
func TestContainsLevelWithCorners(t *testing.T) {
	square := plane.Polyline([]plane.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 2}, {X: 0, Y: 2}}, true)
	disc := plane.Path{Closed: true, Segs: []plane.Segment{
		{A: plane.Point{X: 1}, B: plane.Point{X: -1}, Bulge: 1}, {A: plane.Point{X: -1}, B: plane.Point{X: 1}, Bulge: 1},
	}}
	for _, c := range []struct {
		p    plane.Path
		x, y float64
		want bool
	}{
		{square, -1, 0, false}, {square, -1, 2, false}, {square, 3, 2, false}, {square, 1, 1, true}, {square, 1, 2.5, false},
		{disc, 0, 0, true}, {disc, 0.5, 0, true}, {disc, -0.5, 0, true}, {disc, -2, 0, false}, {disc, 2, 0, false},
		{disc, 0, 0.999, true}, {disc, -0.9, 0.9, false}, {disc, -2, 1, false}, {disc, 0, -1.001, false},
	} {
		if got := c.p.Contains(plane.Point{X: c.x, Y: c.y}); got != c.want {
			t.Errorf("(%v, %v): %v", c.x, c.y, got)
		}
	}
	if (plane.Path{Segs: square.Segs}).Contains(plane.Point{X: 1, Y: 1}) {
		t.Error("an open path contains nothing")
	}
}

func TestValidate(t *testing.T) {
	good := plane.Polyline([]plane.Point{{}, {X: 1}, {X: 1, Y: 1}}, true)
	if err := good.Validate(); err != nil {
		t.Fatal(err)
	}
	change := func(f func([]plane.Segment)) plane.Path {
		p := plane.Path{Closed: true, Segs: append([]plane.Segment(nil), good.Segs...)}
		f(p.Segs)
		return p
	}
	for name, p := range map[string]plane.Path{
		"empty":      {},
		"not finite": change(func(s []plane.Segment) { s[1].Bulge = math.NaN() }),
		"infinite":   change(func(s []plane.Segment) { s[0].A.X = math.Inf(1) }),
		"no length":  change(func(s []plane.Segment) { s[1].A = s[1].B }),
		"gap":        change(func(s []plane.Segment) { s[1].A.X += 1e-6 }),
		"not back":   change(func(s []plane.Segment) { s[2].B.X -= 1e-6 }),
	} {
		if p.Validate() == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestEmptyPath(t *testing.T) {
	var p plane.Path
	if seg, _, _ := p.Nearest(plane.Point{}); seg != -1 || !math.IsInf(p.Distance(plane.Point{}), 1) || !p.Bounds().Empty() || p.Bounds().Diagonal() != 0 {
		t.Error("an empty path is nowhere")
	}
	if p.Length() != 0 || p.Area() != 0 || p.Flatten(1) != nil || p.Crossings() != nil {
		t.Error("an empty path has no size")
	}
}
