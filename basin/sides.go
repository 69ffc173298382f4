package basin

import (
	"math"
	"slices"

	"brimline/plane"
)

// sides numbers the segments of the rim by stretches without a sharp corner.
func (b *Basin) sides() []int {
	segs := b.rim.Segs
	out := make([]int, len(segs))
	k := 0
	turned := func(i, j int) bool {
		return math.Abs(plane.Between(segs[i].Tangent(1), segs[j].Tangent(0))) > sharp
	}
	for i := 1; i < len(segs); i++ {
		if turned(i-1, i) {
			k++
		}
		out[i] = k
	}
	if last := len(segs) - 1; k > 0 && !turned(last, 0) {
		for i := last; i >= 0 && out[i] == k; i-- {
			out[i] = 0
		}
	}
	b.sided = slices.Max(out) + 1
	return out
}

// turn is how much the rim turns strictly between two stations, in whatever direction.
func (b *Basin) turn(from, to float64) float64 {
	length := b.ahead(from, to)
	if length == 0 {
		length = b.whole
	}
	sum, start := 0.0, 0.0
	for i, s := range b.rim.Segs {
		if s.Bulge != 0 {
			l := s.Length()
			lo, hi := b.ahead(from, start), b.ahead(from, start)+l
			part := math.Max(0, math.Min(hi, length)-lo) + math.Max(0, math.Min(hi-b.whole, length))
			sum += math.Abs(s.Sweep()) * part / l
		}
		if at := b.ahead(from, start); at > joined && at < length-joined {
			before := b.rim.Segs[(i+len(b.rim.Segs)-1)%len(b.rim.Segs)]
			sum += math.Abs(plane.Between(before.Tangent(1), s.Tangent(0)))
		}
		start += s.Length()
	}
	return sum
}

// turning is a corner of the rim, and the stretch on either side of it that goes with it.
type turning struct{ s, reach float64 }

// blunt is the turn from which a joint needs such a stretch: on the inside of it a wall that leans or
// a cove would come out beyond the corner. Such places go with the corner.
const blunt, clearance = 0.05, 0.06

// findTurnings lists the corners; size is how far the basin comes in from the rim.
func (b *Basin) findTurnings(size float64) {
	start := 0.0
	n := len(b.rim.Segs)
	for i, s := range b.rim.Segs {
		turn := math.Abs(plane.Between(b.rim.Segs[(i+n-1)%n].Tangent(1), s.Tangent(0)))
		if turn > blunt {
			b.turnings = append(b.turnings, turning{start, clearance + 1.05*size*math.Tan(math.Min(turn, 2.5)/2)})
		}
		start += s.Length()
	}
}

// clear is the station, or the corner that it goes with.
func (b *Basin) clear(s float64) float64 {
	s = b.wrap(s)
	for _, t := range b.turnings {
		if b.gap(s, t.s) < t.reach {
			return t.s
		}
	}
	return s
}

// beyond is a station a little before (−1) or after (1) another, out of reach of a corner.
func (b *Basin) beyond(s, way float64) float64 {
	to := b.wrap(s + way*edge)
	for _, t := range b.turnings {
		if b.gap(to, t.s) < t.reach {
			return b.wrap(t.s + way*(t.reach+joined))
		}
	}
	return to
}
