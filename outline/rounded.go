package outline

import "math"

// slightTurn is the most turn at a joint that is looked at as tangent.
const slightTurn = 15 * math.Pi / 180

// smoothJoints says that nothing but what may be noise keeps the joints from being tangent.
func (b *body) smoothJoints() bool {
	for _, t := range b.turning {
		if math.Abs(t) > slightTurn {
			return false
		}
	}
	return true
}

// stadium is two parallel sides with a half circle at either end.
func (b *body) stadium() *Family {
	if !b.begin("sasa") || !b.smoothJoints() {
		return nil
	}
	for _, i := range []int{1, 3} {
		if s := math.Abs(b.seg(b.c.q, b.side[i]).Sweep()); math.Abs(s-math.Pi) > 2*slightTurn {
			return nil
		}
	}
	f := &Family{Kind: "stadium"}
	f.Figures = b.list([]string{"length", "width"}, func(q []float64) []float64 {
		s, t := b.seg(q, b.side[1]), b.seg(q, b.side[3])
		r := b.radius(q, b.side[1]) + b.radius(q, b.side[3])
		return []float64{s.Centre().Dist(t.Centre()) + r, r}
	})
	b.same(f, "radius", []int{b.side[1], b.side[3]}, b.radius)
	f.Test = b.c.wald(func(q []float64) []float64 {
		return append(b.smooth(q), b.angle(q, 0, 2, 180), b.radius(q, b.side[1])-b.radius(q, b.side[3]))
	})
	return f
}

// arcs says that the line is so many arcs or more, of which so many turn the other way.
func (b *body) arcs(least, most, hollow int) bool {
	n := 0
	for _, i := range b.side {
		if b.c.pieces[i].kind != "arc" {
			return false
		}
		if b.hand*b.seg(b.c.q, i).Sweep() < 0 {
			n++
		}
	}
	return !b.curved && len(b.side) >= least && len(b.side) <= most && n == hollow && b.smoothJoints()
}

// oval is four tangent arcs, opposite ones alike, the tighter ones at the ends.
func (b *body) oval() *Family {
	if !b.arcs(4, 4, 0) {
		return nil
	}
	r := func(q []float64, i int) float64 { return b.radius(q, b.side[i]) }
	if r(b.c.q, 0)+r(b.c.q, 2) > r(b.c.q, 1)+r(b.c.q, 3) {
		b.shift()
	}
	f := &Family{Kind: "oval"}
	f.Figures = b.list([]string{"length", "width"}, func(q []float64) []float64 {
		c := func(i, j int) float64 { return b.seg(q, b.side[i]).Centre().Dist(b.seg(q, b.side[j]).Centre()) }
		return []float64{c(0, 2) + r(q, 0) + r(q, 2), r(q, 1) + r(q, 3) - c(1, 3)}
	})
	b.same(f, "end", []int{b.side[0], b.side[2]}, b.radius)
	b.same(f, "side", []int{b.side[1], b.side[3]}, b.radius)
	f.Test = b.c.wald(func(q []float64) []float64 {
		return append(b.smooth(q), r(q, 0)-r(q, 2), r(q, 1)-r(q, 3))
	})
	return f
}

// kidney is four to six tangent arcs of which one is hollow.
func (b *body) kidney() *Family {
	if !b.arcs(4, 6, 1) {
		return nil
	}
	for b.hand*b.seg(b.c.q, b.side[0]).Sweep() > 0 { // the waist first
		b.shift()
	}
	f := &Family{Kind: "kidney"}
	names := []string{"waist", "lobe 1"}
	for k := range len(b.side) - 3 {
		names = append(names, []string{"back", "back 2", "back 3"}[k])
	}
	f.Figures = b.list(append(names, "lobe 2"), func(q []float64) []float64 {
		var out []float64
		for _, i := range b.side {
			out = append(out, b.radius(q, i))
		}
		return out
	})
	f.Test = b.c.wald(b.smooth)
	return f
}
