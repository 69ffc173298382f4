package plane_test

import (
	"math"
	"testing"

	"brimline/plane"

	"pgregory.net/rapid"
)

func TestMeetCircles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, p := point(t, "a"), point(t, "b"), point(t, "p")
		d := a.Dist(b)
		if d < 0.1 {
			return
		}
		ra, rb := p.Dist(a), p.Dist(b)
		left, right, gap := plane.MeetCircles(a, ra, b, rb)
		if gap != 0 && math.Abs(gap) > 1e-12 {
			t.Fatalf("circles through %v miss by %v", p, gap)
		}
		if b.Sub(a).Cross(left.Sub(a)) < -1e-9 || b.Sub(a).Cross(right.Sub(a)) > 1e-9 {
			t.Fatal("left is not left")
		}
		// Where p is almost on ab its height is only known to √rounding.
		near(t, "one of them is p", math.Min(left.Dist(p), right.Dist(p)), 0, 3e-7)
		for _, q := range []plane.Point{left, right} {
			near(t, "radius a", q.Dist(a), ra, 1e-12*(1+ra/d*(1+ra)))
		}
	})
}

func TestCirclesThatMiss(t *testing.T) {
	a, b := plane.Point{X: 1}, plane.Point{X: 5}
	for _, c := range []struct{ ra, rb, x, gap float64 }{
		{1, 2, 2.5, 1},   // apart: 2 … 3
		{7, 2, 7.5, -1},  // b inside: 7 … 8
		{1, 6, -0.5, -1}, // a inside: −1 … 0
		{1, 3, 2, 0},     // touching from outside
		{6, 2, 7, 0},     // touching from inside
		{0, 4, 1, 0},     // a point on a circle
		{0, 0, 3, 4},     // two points
	} {
		l, r, gap := plane.MeetCircles(a, c.ra, b, c.rb)
		near(t, "gap", gap, c.gap, 0)
		nearPoint(t, "left", l, plane.Point{X: c.x}, 0)
		nearPoint(t, "right", r, plane.Point{X: c.x}, 0)
	}
	if l, r, gap := plane.MeetCircles(a, 2, a, 2); gap != 0 || l.Dist(a) != 2 || r.Dist(a) != 2 || l.Y <= r.Y {
		t.Errorf("the same circle twice: %v %v %v", l, r, gap)
	}
	if _, _, gap := plane.MeetCircles(a, 2, a, 5); gap != -3 {
		t.Errorf("about one centre: gap %v", gap)
	}
}

func TestMeetLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, a, c := point(t, "p"), point(t, "a"), point(t, "c")
		u, v := p.Sub(a), p.Sub(c)
		if math.Abs(u.Cross(v)) < 0.01 {
			return
		}
		q, ok := plane.MeetLines(a, a.Add(u.Mul(2)), c, c.Sub(v))
		if !ok {
			t.Fatal("called parallel")
		}
		nearPoint(t, "meeting", q, p, 1e-9)
	})
	o, x := plane.Point{}, plane.Point{X: 1}
	if _, ok := plane.MeetLines(o, x, plane.Point{Y: 1}, plane.Point{X: 7, Y: 1}); ok {
		t.Error("parallels meet")
	}
	if _, ok := plane.MeetLines(o, x, x, x); ok {
		t.Error("a point has no direction")
	}
}

func TestMeetLineCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := point(t, "a"), point(t, "b")
		c := plane.Circle{Centre: point(t, "c"), R: rapid.Float64Range(0, 5).Draw(t, "r")}
		d := b.Sub(a)
		if d.Len() < 0.1 {
			return
		}
		first, last, gap := plane.MeetLineCircle(a, b, c)
		off := math.Abs(d.Unit().Cross(c.Centre.Sub(a)))
		near(t, "gap", gap, math.Max(0, off-c.R), 1e-12)
		if gap > 0 {
			nearPoint(t, "midway", first, last, 0)
			near(t, "from the circle", first.Dist(c.Centre)-c.R, gap/2, 1e-12)
			near(t, "from the line", math.Abs(d.Unit().Cross(first.Sub(a))), gap/2, 1e-12)
			return
		}
		for _, q := range []plane.Point{first, last} {
			near(t, "on the circle", q.Dist(c.Centre), c.R, 1e-11)
			near(t, "on the line", d.Unit().Cross(q.Sub(a)), 0, 1e-11)
		}
		if last.Sub(first).Dot(d) < 0 {
			t.Fatal("not in the direction of the line")
		}
	})
}
