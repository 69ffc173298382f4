package outline

import (
	"math"
	"testing"
)

// MeasureAgrees wants the two ways from the marks to length, area and lengths of the pieces of a line to
// say the same: by the marks' own covariance and what stays open besides, and by the covariance of
// the line's unknowns.
func MeasureAgrees(t *testing.T, name string, l *Line) {
	t.Helper()
	h := Hold(l)
	m := len(h.c.figures(h.c.q))
	all := make([]float64, h.c.n*m)
	h.c.slopes(h.c.figures, all, m, make([]bool, h.c.n))
	for k := range m {
		by := make([]float64, h.c.n)
		for a := range by {
			by[a] = all[a*m+k]
		}
		pull := h.pull(by)
		f := NewMeasure(h.c.s)
		h.onMarks(pull, f.marks)
		f.open = h.variance(pull)
		direct := math.Sqrt(h.c.propagate(by, 1)[0])
		if sd, _, _ := f.Ask(); math.Abs(direct-sd) > 1e-3*direct {
			t.Errorf("%s: figure %d: sd %.6g by the line, %.6g by its marks", name, k, direct, sd)
		}
	}
}
