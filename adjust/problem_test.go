package adjust_test

import (
	"math"
	"testing"

	"brimline/adjust"
	"brimline/internal/checks"
	"brimline/network"
)

// row is a kind that lives in the tests: any function of the scalars of the marks it touches,
// with its derivatives.
type row struct {
	f func(v, jac []float64) float64
}

func (row) Name() string                      { return "row" }
func (row) Parts(*network.Obs) []string       { return []string{"is"} }
func (row) Sigma(_ *network.Obs, _ []float64) {}
func (row) Touches(o *network.Obs) []network.Unknown {
	var out []network.Unknown
	for _, m := range o.Marks {
		out = append(out, network.Unknown(m))
	}
	return out
}

func (r row) Predict(x network.State, o *network.Obs, value, jac []float64) {
	var v []float64
	for _, at := range o.At {
		v = append(v, x[at], x[at+1])
	}
	value[0] = r.f(v, jac)
}

// problem is a published problem of least squares. Marks 0 and 1 carry the datum and nothing
// else: one row without redundancy holds their distance. The unknowns of the problem are the
// scalars of the marks from 2 on.
type problem struct{ *maker }

func newProblem(start ...float64) problem {
	p := problem{newMaker(nil, 0, points(append([]float64{0, 0, 1, 0}, start...)...))}
	p.row(1, 1, row{func(v, jac []float64) float64 {
		jac[0], jac[1] = 1, 0
		return v[0]
	}}, 1)
	return p
}

// row lists an observation of value.
func (p problem) row(value, sd float64, k row, marks ...int) {
	p.add(k, -1, marks, sd).Values[0] = value
}

// hold holds the second scalar of a mark at value by a row of its own: one row and one unknown
// more, no redundancy.
func (p problem) hold(mark int, value, sd float64) {
	p.row(value, sd, row{func(v, jac []float64) float64 {
		jac[0], jac[1] = 0, 1
		return v[1]
	}}, mark)
}

// levels is a level net: the height of mark names[i] is the first scalar of mark 2 + i.
func levels(item checks.Item, fixed map[string]float64, observations string, names []string, sd func(i int) float64) problem {
	below := math.Inf(1) // some metres below the known heights: a step is 10 m at most
	for _, h := range fixed {
		below = math.Min(below, math.Floor(h)-5)
	}
	start := make([]float64, 2*len(names))
	for i := range names {
		start[2*i] = below
	}
	p := newProblem(start...)
	for i := range names {
		p.hold(2+i, 0, 1)
	}
	at := map[string]int{}
	for i, n := range names {
		at[n] = 2 + i
	}
	for i, x := range item.Inputs.Any(observations) {
		line := x.([]any)
		from, to, rise := line[0].(string), line[1].(string), line[2].(float64)
		var marks []int
		known := 0.0
		var sign []float64
		for k, name := range []string{from, to} {
			s := float64(2*k - 1)
			if m, ok := at[name]; ok {
				marks, sign = append(marks, m), append(sign, s)
			} else {
				known += s * fixed[name]
			}
		}
		p.row(rise, sd(i), row{func(v, jac []float64) float64 {
			sum := known
			for k, s := range sign {
				jac[2*k], jac[2*k+1] = s, 0
				sum += s * v[2*k]
			}
			return sum
		}}, marks...)
	}
	return p
}

// net solves a level net; first is the place of the first levelled line in the per-part slices.
func (p problem) net(t *testing.T) (s *adjust.Solution, first int) {
	t.Helper()
	s, _ = solve(t, p.n, p.truth)
	return s, len(p.n.Marks) - 1
}

func heights(s *adjust.Solution) (h, sd []float64) {
	for m := 2; m < len(s.Net.Marks); m++ {
		h, sd = append(h, s.X[2*m]), append(sd, math.Sqrt(s.MarkCov(m)[0]))
	}
	return h, sd
}
