package outline

import (
	"math"
)

// Family is a well-known kind of shape that a closed line has, recognised from its runs and tested
// against its marks.
type Family struct {
	Kind    string // rectangle, cut, segmental, stadium, ellipse, oval, kidney, L
	Figures []Figure
	Test    Test   // that the line is of the family
	Square  Test   // that its corners are right angles, where the family has corners
	Other   *Other // an ellipse, where it may be taken for one
}

// Figure is one size of a family, metres, or radians for skew (of a corner from a right angle, the
// larger inside positive turning) and parallel (of sides that should be). Several of a name are
// numbered: "radius 2".
type Figure struct {
	Name      string
	Value, SD float64
}

// Test is a chi-square test. One of no freedom always holds.
type Test struct {
	Value, High float64 // High is the 99 % point
	Freedom     int
}

// Holds says that the marks do not speak against what is tested.
func (t Test) Holds() bool { return t.Freedom == 0 || t.Value <= t.High }

// Other is a family that the line is not, or could be too.
type Other struct {
	Kind string
	Off  float64 // the furthest that a mark lies off the best of the kind
	Test Test
}

// recognise names the family of a closed line, nil where it has none.
func (c *chain) recognise(out *Line, edge []float64) *Family {
	if !out.Closed {
		return nil
	}
	b := c.body(out)
	ways := []func(*body) *Family{(*body).rectangle, (*body).ell, (*body).stadium, (*body).segmental, (*body).oval, (*body).kidney}
	var f *Family
	for _, way := range ways {
		if f = way(b); f != nil {
			break
		}
	}
	if f != nil && f.Kind != "stadium" && f.Kind != "oval" || f == nil && !b.round() {
		return f
	}
	e := c.ellipse(out, edge)
	if e == nil {
		return f
	}
	if f == nil {
		if !e.Test.Holds() {
			return nil
		}
		return e
	}
	f.Other = &Other{Kind: "ellipse", Off: e.Figures[2].Value, Test: e.Test}
	if e.Test.Holds() && !f.Test.Holds() {
		e.Figures = e.Figures[:2]
		return e
	}
	return f
}

// wald tests that figures of the line's unknowns are all nought: gᵀ(G·C·Gᵀ)⁻¹g (A. Wald, Trans.
// Amer. Math. Soc. 54, 1943).
func (c *chain) wald(f func(q []float64) []float64) Test {
	g := f(c.q)
	m := len(g)
	if m == 0 {
		return Test{}
	}
	v := c.covOf(f)
	for i := range m {
		v[i*m+i] += 1e-12 // a micrometre, a microradian
	}
	w := invert(v, m)
	t := Test{Freedom: m, High: chiSquare99(m)}
	for i := range m {
		for j := range m {
			t.Value += g[i] * w[i*m+j] * g[j]
		}
	}
	return t
}

// chiSquare99 is the 99 % point of chi-square (E. B. Wilson, M. M. Hilferty, The distribution of
// chi-square, Proc. Nat. Acad. Sci. 17, 1931).
func chiSquare99(freedom int) float64 {
	const z = 2.3263
	k := 2 / (9 * float64(freedom))
	return float64(freedom) * math.Pow(1-k+z*math.Sqrt(k), 3)
}

// figures with their standard deviations, by names.
func (b *body) list(names []string, f func(q []float64) []float64) []Figure {
	v, sd := f(b.c.q), b.c.sdsOf(f)
	var out []Figure
	for i, n := range names {
		out = append(out, Figure{n, v[i], sd[i]})
	}
	return out
}

// Get finds a figure, NaN where the family has none of the name.
func (f *Family) Get(name string) (value, sd float64) {
	for _, x := range f.Figures {
		if x.Name == name {
			return x.Value, x.SD
		}
	}
	return math.NaN(), math.NaN()
}
