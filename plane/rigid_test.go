package plane_test

import (
	"math"
	"testing"

	"brimline/internal/checks"
	"brimline/plane"

	"pgregory.net/rapid"
)

func TestRigidLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, n, p := movement(t), movement(t), point(t, "p")
		nearPoint(t, "inverse", m.Inverse().Apply(m.Apply(p)), p, 1e-13)
		nearPoint(t, "then", m.Then(n).Apply(p), n.Apply(m.Apply(p)), 1e-13)
		near(t, "angle", math.Remainder(m.Then(n).Angle()-m.Angle()-n.Angle(), 2*math.Pi), 0, 1e-14)
		near(t, "length", m.ApplyVec(p).Len(), p.Len(), 1e-14)
		nearPoint(t, "still", plane.Still().Apply(p), p, 0)
	})
}

func TestFitsRecoverTheMovement(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := movement(t).Then(plane.Turned(0, plane.Point{X: 1e6, Y: 5e5}))
		scale := rapid.Float64Range(0.1, 10).Draw(t, "scale")
		n := rapid.IntRange(2, 8).Draw(t, "n")
		var from, to, big []plane.Point
		var w []float64
		for range n {
			p := point(t, "p")
			from, to, big = append(from, p), append(to, m.Apply(p)), append(big, m.Apply(p.Mul(scale)))
			w = append(w, rapid.Float64Range(0.1, 10).Draw(t, "w"))
		}
		if plane.BoundsOf(from...).Diagonal() < 0.01 {
			return
		}
		r, ok := plane.FitRigid(from, to, w)
		s, okS := plane.FitSimilarity(from, big, w)
		if !ok || !okS {
			t.Fatal("not determined")
		}
		near(t, "scale", s.Scale, scale, 1e-6)
		for i, p := range from {
			nearPoint(t, "rigid", r.Apply(p), to[i], 1e-6)
			nearPoint(t, "similarity", s.Apply(p), big[i], 1e-6)
		}
	})
}

// The fit must be the least: no movement nearby has a smaller weighted sum of squares.
func TestFitRigidIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var from, to []plane.Point
		var w []float64
		for range 5 {
			from, to = append(from, point(t, "from")), append(to, point(t, "to"))
			w = append(w, rapid.Float64Range(0.1, 10).Draw(t, "w"))
		}
		fit, ok := plane.FitRigid(from, to, w)
		if !ok {
			return
		}
		sum := func(r plane.Rigid) float64 {
			s := 0.0
			for i := range from {
				d := r.Apply(from[i]).Dist(to[i])
				s += w[i] * d * d
			}
			return s
		}
		nudge := plane.Turned(rapid.Float64Range(-1, 1).Draw(t, "dturn"), point(t, "dshift").Mul(0.1))
		if best := sum(fit); sum(fit.Then(nudge)) < best*(1-1e-12) {
			t.Fatalf("%v is not the least", best)
		}
	})
}

func TestFitsWithoutATurn(t *testing.T) {
	a, b := plane.Point{X: 1, Y: 2}, plane.Point{X: 5, Y: 7}
	for name, c := range map[string]struct {
		from, to []plane.Point
		w        []float64
		want     plane.Point
	}{
		"one point":        {[]plane.Point{a}, []plane.Point{b}, nil, b},
		"the same twice":   {[]plane.Point{a, a}, []plane.Point{b, b}, nil, b},
		"one has weight":   {[]plane.Point{a, b}, []plane.Point{b, a}, []float64{1, 0}, b},
		"one target":       {[]plane.Point{a, b}, []plane.Point{b, b}, nil, plane.Point{X: 3, Y: 4.5}},
		"none":             {nil, nil, nil, a},
		"unequal lists":    {[]plane.Point{a, b}, []plane.Point{b}, nil, a},
		"nothing weighted": {[]plane.Point{a, b}, []plane.Point{a, b}, []float64{0, 0}, a},
	} {
		r, ok := plane.FitRigid(c.from, c.to, c.w)
		s, okS := plane.FitSimilarity(c.from, c.to, c.w)
		if ok || okS {
			t.Errorf("%s: said to be determined", name)
		}
		nearPoint(t, name, r.Apply(a), c.want, 1e-12)
		nearPoint(t, name, s.Apply(a), c.want, 1e-12)
	}
}

func pairs(rows [][]float64) []plane.Point {
	var out []plane.Point
	for _, r := range rows {
		out = append(out, plane.Point{X: r[0], Y: r[1]})
	}
	return out
}

// T-01: Ghilani and Wolf, Adjustment Computations, two-dimensional conformal transformation.
func TestPublishedSimilarity(t *testing.T) {
	c := checks.Get(t, "T-01")
	from, to := pairs(c.Inputs.Rows("source_xy")), pairs(c.Inputs.Rows("target_EN"))
	s, _ := plane.FitSimilarity(from, to, nil)
	c.Compare("a", s.Scale*s.Rigid.C)
	c.Compare("b", s.Scale*s.Rigid.S)
	c.Compare("Tx", s.Rigid.T.X)
	c.Compare("Ty", s.Rigid.T.Y)
	c.Compare("scale", s.Scale)
	c.Compare("rotation_deg", math.Mod(s.Rigid.Angle()*180/math.Pi+360, 360))
	var res, there []float64
	sum := 0.0
	for i := range from {
		d := s.Apply(from[i]).Sub(to[i])
		res = append(res, d.X, d.Y)
		sum += d.Dot(d)
	}
	c.Compare("residuals", res...)
	c.Compare("s0", math.Sqrt(sum/float64(2*len(from)-4)))
	for _, p := range pairs(c.Inputs.Rows("to_transform")) {
		q := s.Apply(p)
		there = append(there, q.X, q.Y)
	}
	c.Compare("transformed", there...)
}

// T-02: eight marks of a picture, a photogrammetry laboratory report; the key `a` there is the
// first coefficient.
func TestPublishedPictureMarks(t *testing.T) {
	c := checks.Get(t, "T-02")
	from, to := pairs(c.Inputs.Rows("source")), pairs(c.Inputs.Rows("target"))
	s, _ := plane.FitSimilarity(from, to, nil)
	c.Compare("a", s.Scale*s.Rigid.C)
	c.Compare("b", s.Scale*s.Rigid.S)
	c.Compare("tx", s.Rigid.T.X)
	c.Compare("ty", s.Rigid.T.Y)
	var x, y []float64
	var sum plane.Point
	for i := range from {
		d := s.Apply(from[i]).Sub(to[i])
		x, y = append(x, d.X), append(y, d.Y)
		sum = sum.Add(plane.Point{X: d.X * d.X, Y: d.Y * d.Y}.Mul(1 / float64(len(from))))
	}
	c.Compare("residual_x", x...)
	c.Compare("residual_y", y...)
	c.Compare("rmse", math.Sqrt(sum.X), math.Sqrt(sum.Y))
}

// T-04: Mikhail and Ackermann (1976), table 6.2: turn and scale without a shift. Adding each
// pair's opposite pins both means to the origin, so that no shift is left to fit.
func TestPublishedTurnAndScale(t *testing.T) {
	c := checks.Get(t, "T-04")
	from, to := pairs(c.Inputs.Rows("x")), pairs(c.Inputs.Rows("y"))
	for i := range len(from) {
		from, to = append(from, from[i].Mul(-1)), append(to, to[i].Mul(-1))
	}
	s, _ := plane.FitSimilarity(from, to, nil)
	c.Compare("a", s.Scale*s.Rigid.C)
	c.Compare("b", s.Scale*s.Rigid.S)
	sum := 0.0
	for i := range from {
		d := s.Apply(from[i]).Dist(to[i])
		sum += d * d
	}
	c.Compare("vTv", sum/2)
}
