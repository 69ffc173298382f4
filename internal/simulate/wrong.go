package simulate

import (
	"math"
	"math/rand/v2"
	"strings"
)

// Gross is one gross error planted in a reading.
type Gross struct {
	Index    int    // in Case.Readings
	N        string // the reading's number in the book
	Part     int
	Kind     string // metre, tenth, foot, digits
	Was, Now float64
}

// grossKinds are the errors that Wrong plants, by size in metres; digits has none of its own.
var grossKinds = []struct {
	kind string
	size float64
}{
	{"metre", 1}, {"tenth", 0.1}, {"foot", 0.3048}, {"digits", 0},
}

// Wrong plants gross errors in a share of the readings, at least one where share is above 0,
// one part each, and gives the case with its new book and what was planted, in book order. The
// truth and the case given stay as they are.
func Wrong(c Case, seed uint64, share float64) (Case, []Gross) {
	r := stream(seed, streamWrong, c.Shape.Name(), c.Method.Name())
	n := int(math.Ceil(share * float64(len(c.Readings))))
	chosen := make([]bool, len(c.Readings))
	for _, i := range r.Perm(len(c.Readings))[:min(n, len(c.Readings))] {
		chosen[i] = true
	}
	out := c
	out.Readings = append([]Reading(nil), c.Readings...)
	var planted []Gross
	for i, x := range out.Readings {
		if !chosen[i] {
			continue
		}
		part := r.IntN(len(x.Typed))
		kind, text, now := spoiled(r, x, part, c.Unit)
		planted = append(planted, Gross{Index: i, N: x.N, Part: part, Kind: kind, Was: x.Typed[part], Now: now})
		x.Text, x.Typed = append([]string(nil), x.Text...), append([]float64(nil), x.Typed...)
		x.Text[part], x.Typed[part] = text, now
		out.Readings[i] = x
	}
	out.Book = book(out)
	return out, planted
}

// spoiled is a part of a reading with an error of a drawn kind. A length stays above 5 cm, and
// the hand that an offset is said to lie on stays.
func spoiled(r *rand.Rand, x Reading, part int, unit string) (kind, text string, now float64) {
	signed := x.Kind == "seen" || (x.Kind == "offset" && part == 0)
	was, sign := x.Typed[part], 1.0
	if !signed {
		was, sign = math.Abs(was), math.Copysign(1, was)
	}
	for {
		k := pick(r, grossKinds)
		size := k.size
		if chance(r, 0.5) {
			size = -size
		}
		text, now = typedAs(was+size, unit, strings.Contains(x.Text[part], ".") && len(x.Text[part]) > 9)
		if k.kind == "digits" {
			text = swapped(r, x.Text[part])
			now = valueOf(text, unit)
		}
		if (signed || now > 0.05) && math.Abs(now-was) > 0.05 {
			return k.kind, text, sign * now
		}
	}
}

// swapped exchanges two adjacent digits, unless the figure would then begin with a needless 0.
func swapped(r *rand.Rand, text string) string {
	b := []byte(text)
	i := r.IntN(len(b))
	k := i + 1
	if k < len(b) && b[k] == '.' {
		k++
	}
	if k < len(b) && isDigit(b[i]) && isDigit(b[k]) {
		b[i], b[k] = b[k], b[i]
	}
	if t := strings.TrimPrefix(string(b), "-"); len(t) > 1 && t[0] == '0' && t[1] != '.' {
		return text
	}
	return string(b)
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
