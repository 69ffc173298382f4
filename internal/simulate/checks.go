package simulate

import (
	"math"

	"brimline/plane"
)

// checkTapes joins marks of the rim by tape: the long axis, the short axis, both diagonals,
// then neighbours and pairs across as they come.
func (v *visit) checkTapes(share float64) {
	n := int(math.Round(share * float64(len(v.order))))
	pairs := v.mainPairs()
	for range tries {
		if len(pairs) >= n {
			break
		}
		i := v.r.IntN(len(v.order))
		step := 1 + v.r.IntN(2)
		if chance(v.r, 0.4) {
			step = len(v.order)/3 + v.r.IntN(len(v.order)/3)
		}
		pairs = v.join(pairs, v.order[i], v.order[(i+step)%len(v.order)])
	}
	for i := 0; i < n && i < len(pairs); i++ {
		v.tie(pairs[i][0], pairs[i][1], v.check)
	}
}

// join adds a pair unless it stands there already or the two are nearer than a tape is worth.
func (v *visit) join(pairs [][2]string, a, b string) [][2]string {
	if v.at[a].Dist(v.at[b]) < 0.3 {
		return pairs
	}
	for _, p := range pairs {
		if p == [2]string{a, b} || p == [2]string{b, a} {
			return pairs
		}
	}
	return append(pairs, [2]string{a, b})
}

// mainPairs are the ends of the long axis, of the short axis, and of the two diagonals.
func (v *visit) mainPairs() [][2]string {
	a, b := v.farthest()
	mid := plane.Lerp(v.at[a], v.at[b], 0.5)
	along := v.at[b].Sub(v.at[a]).Unit()
	across := along.Left()
	half := v.at[a].Dist(v.at[b]) / 2
	width := 0.0
	for _, m := range v.order {
		width = math.Max(width, math.Abs(across.Dot(v.at[m].Sub(mid))))
	}
	// extreme is the mark furthest toward a corner, x and y being shares of the half sizes.
	extreme := func(x, y float64) string {
		return v.most(func(p plane.Point) float64 {
			d := p.Sub(mid)
			return x*along.Dot(d)/half + y*across.Dot(d)/width
		})
	}
	// middle is the mark nearest to the short axis on one hand of the long one.
	middle := func(hand float64) string {
		return v.most(func(p plane.Point) float64 {
			d := p.Sub(mid)
			if hand*across.Dot(d) <= 0 {
				return math.Inf(-1)
			}
			return -math.Abs(along.Dot(d))
		})
	}
	var pairs [][2]string
	pairs = v.join(pairs, a, b)
	pairs = v.join(pairs, middle(1), middle(-1))
	pairs = v.join(pairs, extreme(1, 1), extreme(-1, -1))
	return v.join(pairs, extreme(1, -1), extreme(-1, 1))
}

// most is the mark of the rim with the greatest worth, the first of equals.
func (v *visit) most(worth func(plane.Point) float64) string {
	best, name := math.Inf(-1), v.order[0]
	for _, m := range v.order {
		if w := worth(v.at[m]); w > best {
			best, name = w, m
		}
	}
	return name
}

func (v *visit) farthest() (a, b string) {
	most := -1.0
	for i, p := range v.order {
		for _, q := range v.order[:i] {
			if d := v.at[p].Dist(v.at[q]); d > most {
				most, a, b = d, q, p
			}
		}
	}
	return a, b
}
