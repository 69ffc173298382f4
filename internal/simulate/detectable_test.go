package simulate_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"brimline/internal/simulate"
)

// hat gives the redundancies by differences of the true values and a QR factor: 1 − |row of Q|².
func hat(t *testing.T, c simulate.Case) []float64 {
	t.Helper()
	const h = 1e-5
	u := numbered(c)
	book := parsed(t, c.Book)
	rows := book.against(t, c)
	jac := mat.NewDense(len(rows), u.n, nil)
	for i := range u.n {
		plus, minus := book.against(t, u.moved(i, h)), book.against(t, u.moved(i, -h))
		for k := range rows {
			jac.Set(k, i, (plus[k].true-minus[k].true)/(2*h)/rows[k].sd)
		}
	}
	var qr mat.QR
	qr.Factorize(jac)
	var q mat.Dense
	qr.QTo(&q)
	out := make([]float64, len(rows))
	for k := range rows {
		sum := 0.0
		for i := range u.n {
			sum += q.At(k, i) * q.At(k, i)
		}
		out[k] = 1 - sum
	}
	return out
}

func TestRedundanciesByAnotherMethod(t *testing.T) {
	check := func(c simulate.Case) {
		want := hat(t, c)
		n, sum := 0, 0.0
		size := c.Detectable()
		for i, parts := range c.Redundancies() {
			for k, r := range parts {
				if math.Abs(r-want[n]) > 1e-6 {
					t.Fatalf("%s: reading %s part %d: redundancy %.8f, by differences %.8f", title(c), c.Readings[i].N, k, r, want[n])
				}
				shows := want[n] >= 0.01
				if d := 4.13 * c.Readings[i].SD[k] / math.Sqrt(want[n]); shows && math.Abs(size[i][k]-d) > 1e-4*d || shows == math.IsInf(size[i][k], 1) {
					t.Fatalf("%s: reading %s: detectable %v, want %v", title(c), c.Readings[i].N, size[i][k], d)
				}
				sum += r
				n++
			}
		}
		if free := n - numbered(c).n; math.Abs(sum-float64(free)) > 1e-6 {
			t.Fatalf("%s: redundancies sum to %v, %d readings too many", title(c), sum, free)
		}
	}
	for _, m := range simulate.Methods {
		for seed := range uint64(2) {
			check(simulate.Pool(seed+1, simulate.Shapes[seed*4], m, simulate.Options{}))
		}
	}
	for _, p := range plans {
		check(simulate.Visit(3, simulate.Shapes[5], p))
	}
}
