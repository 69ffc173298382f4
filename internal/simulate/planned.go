package simulate

import (
	"math"

	"brimline/plane"
)

// planned takes n tapes between marks of the rim: the long axis, the short axis, both diagonals,
// two more across, then pairs across as they come.
func (v *visit) planned(n int, marked bool) {
	pairs := v.mainPairs()
	for _, share := range []float64{-0.5, 0.5} {
		if a, b := v.across(share); a != b {
			pairs = v.join(pairs, a, b)
		}
	}
	for range tries {
		if len(pairs) >= n {
			break
		}
		i, step := v.r.IntN(len(v.order)), len(v.order)/3+v.r.IntN(len(v.order)/3)
		pairs = v.join(pairs, v.order[i], v.order[(i+step)%len(v.order)])
	}
	for _, p := range pairs[:min(n, len(pairs))] {
		v.tie(p[0], p[1], v.hand())
		v.readings[len(v.readings)-1].Check = marked
	}
}

// across are the marks of both long sides nearest to a line across the long axis, at a share of
// half its length from the middle.
func (v *visit) across(share float64) (a, b string) {
	p, q := v.farthest()
	from, to := v.at[p], v.at[q]
	mid := plane.Lerp(from, to, 0.5+share/2)
	along := to.Sub(from).Unit()
	near := func(hand float64) string {
		return v.most(func(m plane.Point) float64 {
			d := m.Sub(mid)
			if hand*along.Cross(d) <= 0 {
				return math.Inf(-1)
			}
			return -math.Abs(along.Dot(d))
		})
	}
	return near(1), near(-1)
}
