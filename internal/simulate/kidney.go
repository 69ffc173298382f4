package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// kidney is made of four tangent arcs: two lobes, a long back and a hollow waist.
type kidney struct{}

func (kidney) Name() string { return "kidney" }

func (kidney) Draw(r *rand.Rand) Figure {
	for range tries {
		first := between(r, 1.5, 2.8)
		second := first * between(r, 0.70, 1.0)
		apart := (first + second) * between(r, 1.0, 1.35)
		long := apart + first + second
		back := long * between(r, 0.62, 0.85)
		waist := between(r, 1.2, 3.0)
		if long < 6 || 2*waist < 0.3+apart-first-second {
			continue
		}
		if f := Kidney(first, second, apart, back, waist); neck(f) > 1.8 {
			return f
		}
	}
	panic("simulate: no kidney found")
}

// Kidney has lobes of the radii first and second with centres apart, a back of radius back
// round both (the lobes touch it from inside) and a waist of radius waist between them (its
// circle touches the lobes from outside). Tangent circles touch on the line of their centres.
// Counter-clockwise: back, second lobe, waist, first lobe. back must exceed
// (apart+first+second)/2, and 2·waist must exceed apart−first−second.
func Kidney(first, second, apart, back, waist float64) Figure {
	c1, c2 := plane.Point{X: -apart / 2}, plane.Point{X: apart / 2}
	cb := third(c1, back-first, c2, back-second)
	cw := third(c1, waist+first, c2, waist+second)
	on := func(c, toward plane.Point, r float64) plane.Point {
		return c.Add(toward.Sub(c).Unit().Mul(r))
	}
	b1, b2 := on(cb, c1, back), on(cb, c2, back)
	w1, w2 := on(c1, cw, first), on(c2, cw, second)
	return Figure{
		round(cb, b1, b2, 1),
		round(c2, b2, w2, 1),
		round(cw, w2, w1, -1),
		round(c1, w1, b1, 1),
	}
}

// third is the upper corner of a triangle over p, q (p left of q at one height) from its other sides.
func third(p plane.Point, a float64, q plane.Point, b float64) plane.Point {
	d := q.X - p.X
	x := (d*d + a*a - b*b) / (2 * d)
	return plane.Point{X: p.X + x, Y: p.Y + math.Sqrt(a*a-x*x)}
}

// round is the arc about c from a to b, left (sense 1) or right (−1), as a tangent piece.
func round(c, a, b plane.Point, sense float64) Piece {
	sweep := sense * plane.Between(a.Sub(c), b.Sub(c))
	if sweep < 0 {
		sweep += 2 * math.Pi
	}
	return one(plane.Segment{A: a, B: b, Bulge: sense * math.Tan(sweep/4)}, true)
}

// neck is the width of a kidney from the middle of its waist to its back.
func neck(f Figure) float64 {
	mid := f[2].Segs[0].At(0.5)
	q, _ := f[0].Segs[0].Nearest(mid)
	return q.Dist(mid)
}
