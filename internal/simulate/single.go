package simulate

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
)

// Single is a kind of mistake that a single reading can have.
type Single struct {
	Code  string
	spoil func(r *rand.Rand, c Case, x Reading, part int) (spoiledPart, bool)
}

// Singles is the list of kinds. The codes are those of the format.
var Singles = []Single{
	{"foot", misread(foot)},
	{"metre", misread(1)},
	{"tenth", misread(0.1)},
	{"inch", misread(inch)},
	{"digits", textual(swaps)},
	{"lookalike", textual(lookalikes)},
	{"feet-tenths", tenths},
	{"feet-metres", metresAsFeet},
	{"wrong-peg", wrongPeg},
}

// least is the shortest length that anybody reads, metres.
const least = 0.05

// misread is wrong by one unit of a size, up or down. In a book of feet only feet and inches are
// misread so.
func misread(size float64) func(*rand.Rand, Case, Reading, int) (spoiledPart, bool) {
	return func(r *rand.Rand, c Case, x Reading, part int) (spoiledPart, bool) {
		if c.Unit == "ft" && size != foot && size != inch {
			return spoiledPart{}, false
		}
		by := size
		if chance(r, 0.5) {
			by = -size
		}
		return x.by(c, part, by)
	}
}

// by is the part with its length changed.
func (x Reading) by(c Case, part int, by float64) (spoiledPart, bool) {
	was := x.length(part)
	now := was + by
	if now < least && !x.signedPart(part) {
		return spoiledPart{}, false
	}
	text, _ := typedAs(now, c.Unit, false)
	return spoiledPart{was: x.Typed[part], text: text}, true
}

// length is the part as typed, without the sign that an offset's hand gives.
func (x Reading) length(part int) float64 {
	if x.handed(part) {
		return math.Abs(x.Typed[part])
	}
	return x.Typed[part]
}

// textual draws one of the texts that the one typed can turn into.
func textual(into func(text string) []string) func(*rand.Rand, Case, Reading, int) (spoiledPart, bool) {
	return func(r *rand.Rand, c Case, x Reading, part int) (spoiledPart, bool) {
		var list []string
		for _, t := range into(x.Text[part]) {
			if x.signedPart(part) || valueOf(t, c.Unit) >= least {
				list = append(list, t)
			}
		}
		if len(list) == 0 {
			return spoiledPart{}, false
		}
		return spoiledPart{was: x.Typed[part], text: pick(r, list)}, true
	}
}

// nearTenth is how near a length must lie to a figure in feet and tenths to be read as it, metres.
const nearTenth = 0.003

// tenths books a figure in feet and tenths as feet and inches: 5.8 ft as 5' 8, and in hundredths
// 5.10 ft as 5' 10.
func tenths(r *rand.Rand, c Case, x Reading, part int) (spoiledPart, bool) {
	if c.Unit != "ft" {
		return spoiledPart{}, false
	}
	feet := math.Floor(x.Read[part] / foot)
	var list []spoiledPart
	for inches := 1; inches < 12; inches++ {
		rest := float64(inches) / 10
		if inches >= 10 {
			rest /= 10
		}
		if was := (feet + rest) * foot; math.Abs(was-x.Read[part]) <= nearTenth {
			list = append(list, spoiledPart{was, feetOf(int(feet), 16*inches)})
		}
	}
	if len(list) == 0 || feet < 1 {
		return spoiledPart{}, false
	}
	return pick(r, list), true
}

// metresAsFeet books the figure of the feet side of a tape as metres.
func metresAsFeet(_ *rand.Rand, c Case, x Reading, part int) (spoiledPart, bool) {
	if c.Unit != "m" {
		return spoiledPart{}, false
	}
	text := strconv.FormatFloat(x.length(part)/foot, 'f', 3, 64)
	return spoiledPart{was: x.Typed[part], text: text}, true
}

// wrongPeg reads the mark from another peg than the one that is booked.
func wrongPeg(r *rand.Rand, c Case, x Reading, _ int) (spoiledPart, bool) {
	if x.Kind != "tie" || !c.isPeg(x.Marks[0]) || c.isPeg(x.Marks[1]) {
		return spoiledPart{}, false
	}
	var others []string
	for _, p := range c.Pegs {
		if p != x.Marks[0] {
			others = append(others, p)
		}
	}
	from := pick(r, others)
	read := c.Truth[from].Dist(c.Truth[x.Marks[1]]) + x.SD[0]*r.NormFloat64()
	text, _ := typedAs(read, c.Unit, false)
	return spoiledPart{was: x.Typed[0], text: text}, read >= least
}

func (c Case) isPeg(name string) bool {
	for _, p := range c.Pegs {
		if p == name {
			return true
		}
	}
	return false
}

// apart is how far an unlisted mistake stays from every listed one, metres.
const apart = 0.015

// unlisted is wrong by 0.05 to 2.5 m, by no listed mistake of this text.
func unlisted(r *rand.Rand, c Case, x Reading, part int) (spoiledPart, bool) {
	listed := x.listed(c, part)
	for range tries {
		by := between(r, 0.05, 2.5)
		if chance(r, 0.5) {
			by = -by
		}
		s, ok := x.by(c, part, by)
		if !ok {
			continue
		}
		now, near := valueOf(s.text, c.Unit), false
		for _, v := range listed {
			near = near || math.Abs(now-v) < apart
		}
		if !near {
			return s, true
		}
	}
	return spoiledPart{}, false
}

// listed are the values that the listed mistakes of one reading could have made of this part.
func (x Reading) listed(c Case, part int) []float64 {
	was := x.length(part)
	var out []float64
	for _, size := range []float64{foot, 1, 0.1, inch} {
		out = append(out, was+size, was-size)
	}
	for _, t := range append(swaps(x.Text[part]), lookalikes(x.Text[part])...) {
		out = append(out, valueOf(t, c.Unit))
	}
	out = append(out, was/foot, was*foot)
	if strings.Contains(x.Text[part], "'") {
		feet, rest := math.Modf(was / foot)
		out = append(out, (feet+rest*1.2)*foot, (feet+rest*0.12)*foot, (feet+rest/1.2)*foot)
	}
	return out
}
