package plane_test

import (
	"math"
	"testing"
	"time"

	"brimline/plane"

	"pgregory.net/rapid"
)

// smooth fails where a path has a gap or a kink.
func smooth(t rapid.TB, p plane.Path) {
	t.Helper()
	if err := p.Validate(); err != nil {
		t.Fatal(err)
	}
	n := len(p.Segs)
	for i := range n {
		if i+1 < n || p.Closed {
			nearPoint(t, "tangent at a joint", p.Segs[i].Tangent(1), p.Segs[(i+1)%n].Tangent(0), 1e-9)
		}
	}
}

// blob draws marks round a smooth closed figure, some 0.4 to 1.2 m apart.
func blob(t *rapid.T) []plane.Point {
	n := rapid.IntRange(18, 30).Draw(t, "n")
	a, b := rapid.Float64Range(0, 0.15).Draw(t, "a"), rapid.Float64Range(0, 0.05).Draw(t, "b")
	pa, pb := rapid.Float64Range(0, 6).Draw(t, "pa"), rapid.Float64Range(0, 6).Draw(t, "pb")
	var pts []plane.Point
	for i := range n {
		u := 2 * math.Pi * (float64(i) + rapid.Float64Range(-0.25, 0.25).Draw(t, "u")) / float64(n)
		r := 3 * (1 + a*math.Cos(2*u+pa) + b*math.Cos(3*u+pb))
		pts = append(pts, plane.Point{X: r}.Turn(u))
	}
	return pts
}

func TestFairKeepsACircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := plane.Circle{Centre: point(t, "c"), R: rapid.Float64Range(0.3, 10).Draw(t, "r")}
		n := rapid.IntRange(3, 12).Draw(t, "n")
		at, cuts := 0.0, []float64{0}
		for range n {
			at += rapid.Float64Range(0.1, 1).Draw(t, "span")
			cuts = append(cuts, at)
		}
		way := rapid.SampledFrom([]float64{1, -1}).Draw(t, "way")
		run := func(full float64) (pts []plane.Point) {
			for _, u := range cuts[:n] {
				pts = append(pts, c.Centre.Add(plane.Point{X: c.R}.Turn(way*full*u/at)))
			}
			return pts
		}
		// Any spacing, spans of more than half the circle too.
		p := plane.Fair(run(2*math.Pi), true, nil, nil)
		near(t, "closed length", p.Length(), 2*math.Pi*c.R, 1e-9)
		near(t, "closed area", p.Area(), way*math.Pi*c.R*c.R, 1e-9*(1+c.R))
		for _, s := range p.Segs {
			nearPoint(t, "closed centre", s.Centre(), c.Centre, 1e-9)
		}
		// Open: at least 0.1 m between marks, so that rounding does not blow up the radius.
		open := run(rapid.Float64Range(2, 6).Draw(t, "sweep"))
		for _, s := range plane.Fair(open, false, nil, nil).Segs {
			for _, f := range []float64{0, 0.3, 0.7, 1} {
				near(t, "open run on the circle", s.At(f).Dist(c.Centre), c.R, 1e-6)
			}
		}
	})
}

func TestFairKeepsALine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, d := point(t, "a"), plane.Point{X: 1}.Turn(rapid.Float64Range(-3, 3).Draw(t, "way"))
		var pts []plane.Point
		at := 0.0
		for range rapid.IntRange(2, 8).Draw(t, "n") {
			pts = append(pts, a.Add(d.Mul(at)))
			at += rapid.Float64Range(0.2, 2).Draw(t, "step")
		}
		p := plane.Fair(pts, false, nil, nil)
		near(t, "length", p.Length(), pts[0].Dist(pts[len(pts)-1]), 1e-12)
		for _, s := range p.Segs {
			near(t, "rise", s.Sagitta(), 0, 1e-12)
		}
	})
}

func TestFairLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pts, m := blob(t), movement(t)
		closed := rapid.Bool().Draw(t, "closed")
		p := plane.Fair(pts, closed, nil, nil)
		smooth(t, p)
		if len(p.Segs) != 2*(len(pts)-1)+2*b2i(closed) {
			t.Fatalf("%d segments", len(p.Segs))
		}
		for i := range len(p.Segs) / 2 {
			nearPoint(t, "through its point", p.Segs[2*i].A, pts[i], 0)
		}
		if c := p.Crossings(); c != nil {
			t.Fatalf("crosses itself: %v", c)
		}
		n := len(pts)
		other := map[string][]plane.Point{"moved": make([]plane.Point, n), "mirrored": make([]plane.Point, n), "scaled": make([]plane.Point, n), "reversed": make([]plane.Point, n)}
		for i, q := range pts {
			other["moved"][i] = m.Apply(q)
			other["mirrored"][i] = plane.Point{X: -q.X, Y: q.Y}
			other["scaled"][i] = q.Mul(5)
			other["reversed"][n-1-i] = q
		}
		if closed {
			other["begun elsewhere"] = append(append([]plane.Point(nil), pts[5:]...), pts[:5]...)
		}
		sign := map[string]float64{"mirrored": -1, "reversed": -1, "scaled": 25}
		for name, o := range other {
			q := plane.Fair(o, closed, nil, nil)
			scale, s := 1.0, sign[name]
			if s == 0 {
				s = 1
			}
			if name == "scaled" {
				scale = 5
			}
			near(t, name+" length", q.Length(), scale*p.Length(), 1e-10)
			near(t, name+" area", q.Area(), s*p.Area(), 1e-9)
		}
	})
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// Length and area are differentiated by differences elsewhere: two steps must agree, to second
// order in the larger step.
func TestFairIsSmoothInItsInputs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pts := blob(t)
		closed := rapid.Bool().Draw(t, "closed")
		k := rapid.IntRange(0, len(pts)-1).Draw(t, "which")
		way := plane.Point{X: 1}.Turn(rapid.Float64Range(-3, 3).Draw(t, "way"))
		slope := func(h float64, f func(plane.Path) float64) float64 {
			at := func(h float64) float64 {
				q := append([]plane.Point(nil), pts...)
				q[k] = q[k].Add(way.Mul(h))
				return f(plane.Fair(q, closed, nil, nil))
			}
			return (at(h) - at(-h)) / (2 * h)
		}
		length := plane.Path.Length
		area := func(p plane.Path) float64 {
			if !p.Closed { // the sector seen from the origin
				s := 0.0
				for _, g := range p.Segs {
					s += g.SignedArea()
				}
				return s
			}
			return p.Area()
		}
		near(t, "length", slope(1e-4, length), slope(1e-5, length), 1e-6)
		near(t, "area", slope(1e-4, area), slope(1e-5, area), 1e-6)
	})
}

// The pull of one mark fades by about a quarter from each neighbour to the next.
func TestFairIsLocal(t *testing.T) {
	var pts []plane.Point
	for i := range 24 {
		pts = append(pts, plane.Point{X: 3}.Turn(2*math.Pi*float64(i)/24))
	}
	p := plane.Fair(pts, true, nil, nil)
	pts[0] = pts[0].Mul(1.01) // 30 mm
	q := plane.Fair(pts, true, nil, nil)
	turn := func(i int) float64 { return math.Abs(plane.Between(p.Segs[2*i].Tangent(0), q.Segs[2*i].Tangent(0))) }
	for i := 2; i < 8; i++ {
		near(t, "fading", turn(i)/turn(i-1), 0.268, 0.05)
	}
}

func TestFairDirections(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pts := blob(t)[:6]
		chord := pts[1].Sub(pts[0])
		u := chord.Turn(rapid.Float64Range(-0.8, 0.8).Draw(t, "start"))
		v := pts[5].Sub(pts[4]).Turn(rapid.Float64Range(-0.8, 0.8).Draw(t, "end")).Mul(3)
		p := plane.Fair(pts, false, &u, &v)
		smooth(t, p)
		nearPoint(t, "start", p.Segs[0].Tangent(0), u.Unit(), 1e-9)
		nearPoint(t, "end", p.Segs[9].Tangent(1), v.Unit(), 1e-9)
		q := plane.Fair(pts, false, nil, &v)
		nearPoint(t, "end alone", q.Segs[9].Tangent(1), v.Unit(), 1e-9)
		near(t, "a free end is one circle", q.Segs[0].Curvature(), q.Segs[1].Curvature(), 1e-9)
	})
	// Two points and one direction: a single arc. Two directions: a biarc.
	a, b, up := plane.Point{}, plane.Point{X: 2}, plane.Point{Y: 5}
	p := plane.Fair([]plane.Point{a, b}, false, &up, nil)
	near(t, "half circle", p.Length(), math.Pi, 1e-12)
	p = plane.Fair([]plane.Point{a, b}, false, &up, &up)
	smooth(t, p)
	nearPoint(t, "S joins midway", p.Segs[0].B, plane.Point{X: 1}, 1e-12)
}

func TestFairWithFewPoints(t *testing.T) {
	a, b := plane.Point{X: 1}, plane.Point{X: 4, Y: 4}
	for _, c := range []struct {
		pts    []plane.Point
		closed bool
		length float64
	}{
		{nil, true, 0}, {nil, false, 0}, {[]plane.Point{a}, true, 0}, {[]plane.Point{a, a, a}, false, 0},
		{[]plane.Point{a, b}, false, 5}, {[]plane.Point{a, b}, true, 10}, {[]plane.Point{a, a, b, b, a}, true, 10},
	} {
		p := plane.Fair(c.pts, c.closed, nil, nil)
		near(t, "length", p.Length(), c.length, 1e-12)
		if c.length > 0 {
			if err := p.Validate(); err != nil {
				t.Error(err)
			}
		}
	}
	tri := []plane.Point{{}, {}, {X: 1}, {X: 1}, {Y: 1}, {}}
	p := plane.Fair(tri, true, nil, nil)
	near(t, "three points make their circle", p.Length(), math.Pi*math.Sqrt2, 1e-12)
}

func TestFairIsLinearInTime(t *testing.T) {
	run := func(n int) time.Duration {
		var pts []plane.Point
		for i := range n {
			u := 2 * math.Pi * float64(i) / float64(n)
			pts = append(pts, plane.Point{X: 1e4 * (1 + 0.1*math.Cos(5*u))}.Turn(u))
		}
		start := time.Now()
		plane.Fair(pts, true, nil, nil)
		return time.Since(start)
	}
	run(1000)
	small, big := run(10_000), run(200_000)
	t.Logf("10,000 points %v, 200,000 points %v", small, big)
	if big > 100*small+100*time.Millisecond { // 20 times the points; the square would be 400
		t.Errorf("10,000 points took %v, 200,000 took %v", small, big)
	}
}
