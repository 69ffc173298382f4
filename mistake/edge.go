package mistake

import (
	"math"

	"brimline/adjust"
	"brimline/plane"
)

// edgeRange is how far apart two edges of a rim may lie, metres: common practice, no source.
const edgeRange = 0.1

// edges weighs that the readings of one column were taken to another edge over part of the rim, a
// constant step along the normal, from some row on.
func (f *finder) edges(sp *adjust.Space, taken []*hypothesis) []*hypothesis {
	normal := f.normals(sp)
	var all []*hypothesis
	for _, c := range f.cols {
		t := newTail(sp, 1)
		prior := math.Log(odds(f.book, "wrong-edge") / float64(len(c.obs)))
		for k := len(c.obs) - 1; k >= 0; k-- {
			p, m := f.s.First[c.obs[k]], c.mark[k]
			n := normal[m]
			if !f.free(sp, p) || n == (plane.Point{}) {
				continue
			}
			u := sp.X.Point(m).Sub(sp.X.Point(c.peg)).Unit()
			t.add(p, []float64{u.Dot(n) / sp.SD[p]})
			e, s := t.one()
			if len(t.part) < 4 || math.IsInf(s, 1) || math.Abs(e) > edgeRange/2 {
				continue
			}
			score := e*e/(2*s*s) + prior + narrowed(s*math.Sqrt(2*math.Pi)/edgeRange)
			if score > 0 {
				h := f.edge(t, c.peg, e, score)
				h.half, h.ln = e*e/(2*s*s), score-e*e/(2*s*s)
				all = append(all, h)
			}
		}
	}
	return f.settleBest(sp, all, taken)
}

func (f *finder) edge(t *tail, peg int, e, score float64) *hypothesis {
	n := len(t.part)
	parts, values := make([]int, n), make([]float64, n)
	for k, p := range t.part {
		parts[n-1-k], values[n-1-k] = p, f.value(p)-e*t.coef[k][0]*t.sp.SD[p]
	}
	h := f.named("wrong-edge", parts, values)
	h.Peg, h.Size, h.score = peg, math.Abs(e), score
	f.far(h, peg)
	return h
}

// normals are the unit normals of the lines at their marks, from the neighbours of each.
func (f *finder) normals(sp *adjust.Space) []plane.Point {
	out := make([]plane.Point, len(f.s.Net.Marks))
	for _, p := range f.s.Net.Paths {
		n := len(p.Marks)
		for k, m := range p.Marks {
			a, b := max(k-1, 0), min(k+1, n-1)
			if p.Closed {
				a, b = (k+n-1)%n, (k+1)%n
			}
			d := sp.X.Point(p.Marks[b]).Sub(sp.X.Point(p.Marks[a]))
			if l := d.Len(); l > 0 && !math.IsNaN(l) {
				out[m] = d.Mul(1 / l).Left()
			}
		}
	}
	return out
}
