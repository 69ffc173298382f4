package plane

import "math"

// shears cut from strands what the discs about the path's own corners cover, looking along the path
// only. They never cut too much; what they leave is looked at in full. Where a path is rough beside d
// nearly all strands end here.
type shears struct {
	at   []Point // the corners in order
	ring bool
	d    float64
	deep float64  // square of the distance below which a place is covered
	last [3]int   // corners that cut before, the latest first
	end  [2]Point // of the strand, from its centre if it has one
	way  Point    // of a straight
	mid  Point    // centre of an arc, start of a straight
	kind strandKind
}

type strandKind uint8

const (
	flat  strandKind = iota // a straight
	round                   // an arc about a corner
)

// steps are how far along the path from a strand corners are tried, on both sides.
var steps = [...]int{1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64}

func newShears(p Path, d float64) *shears {
	k := &shears{at: make([]Point, len(p.Segs), len(p.Segs)+1), ring: p.Closed, d: d, deep: (d - hairline) * (d - hairline)}
	for i := range p.Segs {
		k.at[i] = p.Segs[i].A
	}
	if !p.Closed {
		k.at = append(k.at, p.Segs[len(p.Segs)-1].B)
	}
	return k
}

// cut shortens a strand by its ends; false where nothing of it is left. A disc that covers both ends
// covers a straight, and an arc of its own radius up to half a circle.
func (k *shears) cut(s *strand) bool {
	if !k.take(s) {
		return true
	}
	touched := false
	for _, i := range k.last {
		c, left := k.less(i)
		if !left {
			return false
		}
		touched = touched || c
	}
	for _, step := range steps {
		far := 0
		for _, i := range [2]int{s.at + step, s.at + 1 - step} {
			if i = k.index(i); i < 0 || k.beyond(i) {
				far++
				continue
			}
			c, left := k.less(i)
			if !left {
				k.note(i)
				return false
			}
			touched = touched || c
		}
		if far == 2 {
			break
		}
	}
	if touched {
		k.put(s)
	}
	return s.Chord() > least
}

// take makes a strand the one to be cut; false where it is none that can be.
func (k *shears) take(s *strand) bool {
	switch {
	case s.Bulge == 0:
		k.kind, k.mid, k.way = flat, s.A, s.B.Sub(s.A).Unit()
	case s.of < 0 && s.Bulge <= 1:
		k.kind, k.mid = round, k.at[(s.at+1)%len(k.at)]
	default:
		return false
	}
	k.end = [2]Point{s.A.Sub(k.mid), s.B.Sub(k.mid)}
	return true
}

// put gives the strand its new ends.
func (k *shears) put(s *strand) {
	a, b := k.end[0], k.end[1]
	s.A, s.B = k.mid.Add(a), k.mid.Add(b)
	if k.kind == round {
		half := a.Cross(b) / (k.d*k.d + a.Dot(b))
		s.Bulge = half / (1 + math.Sqrt(1+half*half))
	}
}

// index is a corner's place in the list, −1 past the ends of an open path.
func (k *shears) index(i int) int {
	n := len(k.at)
	switch {
	case 0 <= i && i < n:
		return i
	case !k.ring:
		return -1
	}
	return ((i % n) + n) % n
}

// beyond says that a corner is too far away to cut anything.
func (k *shears) beyond(i int) bool {
	u := k.at[i].Sub(k.mid)
	return u.Dot(u) > 9*k.d*k.d
}

func (k *shears) note(i int) {
	if i != k.last[0] {
		k.last = [3]int{i, k.last[0], k.last[1]}
	}
}

// less takes what the disc about a corner covers; left is false where that is all.
func (k *shears) less(i int) (cut, left bool) {
	u := k.at[i].Sub(k.mid)
	v, w := k.end[0].Sub(u), k.end[1].Sub(u)
	first, second := v.Dot(v) < k.deep, w.Dot(w) < k.deep
	switch {
	case first && second:
		return true, false
	case !first && !second:
		return false, true
	}
	which := 1
	if first {
		which = 0
	}
	k.end[which] = k.rim(u, first)
	if k.kind == round {
		return true, k.end[0].Cross(k.end[1]) > 0
	}
	return true, k.end[1].Sub(k.end[0]).Dot(k.way) > 0
}

// rim is where the strand leaves the disc about u, or where it enters it.
func (k *shears) rim(u Point, leaves bool) Point {
	sign := 1.0
	if !leaves {
		sign = -1
	}
	if k.kind == round { // two circles of one radius meet on the line midway between their centres
		h := math.Sqrt(max(0, k.d*k.d/u.Dot(u)-0.25))
		return u.Mul(0.5).Add(u.Left().Mul(sign * h))
	}
	along, off := u.Dot(k.way), k.way.Cross(u)
	return k.way.Mul(along + sign*math.Sqrt(max(0, (k.d-off)*(k.d+off))))
}
