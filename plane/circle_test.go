package plane_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/internal/checks"
	"brimline/plane"

	"pgregory.net/rapid"
)

func TestCircumcircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := point(t, "a"), point(t, "b"), point(t, "c")
		k := math.Abs(b.Sub(a).Cross(c.Sub(a))) / 2
		if k < 0.01 {
			return
		}
		o, ok := plane.Circumcircle(a, b, c)
		if !ok {
			t.Fatal("said to be in line")
		}
		// R = abc/(4K), any textbook of plane geometry.
		near(t, "radius", o.R, a.Dist(b)*b.Dist(c)*c.Dist(a)/(4*k), 1e-10*o.R*o.R)
		for _, p := range []plane.Point{a, b, c} {
			near(t, "on it", p.Dist(o.Centre), o.R, 1e-10*o.R*o.R)
		}
	})
	p := plane.Point{X: 1, Y: 1}
	if _, ok := plane.Circumcircle(p, p.Mul(2), p.Mul(5)); ok {
		t.Error("a circle through points in line")
	}
	if _, ok := plane.Circumcircle(p, p, plane.Point{}); ok {
		t.Error("a circle through two points")
	}
}

func TestFitCircleRecovers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := plane.Circle{Centre: point(t, "c"), R: math.Pow(10, rapid.Float64Range(-1, 3).Draw(t, "r"))}
		sweep := rapid.Float64Range(0.1, 6.28).Draw(t, "sweep")
		way := rapid.Float64Range(-3, 3).Draw(t, "way")
		n := rapid.IntRange(3, 20).Draw(t, "n")
		var pts []plane.Point
		for i := range n {
			pts = append(pts, c.Centre.Add(plane.Point{X: c.R}.Turn(way+sweep*float64(i)/float64(n))))
		}
		got, rms, ok := plane.FitCircle(pts)
		if !ok {
			t.Fatal("not ok")
		}
		near(t, "radius", got.R, c.R, 1e-9*c.R)
		nearPoint(t, "centre", got.Centre, c.Centre, 1e-9*(c.R+1))
		near(t, "rms", rms, 0, 1e-11*(c.R+1))
	})
}

// At the least sum of squares its derivatives by centre and radius vanish.
func TestFitCircleIsStationary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sweep := rapid.Float64Range(0.3, 6).Draw(t, "sweep")
		var pts []plane.Point
		for i := range 12 {
			r := 2 + rapid.Float64Range(-0.02, 0.02).Draw(t, "noise")
			pts = append(pts, plane.Point{X: r}.Turn(sweep*float64(i)/11))
		}
		c, rms, ok := plane.FitCircle(pts)
		if !ok {
			return
		}
		sum := func(c plane.Circle) (s float64) {
			for _, p := range pts {
				d := p.Dist(c.Centre) - c.R
				s += d * d
			}
			return s
		}
		near(t, "rms", rms*rms*12, sum(c), 1e-12)
		h := 1e-4
		for _, d := range []plane.Circle{{Centre: plane.Point{X: h}}, {Centre: plane.Point{Y: h}}, {R: h}} {
			up := sum(plane.Circle{Centre: c.Centre.Add(d.Centre), R: c.R + d.R})
			down := sum(plane.Circle{Centre: c.Centre.Sub(d.Centre), R: c.R - d.R})
			near(t, "slope", (up-down)/(2*h), 0, 1e-7)
		}
	})
}

func TestFitCircleOfNearlyStraight(t *testing.T) {
	run := func(radius float64) []plane.Point {
		var pts []plane.Point
		for i := range 9 {
			x := float64(i) - 4
			pts = append(pts, plane.Point{X: 100 + x, Y: x * x / (radius + math.Sqrt(radius*radius-x*x))})
		}
		return pts
	}
	// The box of these points has a diagonal of 8 m: the limit lies at 80,000 m.
	for _, c := range []struct {
		r  float64
		ok bool
	}{{10, true}, {1000, true}, {70000, true}, {90000, false}, {1e7, false}} {
		got, _, ok := plane.FitCircle(run(c.r))
		if ok != c.ok || math.Abs(got.R-c.r) > 1e-6*c.r*(1+c.r/1e4) {
			t.Errorf("radius %v: %v, %v", c.r, got.R, ok)
		}
	}
	level := []plane.Point{{X: 1, Y: 1}, {X: 2, Y: 1}, {X: 7, Y: 1}, {X: 9, Y: 1}}
	if got, rms, ok := plane.FitCircle(level); ok || rms > 1e-12 || !(got.R > 1e8) {
		t.Errorf("in line: %v %v %v", got, rms, ok)
	}
	if _, _, ok := plane.FitCircle([]plane.Point{{X: 1}, {X: 2}, {X: 1}, {X: 2}}); ok {
		t.Error("two distinct points make a circle")
	}
	// Noise of 3 mm on a straight of 8 m must not fail or give a small circle.
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		pts := run(1e9)
		for i := range pts {
			pts[i].Y += 0.003 * r.NormFloat64()
		}
		if got, rms, _ := plane.FitCircle(pts); !(got.R > 100) || rms > 0.006 || rms < 0.0003 {
			t.Fatalf("noisy straight: %v, rms %v", got, rms)
		}
	}
}

// C-01: Gander, Golub and Strebel, BIT 34 (1994). C-02: Bullock (2006). C-03: SciPy Cookbook.
func TestPublishedCircles(t *testing.T) {
	all := checks.Load(t)
	for _, c := range []struct{ id, centre, radius, sum, linear, linearRadius string }{
		{"C-01", "geometric_centre", "geometric_radius", "geometric_sum_sq", "", ""},
		{"C-02", "geometric_centre", "geometric_radius", "", "centre", "radius"},
		{"C-03", "geometric_centre", "geometric_radius", "geometric_sum_sq", "linear_centre", ""},
	} {
		it := all[c.id]
		pts := pairs(it.Inputs.Rows("points"))
		fit, rms, ok := plane.FitCircle(pts)
		if !ok {
			t.Errorf("%s: not ok", c.id)
		}
		it.Compare(c.centre, fit.Centre.X, fit.Centre.Y)
		it.Compare(c.radius, fit.R)
		if c.sum != "" {
			it.Compare(c.sum, rms*rms*float64(len(pts)))
		}
		alg, _ := plane.AlgebraicCircle(pts)
		if c.linear != "" {
			it.Compare(c.linear, alg.Centre.X, alg.Centre.Y)
		}
		if c.linearRadius != "" {
			it.Compare(c.linearRadius, alg.R)
		}
	}
	// The note of C-01 gives the linear fit, which the paper does not use: centre and radius.
	alg, _ := plane.AlgebraicCircle(pairs(all["C-01"].Inputs.Rows("points")))
	nearPoint(t, "linear fit of C-01", alg.Centre, plane.Point{X: 4.7423, Y: 3.8351}, 8e-5)
	near(t, "linear radius of C-01", alg.R, 4.1088, 6e-5)
}
