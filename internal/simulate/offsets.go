package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// offsetsWithTies stretches a string between A and B along one long side, sometimes another
// between C and D along the other, reads offsets to the marks within reach and ties to the rest.
type offsetsWithTies struct{}

func (offsetsWithTies) Name() string { return "offsets with ties" }

// reach is the longest offset that is worth reading.
const reach = 3.0

func (offsetsWithTies) pegs(r *rand.Rand, p pool) []plane.Point {
	for range tries {
		first := math.Pi / 2
		if chance(r, 0.5) {
			first = -first
		}
		pegs := stringLine(r, p, first+degrees(between(r, -3, 3)))
		if chance(r, 0.5) {
			pegs = append(pegs, stringLine(r, p, first+math.Pi+degrees(between(r, -3, 3)))...)
		}
		if restFixed(p, pegs) {
			return pegs
		}
	}
	panic("simulate: no place for a string found")
}

func stringLine(r *rand.Rand, p pool, angle float64) []plane.Point {
	h := p.side(angle)
	return []plane.Point{
		h.peg(between(r, 0.4, 1.0), h.lo-between(r, 0.2, 1.0)),
		h.peg(between(r, 0.4, 1.0), h.hi+between(r, 0.2, 1.0)),
	}
}

// restFixed says that the string runs clear of the rim and that ties fix what it does not
// reach.
func restFixed(p pool, pegs []plane.Point) bool {
	for i := 0; i < len(pegs); i += 2 {
		if !aside(p, pegs[i], pegs[i+1], 0.2) {
			return false
		}
	}
	for _, m := range p.marks {
		if inReach(m, pegs) < 0 && !meets(m, pegs[0], pegs[1]) {
			return false
		}
	}
	return true
}

// inReach is the number of the first of the two pegs whose string reaches m, −1 for none.
func inReach(m plane.Point, pegs []plane.Point) int {
	for i := 0; i < len(pegs); i += 2 {
		u := pegs[i+1].Sub(pegs[i])
		d := m.Sub(pegs[i])
		at, off := d.Dot(u.Unit()), u.Unit().Cross(d)
		if at >= 0 && at <= u.Len() && math.Abs(off) <= reach {
			return i
		}
	}
	return -1
}

func (offsetsWithTies) read(v *visit) {
	v.base()
	v.pegTies()
	var own []float64
	if chance(v.r, 0.5) { // the tape swung for the least reading: squarer than by eye
		own = []float64{stepped(v.r, 0.006, 0.012, 0.001), stepped(v.r, 0.003, 0.005, 0.001)}
	}
	pegs := v.places(v.pegs)
	for _, m := range v.order {
		line := inReach(v.at[m], pegs)
		if line < 0 {
			for _, peg := range v.pegs {
				v.tie(peg, m, v.tape)
			}
			continue
		}
		v.offset(m, v.pegs[line], v.pegs[line+1], own)
		if chance(v.r, 0.35) {
			v.tie(pick(v.r, v.pegs), m, v.tape)
		}
	}
	v.checkTapes(v.share)
}
