package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// hand is the way pegs are set on one side of a pool: out of it, and along it.
type hand struct {
	out, along plane.Point
	edge       float64 // how far the rim reaches outward
	lo, hi     float64 // how far it reaches along
}

func (p pool) side(angle float64) hand {
	out := plane.Point{X: 1}.Turn(angle)
	h := hand{out: out, along: out.Left(), edge: math.Inf(-1), lo: math.Inf(1), hi: math.Inf(-1)}
	for _, q := range p.rim {
		h.edge = math.Max(h.edge, q.Dot(h.out))
		h.lo, h.hi = math.Min(h.lo, q.Dot(h.along)), math.Max(h.hi, q.Dot(h.along))
	}
	return h
}

// peg stands back metres behind the edge, at a place along.
func (h hand) peg(back, along float64) plane.Point {
	return h.out.Mul(h.edge + back).Add(h.along.Mul(along))
}

// length is the longest distance between two marks.
func (p pool) length() float64 {
	most := 0.0
	for i, a := range p.marks {
		for _, b := range p.marks[:i] {
			most = math.Max(most, a.Dist(b))
		}
	}
	return most
}

// twoPegs stands A and B 1 to 3 m back from one side, one end or one corner, half to a whole
// length apart, so that no mark is seen under a hopeless angle and the base runs clear of
// the rim.
func twoPegs(r *rand.Rand, p pool) []plane.Point {
	length := p.length()
	for range tries {
		h := p.side(float64(r.IntN(8))*math.Pi/4 + degrees(between(r, -12, 12)))
		base := length * between(r, 0.5, 1)
		mid := (h.lo+h.hi)/2 + base*between(r, -0.15, 0.15)
		a := h.peg(between(r, 1, 3), mid-base/2)
		b := h.peg(between(r, 1, 3), mid+base/2)
		if aside(p, a, b, 0.5) && wellMet(p.marks, a, b) {
			return []plane.Point{a, b}
		}
	}
	panic("simulate: no place for two pegs found")
}

// aside says that the whole rim lies on one hand of the line ab, at least by metres off.
func aside(p pool, a, b plane.Point, by float64) bool {
	u := b.Sub(a).Unit()
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range p.rim {
		off := u.Cross(q.Sub(a))
		lo, hi = math.Min(lo, off), math.Max(hi, off)
	}
	return lo >= by || hi <= -by
}

// hopeless is the least angle, from 0° or from 180°, under which two tapes may meet at a mark.
const hopeless = 22 * math.Pi / 180

// wellMet says that the tapes from a and b meet well at every mark.
func wellMet(marks []plane.Point, a, b plane.Point) bool {
	for _, m := range marks {
		if !meets(m, a, b) {
			return false
		}
	}
	return true
}

func meets(m, a, b plane.Point) bool {
	angle := math.Abs(plane.Between(a.Sub(m), b.Sub(m)))
	return angle >= hopeless && angle <= math.Pi-hopeless
}

// fixes says that ties from the pegs fix m without doubt: two of them meet well, and every
// mirror image of m in the line of two pegs disagrees plainly with a third. Where all the marks
// lie on one hand of two pegs, the two alone are enough.
func fixes(m plane.Point, from []plane.Point, oneHand bool) bool {
	well := false
	for i, a := range from {
		for _, b := range from[:i] {
			well = well || meets(m, a, b)
			if !oneHand && !told(m, a, b, from) {
				return false
			}
		}
	}
	return well
}

// told says that some peg tells m from its mirror image in the line ab, or that the image is
// so near that it makes no other place.
func told(m, a, b plane.Point, from []plane.Point) bool {
	u := b.Sub(a).Unit()
	image := m.Sub(u.Left().Mul(2 * u.Cross(m.Sub(a))))
	if image.Dist(m) < 0.1 {
		return true
	}
	for _, c := range from {
		if math.Abs(c.Dist(image)-c.Dist(m)) > 0.25 {
			return true
		}
	}
	return false
}
