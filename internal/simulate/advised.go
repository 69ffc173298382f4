package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// good is the least angle, from 0° or from 180°, under which two tapes should meet at a mark;
// common practice, no source.
const good = 30 * math.Pi / 180

// stands is how many ways to stand the pegs a measurer compares on the sketch.
const stands = 8

// advised stands pegs as a measurer is advised to, common practice, no source: A and B behind
// a long side, 1.5 to 2.5 m back and 0.6 to 0.8 of the pool's length apart, about the middle; C
// behind an end or the other long side; a fourth behind what is left. Of a few such ways they
// take the one whose weakest mark is best.
func advised(r *rand.Rand, p pool, n int) []plane.Point {
	var best []plane.Point
	weakest, side := math.Inf(1), p.longSide()
	for range stands {
		pegs := stand(r, p, side, n)
		if w := weak(p.marks, pegs); w < weakest {
			best, weakest = pegs, w
		}
	}
	return best
}

// weak is the largest sd of the place of a mark, as a whole, by ties of unit sd from the pegs: the
// root of the trace of (Σ u·uᵀ)⁻¹, u being the directions of the tapes.
func weak(marks, pegs []plane.Point) float64 {
	most := 0.0
	for _, m := range marks {
		var xx, xy, yy float64
		for _, p := range pegs {
			u := m.Sub(p).Unit()
			xx, xy, yy = xx+u.X*u.X, xy+u.X*u.Y, yy+u.Y*u.Y
		}
		most = math.Max(most, math.Sqrt((xx+yy)/(xx*yy-xy*xy)))
	}
	return most
}

// stand is one such way, A and B on one of the long sides: side is outward of one of them. They are stood again while their tapes meet badly somewhere.
func stand(r *rand.Rand, p pool, side float64, n int) []plane.Point {
	first := side
	if chance(r, 0.5) {
		first += math.Pi
	}
	for k := range tries {
		pegs := advisedBase(r, p, first)
		least := good
		if k > tries/10 {
			least = hopeless
		}
		if aside(p, pegs[0], pegs[1], 0.5) && meetAll(p.marks, pegs[0], pegs[1], least) {
			return further(r, p, first, pegs, n)
		}
	}
	panic("simulate: no good place for two pegs found")
}

func advisedBase(r *rand.Rand, p pool, side float64) []plane.Point {
	h := p.side(side + degrees(between(r, -3, 3)))
	base := (h.hi - h.lo) * between(r, 0.6, 0.8)
	mid := (h.lo+h.hi)/2 + (h.hi-h.lo)*between(r, -0.05, 0.05)
	return []plane.Point{h.peg(between(r, 1.5, 2.5), mid-base/2), h.peg(between(r, 1.5, 2.5), mid+base/2)}
}

// further stands C and D behind an end and behind the other long side, in drawn order.
func further(r *rand.Rand, p pool, first float64, pegs []plane.Point, n int) []plane.Point {
	end := first + math.Pi/2
	if chance(r, 0.5) {
		end = first - math.Pi/2
	}
	places := []float64{end, first + math.Pi}
	if chance(r, 0.5) {
		places[0], places[1] = places[1], places[0]
	}
	for _, angle := range places[:max(0, n-2)] {
		h := p.side(angle)
		along := (h.lo+h.hi)/2 + (h.hi-h.lo)*between(r, -0.2, 0.2)
		pegs = append(pegs, h.peg(between(r, 1.5, 2.5), along))
	}
	return pegs
}

// longSide is the outward direction of one long side: that in which the pool reaches least.
func (p pool) longSide() float64 {
	best, least := 0.0, math.Inf(1)
	for i := range 36 {
		angle := float64(i) * math.Pi / 36
		h := p.side(angle + math.Pi/2)
		if wide := h.hi - h.lo; wide < least { // along that side's own direction
			best, least = angle, wide
		}
	}
	return best
}

func meetAll(marks []plane.Point, a, b plane.Point, least float64) bool {
	for _, m := range marks {
		if angle := math.Abs(plane.Between(a.Sub(m), b.Sub(m))); angle < least || angle > math.Pi-least {
			return false
		}
	}
	return true
}
