package mistake

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// shared is a tie between marks of two rows. What it says of a run depends on both: it fits where
// both rows were read alike, and not where the run ends between them. misfit is half the square of
// its misfit with neither row, the first, the second, both as the variant says.
type shared struct {
	first, second int // rows, the first above
	misfit        [4]float64
}

// placedRow is a row as written (0) and as the variant says (1): where its own readings put it, and
// the covariance xx, xy, yy of that place.
type placedRow struct {
	at  [2]plane.Point
	cov [2][3]float64
}

// leastOwn is how many readings besides those shared with other rows place a mark.
const leastOwn = 2

// apart takes the ties between rows of a variant out of a scene, where both marks are placed without
// them; it gives these ties and a function that puts them back.
func (s *scene) apart(v *variant) (ties []int, back func()) {
	n := s.f.s.Net
	row := map[int]bool{}
	for _, m := range v.mark {
		row[m] = true
	}
	between := func(i int) bool {
		o := &n.Obs[i]
		_, tie := o.Kind.(network.Tie)
		return tie && row[o.Marks[0]] && row[o.Marks[1]]
	}
	own := func(m int) int {
		k := 0
		for _, i := range s.of[m] {
			if !between(i) {
				k++
			}
		}
		return k
	}
	was := make([][]int, len(v.mark))
	for r, m := range v.mark {
		was[r] = s.of[m]
	}
	for r, m := range v.mark {
		var kept []int
		for _, i := range was[r] {
			o := &n.Obs[i]
			if !between(i) || own(o.Marks[0]) < leastOwn || own(o.Marks[1]) < leastOwn {
				kept = append(kept, i)
			} else if o.Marks[0] == m {
				ties = append(ties, i)
			}
		}
		s.of[m] = kept
	}
	return ties, func() {
		for r, m := range v.mark {
			s.of[m] = was[r]
		}
	}
}

// cov is the covariance of mark m at a place by its readings; infinite where they do not fix it.
func (s *scene) cov(m int, at plane.Point) [3]float64 {
	was := s.x.Point(m)
	defer func() { s.x.SetPoint(m, was) }()
	s.x.SetPoint(m, at)
	var a, b, c float64
	s.each(m, func(_, x, y float64) { a, b, c = a+x*x, b+x*y, c+y*y })
	d := a*c - b*b
	if !(d > 1e-9*a*c) {
		return [3]float64{math.Inf(1), 0, math.Inf(1)}
	}
	return [3]float64{c / d, -b / d, a / d}
}

// share weighs a tie between two rows.
func (f *finder) share(i, first, second int, a, b placedRow) shared {
	o := &f.s.Net.Obs[i]
	t := shared{first: first, second: second}
	for k := range t.misfit {
		p, q := a.at[k&1], b.at[k>>1]
		u := q.Sub(p).Unit().Mul(o.Scale)
		e := o.Values[0] - o.Zero - o.Sag - o.Scale*p.Dist(q)
		v := o.SD[0]*o.SD[0] + along(a.cov[k&1], u) + along(b.cov[k>>1], u)
		if e > 0 { // a tape round something may be too long
			v += o.Long * o.Long
		}
		if t.misfit[k] = e * e / (2 * v); !(t.misfit[k] < mostGain) {
			t.misfit[k] = mostGain
		}
		if math.IsInf(v, 1) || math.IsNaN(v) {
			t.misfit[k] = 0 // a place that nothing fixes agrees with any length
		}
	}
	return t
}

// along is the variance along a direction.
func along(c [3]float64, u plane.Point) float64 {
	return c[0]*u.X*u.X + 2*c[1]*u.X*u.Y + c[2]*u.Y*u.Y
}

// tied weighs the ties between rows and notes them at both.
func (t *trial) tied(f *finder, ties []int, placed []placedRow) {
	row := map[int]int{}
	for r, m := range t.v.mark {
		row[m] = r
	}
	for _, i := range ties {
		a, b := row[f.s.Net.Obs[i].Marks[0]], row[f.s.Net.Obs[i].Marks[1]]
		if a > b {
			a, b = b, a
		}
		s := f.share(i, a, b, placed[a], placed[b])
		t.shared[a], t.shared[b] = append(t.shared[a], s), append(t.shared[b], s)
	}
}

// joins is what row j adds to a run that began at row i and had reached the row before it.
func (t *trial) joins(i, j int) float64 {
	sum := t.gain[j]
	for _, s := range t.shared[j] {
		switch {
		case s.first == j:
			sum += s.misfit[0] - s.misfit[1]
		case s.first >= i:
			sum += s.misfit[1] - s.misfit[3]
		default:
			sum += s.misfit[0] - s.misfit[2]
		}
	}
	return sum
}
