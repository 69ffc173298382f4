package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// freeform is one smooth closed curve without straights, arcs or joints.
type freeform struct{}

func (freeform) Name() string { return "freeform" }

const (
	tightest = 0.9  // least radius of a freeform outline, metres
	pieces   = 1440 // short arcs that follow it
)

// Draw gives r(t) = 1 + Σ a·cos(kt + φ), k = 2 to 4, brought to size; outlines with a radius
// below the tightest are drawn again.
func (freeform) Draw(r *rand.Rand) Figure {
	for range tries {
		size := between(r, 7, 14)
		var amp, phase [5]float64
		amp[2], amp[3], amp[4] = between(r, 0.10, 0.28), between(r, 0, 0.14), between(r, 0, 0.05)
		for k := 3; k <= 4; k++ {
			phase[k] = between(r, 0, 2*math.Pi)
		}
		f := ringOf(func(t float64) plane.Point {
			radius := 1.0
			for k := 2; k <= 4; k++ {
				radius += amp[k] * math.Cos(float64(k)*t+phase[k])
			}
			return plane.Point{X: radius}.Turn(t)
		}, size)
		if sharpest(f) >= tightest {
			return f
		}
	}
	panic("simulate: no freeform outline found")
}

// ringOf follows a closed curve over t from 0 to 2π, scaled so that it is size wide in x.
func ringOf(at func(t float64) plane.Point, size float64) Figure {
	var nodes []plane.Point // ends and middles of the short arcs
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range 2 * pieces {
		p := at(math.Pi * float64(i) / pieces)
		nodes = append(nodes, p)
		lo, hi = math.Min(lo, p.X), math.Max(hi, p.X)
	}
	mid := plane.Point{X: (lo + hi) / 2}
	node := func(i int) plane.Point { return nodes[i%len(nodes)].Sub(mid).Mul(size / (hi - lo)) }
	c := Piece{Kind: curve, Tangent: true}
	for i := 0; i < 2*pieces; i += 2 {
		c.Segs = append(c.Segs, plane.ArcThrough(node(i), node(i+1), node(i+2)))
	}
	return Figure{c}
}

// sharpest is the least radius of the arcs of a figure.
func sharpest(f Figure) float64 {
	least := math.Inf(1)
	for _, x := range f {
		for _, s := range x.Segs {
			least = math.Min(least, math.Abs(s.Radius()))
		}
	}
	return least
}
