// Package parallels holds the rings on which plane.Offset is raced and tested, and the area of their
// parallels by other ways than plane.Offset goes.
package parallels

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// Kinds of rings: straights along a smooth line, arcs along it, straights with corners off it.
var Kinds = []string{"smooth", "arcs", "noise"}

// Noise is how far a corner may lie off its place towards the middle or away from it, in metres.
const Noise = 0.005

// Ring is a pool of about 8.6 m across with three waists, in n segments of a kind. The noise is seeded.
func Ring(kind string, n int) plane.Path {
	r := rand.New(rand.NewPCG(14, 14))
	p := plane.Path{Closed: true}
	noise := make([]float64, n)
	for i := range noise {
		if kind == "noise" {
			noise[i] = Noise * (2*r.Float64() - 1)
		}
	}
	at := func(k int) plane.Point { // in half steps
		way := math.Pi * float64(k) / float64(n)
		return plane.Point{X: 4 + 0.3*math.Cos(3*way) + noise[k/2%n]}.Turn(way)
	}
	for i := range n {
		from, to := at(2*i), at((2*i+2)%(2*n))
		if kind == "arcs" {
			p.Segs = append(p.Segs, plane.ArcThrough(from, at(2*i+1), to))
		} else {
			p.Segs = append(p.Segs, plane.Segment{A: from, B: to})
		}
	}
	return p
}
