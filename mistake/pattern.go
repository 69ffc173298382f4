package mistake

import (
	"math"

	"brimline/adjust"
)

// tail is a sum over the last readings of a list, grown from its end: what an error common to them
// does, for every place at which it may have begun.
type tail struct {
	sp   *adjust.Space
	part []int
	coef [][]float64 // by reading: whitened derivatives by each of the q sizes
	rc   [][]float64 // by size: R·c
	lin  []float64   // cᵀR·y
	quad []float64   // cᵀR·c, q × q
}

func newTail(sp *adjust.Space, q int) *tail {
	t := &tail{sp: sp, lin: make([]float64, q), quad: make([]float64, q*q), rc: make([][]float64, q)}
	for k := range q {
		t.rc[k] = make([]float64, len(sp.Y))
	}
	return t
}

// add takes one more reading in: c are the derivatives of its whitened value by the sizes.
func (t *tail) add(p int, c []float64) {
	q := len(t.lin)
	col := t.sp.Column(p)
	for a := range q {
		for b := range q { // (c + c')ᵀR(c + c') grown by one entry
			t.quad[a*q+b] += c[a]*t.rc[b][p] + c[b]*t.rc[a][p] + c[a]*c[b]*col[p]
		}
	}
	for a := range q {
		t.lin[a] += c[a] * t.sp.U[p]
		if c[a] == 0 {
			continue
		}
		for i, v := range col {
			t.rc[a][i] += c[a] * v
		}
	}
	t.part, t.coef = append(t.part, p), append(t.coef, append([]float64(nil), c...))
}

// one is the estimate of a single size with its standard deviation; s is infinite where the
// readings do not tell.
func (t *tail) one() (e, s float64) {
	if t.quad[0] < 1e-9 {
		return 0, math.Inf(1)
	}
	return t.lin[0] / t.quad[0], 1 / math.Sqrt(t.quad[0])
}

// two is the estimate of a pair of sizes, half the drop of the sum of squares, and the root of the
// determinant of its covariance.
func (t *tail) two() (x, y, half, root float64) {
	a, b, c := t.quad[0], t.quad[1], t.quad[3]
	d := a*c - b*b
	if d <= 1e-12*a*c || a <= 0 || c <= 0 {
		return 0, 0, 0, math.Inf(1)
	}
	x, y = (c*t.lin[0]-b*t.lin[1])/d, (a*t.lin[1]-b*t.lin[0])/d
	return x, y, (x*t.lin[0] + y*t.lin[1]) / 2, 1 / math.Sqrt(d)
}

// named builds a group hypothesis of known lengths.
func (f *finder) named(code string, parts []int, values []float64) *hypothesis {
	h := &hypothesis{parts: parts, values: values}
	h.Code, h.Peg, h.Other, h.From, h.To = code, -1, -1, -1, -1
	h.Obs, h.Edits = make([]int, 0, len(parts)), make([]Edit, 0, len(parts))
	for k, p := range parts {
		h.Obs = append(h.Obs, f.s.ObsOf(p))
		h.Edits = append(h.Edits, Edit{p, values[k], [2]int{-1, -1}})
	}
	return h
}

// far names the marks at the other ends of the first and the last reading of a group.
func (f *finder) far(h *hypothesis, peg int) {
	ends := [2]int{}
	for k, i := range []int{h.Obs[0], h.Obs[len(h.Obs)-1]} {
		for _, m := range f.s.Net.Obs[i].Marks {
			if m != peg {
				ends[k] = m
			}
		}
	}
	h.From, h.To = ends[0], ends[1]
}
