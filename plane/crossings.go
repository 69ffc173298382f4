package plane

import (
	"cmp"
	"math"
	"slices"
)

// Crossing is a point that segments I < J of a path have in common.
type Crossing struct {
	I, J int
	At   Point
}

// touch is the distance in metres up to which segments count as meeting, and seam the distance
// round the common end of two neighbours within which they are not said to meet again.
const (
	touch = 1e-9
	seam  = 1e-6
)

// Crossings are the places where the path meets itself: where two segments cross, touch (within
// 10⁻⁹ m) or run over each other (then at the ends of the common piece). The common end of two
// neighbours does not count, nor what lies within 10⁻⁶ m of it. In order of I, J, then along I.
// Only pairs whose bounds overlap in a sweep along x are looked at.
func (p Path) Crossings() []Crossing {
	type item struct {
		i   int
		box Box
	}
	items := make([]item, len(p.Segs))
	for i, s := range p.Segs {
		items[i] = item{i, s.Bounds()}
	}
	slices.SortFunc(items, func(a, b item) int {
		return cmp.Or(cmp.Compare(a.box.Min.X, b.box.Min.X), cmp.Compare(a.i, b.i))
	})
	var out []Crossing
	var open []item
	for _, it := range items {
		open = slices.DeleteFunc(open, func(o item) bool { return o.box.Max.X < it.box.Min.X-touch })
		for _, o := range open {
			if o.box.Meets(it.box, touch) {
				out = append(out, p.pair(min(o.i, it.i), max(o.i, it.i))...)
			}
		}
		open = append(open, it)
	}
	slices.SortStableFunc(out, func(a, b Crossing) int {
		return cmp.Or(cmp.Compare(a.I, b.I), cmp.Compare(a.J, b.J))
	})
	return out
}

// pair are the crossings of segments i < j.
func (p Path) pair(i, j int) []Crossing {
	s, r := p.Segs[i], p.Segs[j]
	var shared []Point
	if j == i+1 {
		shared = append(shared, s.B)
	}
	if p.Closed && i == 0 && j == len(p.Segs)-1 {
		shared = append(shared, s.A)
	}
	var out []Crossing
	for _, q := range meetings(s, r, shared) {
		out = append(out, Crossing{i, j, q})
	}
	return out
}

// Meet are the points that two segments have in common, along s: crossings, touches, and of a
// common piece its ends.
func (s Segment) Meet(r Segment) []Point { return meetings(s, r, nil) }

// meetings leaves out what lies at the shared ends.
func meetings(s, r Segment, shared []Point) []Point {
	type hit struct {
		at Point
		t  float64
	}
	var hits []hit
	add := func(q Point) {
		on, t := s.Nearest(q)
		near, _ := r.Nearest(q)
		if on.Dist(q) > touch || near.Dist(q) > touch {
			return
		}
		for _, o := range shared {
			if o.Dist(q) <= seam {
				return
			}
		}
		for _, h := range hits {
			if h.at.Dist(q) <= seam {
				return
			}
		}
		hits = append(hits, hit{q, t})
	}
	for _, q := range []Point{s.A, s.B, r.A, r.B} {
		add(q)
	}
	origin := Lerp(r.A, r.B, 0.5)
	if len(shared) > 0 {
		origin = shared[0]
	}
	for _, q := range common(s.curve(), r.curve(), origin, len(shared) > 0) {
		add(q)
	}
	slices.SortStableFunc(hits, func(a, b hit) int { return cmp.Compare(a.t, b.t) })
	out := make([]Point, len(hits))
	for i, h := range hits {
		out[i] = h.at
	}
	return out
}

// common are the points that two whole curves have in common; none when they are the same.
// The difference of their equations that has no square term left is a line through those
// points; it is then met with the more curved of the two. With on, origin is known to be one.
func common(a, b curve, origin Point, on bool) []Point {
	if math.Abs(a.k) > math.Abs(b.k) {
		a, b = b, a
	}
	share := 0.0
	if b.k != 0 {
		share = a.k / b.k
	}
	ga, gb := a.grad(origin), b.grad(origin)
	fa, fb := a.value(origin), b.value(origin)
	if on {
		fa, fb = 0, 0
	}
	g := ga.Sub(gb.Mul(share))
	f := fa - share*fb
	if g.Len() < 1e-12 {
		return nil
	}
	// The line: g·q + f = 0 for q from the origin; its point nearest to the origin, and its way.
	foot := g.Mul(-f / g.Dot(g))
	way := g.Left().Unit()
	half := b.k / 2
	slope := gb.Dot(way) + b.k*foot.Dot(way)
	level := half*foot.Dot(foot) + gb.Dot(foot) + fb
	var out []Point
	for _, s := range roots(half, slope, level) {
		out = append(out, origin.Add(foot).Add(way.Mul(s)))
	}
	return out
}

// roots are the real roots of a·s² + b·s + c without loss; where the parabola misses zero by no
// more than touch, its vertex counts as one.
func roots(a, b, c float64) []float64 {
	if a == 0 {
		if b == 0 {
			return nil
		}
		return []float64{-c / b}
	}
	disc := b*b - 4*a*c
	if disc < 0 {
		if math.Abs(c-b*b/(4*a)) > touch {
			return nil
		}
		return []float64{-b / (2 * a)}
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
	if q == 0 {
		return []float64{0}
	}
	return []float64{c / q, q / a}
}
