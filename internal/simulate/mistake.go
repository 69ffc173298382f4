package simulate

import (
	"math"
	"math/rand/v2"
	"strconv"
)

// Unlisted is the kind of a mistake that is none of the listed ones.
const Unlisted = "unknown"

// Mistake is one human mistake planted in a case: in one reading, or in a group of readings.
type Mistake struct {
	Kind string
	Peg  string // whose column or place it concerns; empty where none
	Hits []Hit  // the readings that it changed, in book order
}

// Hit is a reading that a mistake changed. Values in metres; Was is what the measurer had before
// the mistake was made. Detectable is 4.13·sd/√redundancy by the true design, +Inf where nothing
// would show an error, and 0 for groups, of which it says nothing.
type Hit struct {
	Index, Part   int
	N             string
	Was, Now      float64
	Before, After string // as typed
	Detectable    float64
}

// Planting says what Plant plants.
type Planting struct {
	Share    float64  // of the readings; above 0 at least one
	Kinds    []string // listed kinds to draw from, of Singles
	Unlisted float64  // share of the mistakes that are of no listed kind
}

// Plant plants mistakes in single readings and gives the case with its new book and what was
// planted, in book order. The truth and the case given stay as they are.
func Plant(c Case, seed uint64, p Planting) (Case, []Mistake) {
	r := stream(seed, streamMistakes, c.Shape.Name(), c.Method.Name())
	n := int(math.Round(p.Share * float64(len(c.Readings))))
	if p.Share > 0 {
		n = max(n, 1)
	}
	detectable := c.Detectable()
	out := c.copied()
	planted := make([]*Mistake, len(c.Readings))
	for _, i := range r.Perm(len(c.Readings)) {
		if n == 0 {
			break
		}
		kind := Unlisted
		if len(p.Kinds) > 0 && !chance(r, p.Unlisted) {
			kind = pick(r, p.Kinds)
		}
		part := r.IntN(len(c.Readings[i].Typed))
		s, ok := spoil(r, c, i, part, kind)
		if !ok {
			continue // this reading cannot have that mistake: another one has
		}
		h := out.hit(i, part, s)
		h.Detectable = detectable[i][part]
		planted[i] = &Mistake{Kind: kind, Hits: []Hit{h}}
		n--
	}
	out.Book = book(out)
	var list []Mistake
	for _, m := range planted {
		if m != nil {
			list = append(list, *m)
		}
	}
	return out, list
}

// spoiledPart is a part of a reading after a mistake: what was had before it, and the text now.
type spoiledPart struct {
	was  float64
	text string
}

// spoil makes a mistake of the kind; ok is false where the reading cannot have it.
func spoil(r *rand.Rand, c Case, i, part int, kind string) (s spoiledPart, ok bool) {
	if kind == Unlisted {
		return unlisted(r, c, c.Readings[i], part)
	}
	for _, k := range Singles {
		if k.Code == kind {
			return k.spoil(r, c, c.Readings[i], part)
		}
	}
	panic("simulate: no such kind of mistake: " + kind)
}

// copied is the case with readings of its own.
func (c Case) copied() Case {
	list := make([]Reading, len(c.Readings))
	for i, x := range c.Readings {
		x.Read = append([]float64(nil), x.Read...)
		x.Text, x.Typed = append([]string(nil), x.Text...), append([]float64(nil), x.Typed...)
		list[i] = x
	}
	c.Readings = list
	return c
}

// hit types the text into a copied case and says what it did.
func (c *Case) hit(i, part int, s spoiledPart) Hit {
	x := &c.Readings[i]
	h := Hit{Index: i, Part: part, N: x.N, Was: s.was, Before: x.Text[part], After: s.text}
	h.Now = valueOf(s.text, c.Unit)
	if x.handed(part) {
		h.Now = math.Copysign(h.Now, x.Typed[part])
	}
	x.Text[part], x.Typed[part] = s.text, h.Now
	return h
}

// handed says that the part is an offset's length, whose sign is the hand.
func (x Reading) handed(part int) bool { return x.Kind == "offset" && part == 1 }

// signedPart says that the part may be negative.
func (x Reading) signedPart(part int) bool {
	return x.Kind == "seen" || (x.Kind == "offset" && part == 0)
}

// numbered numbers the readings again.
func (c *Case) numbered() {
	for i := range c.Readings {
		c.Readings[i].N = strconv.Itoa(i + 1)
	}
}
