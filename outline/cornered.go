package outline

import (
	"fmt"
	"math"

	"brimline/plane"
)

// nearRight is how far a corner may be from a right angle in a shape that is looked at as square.
const nearRight = 20 * math.Pi / 180

// turnsAbout says that the corners after the sides turn by about so many degrees.
func (b *body) turnsAbout(degrees ...float64) bool {
	for i, d := range degrees {
		if math.Abs(b.angle(b.c.q, i, (i+1)%len(b.side), d)) > nearRight {
			return false
		}
	}
	return true
}

// shift begins one side later.
func (b *body) shift() {
	b.side, b.corner = append(b.side[1:], b.side[0]), append(b.corner[1:], b.corner[0])
}

// virtual is the corner where side i drawn on meets the next.
func (b *body) virtual(q []float64, i int) plane.Point {
	n := len(b.side)
	s, t := b.seg(q, b.side[(i+n)%n]), b.seg(q, b.side[(i+1)%n])
	u, v := s.B.Sub(s.A), t.B.Sub(t.A)
	return s.A.Add(u.Mul(t.A.Sub(s.A).Cross(v) / u.Cross(v)))
}

// long is the length of side i between the corners where it meets its neighbours, drawn on.
func (b *body) long(q []float64, i int) float64 { return b.virtual(q, i-1).Dist(b.virtual(q, i)) }

// rectangle is four sides and four corners, each sharp, round or cut. The test is that opposite
// sides are parallel.
func (b *body) rectangle() *Family {
	if !b.begin("ssss") || !b.turnsAbout(90, 90, 90, 90) {
		return nil
	}
	q := b.c.q
	if b.long(q, 0)+b.long(q, 2) < b.long(q, 1)+b.long(q, 3) {
		b.shift()
	}
	skew := func(q []float64) float64 { return (b.angle(q, 0, 1, 90) + b.angle(q, 2, 3, 90)) / 2 }
	f := &Family{Kind: "rectangle"}
	f.Figures = b.list([]string{"length", "width", "skew"}, func(q []float64) []float64 {
		return []float64{(b.long(q, 0) + b.long(q, 2)) / 2, (b.long(q, 1) + b.long(q, 3)) / 2, skew(q)}
	})
	parallel := func(q []float64) []float64 { return []float64{b.angle(q, 0, 2, 180), b.angle(q, 1, 3, 180)} }
	f.Test = b.c.wald(parallel)
	f.Square = b.c.wald(func(q []float64) []float64 { return []float64{skew(q)} })
	b.worst(f, "parallel", parallel)
	b.corners(f, []int{0, 1, 2, 3}, "radius")
	b.cut(f)
	return f
}

// ell is six sides of which the corner after the first turns the other way.
func (b *body) ell() *Family {
	if !b.begin("ssssss") {
		return nil
	}
	for k := 0; !b.turnsAbout(-90, 90, 90, 90, 90, 90); k++ {
		if k == 6 {
			return nil
		}
		b.shift()
	}
	longest, other, body, leg := 4, 3, 5, 2 // sides: both whole, and the ends of their arms
	if b.long(b.c.q, 3) > b.long(b.c.q, 4) {
		longest, other, body, leg = 3, 4, 2, 5
	}
	f := &Family{Kind: "L"}
	f.Figures = b.list([]string{"length", "deep", "width", "leg"}, func(q []float64) []float64 {
		return []float64{b.long(q, longest), b.long(q, other), b.long(q, body), b.long(q, leg)}
	})
	square := func(q []float64) []float64 {
		out := []float64{b.angle(q, 0, 1, -90)}
		for i := 1; i < 5; i++ {
			out = append(out, b.angle(q, i, i+1, 90))
		}
		return out
	}
	parallel := func(q []float64) []float64 {
		return []float64{b.angle(q, 0, 2, 0), b.angle(q, 0, 4, 180), b.angle(q, 1, 3, 180), b.angle(q, 1, 5, 0)}
	}
	f.Test, f.Square = b.c.wald(parallel), b.c.wald(square)
	b.worst(f, "skew", square)
	b.worst(f, "parallel", parallel)
	b.corners(f, []int{1, 2, 3, 4, 5}, "radius")
	b.corners(f, []int{0}, "inner")
	return f
}

// worst adds the largest of some angles.
func (b *body) worst(f *Family, name string, angles func(q []float64) []float64) {
	at := 0
	v := angles(b.c.q)
	for i := range v {
		if math.Abs(v[i]) > math.Abs(v[at]) {
			at = i
		}
	}
	f.Figures = append(f.Figures, b.list([]string{name}, func(q []float64) []float64 { return angles(q)[at : at+1] })...)
}

// corners adds the radius of round corners: one where they are alike, else each of its own.
func (b *body) corners(f *Family, which []int, name string) {
	var arcs []int
	for _, k := range which {
		if p := b.corner[k]; p >= 0 && b.c.pieces[p].kind == "arc" {
			arcs = append(arcs, p)
		}
	}
	b.same(f, name, arcs, b.radius)
}

// same adds a size of some pieces: the mean where they are alike, else each with a number.
func (b *body) same(f *Family, name string, pieces []int, size func(q []float64, piece int) float64) {
	if len(pieces) == 0 {
		return
	}
	if b.alike(pieces, size) {
		f.Figures = append(f.Figures, b.list([]string{name}, func(q []float64) []float64 {
			sum := 0.0
			for _, p := range pieces {
				sum += size(q, p) / float64(len(pieces))
			}
			return []float64{sum}
		})...)
		return
	}
	for k, p := range pieces {
		f.Figures = append(f.Figures, b.list([]string{fmt.Sprint(name, " ", k+1)}, func(q []float64) []float64 { return []float64{size(q, p)} })...)
	}
}

// alike says that the marks do not tell the sizes of pieces apart.
func (b *body) alike(pieces []int, size func(q []float64, piece int) float64) bool {
	if len(pieces) < 2 {
		return true
	}
	return b.c.wald(func(q []float64) []float64 {
		var out []float64
		for _, p := range pieces[1:] {
			out = append(out, size(q, p)-size(q, pieces[0]))
		}
		return out
	}).Holds()
}

// cut adds the cuts of corners and their legs, from the corner where the sides would meet to
// either end of the cut: one size where all are alike, one along the length and one across where
// these are, else each its own.
func (b *body) cut(f *Family) {
	var cuts, legs, along, across []int
	for k, p := range b.corner {
		if p < 0 || b.c.pieces[p].kind != "straight" {
			continue
		}
		cuts, legs = append(cuts, p), append(legs, 2*k, 2*k+1)
		along, across = append(along, 2*k+k%2), append(across, 2*k+1-k%2) // the length is that of the even sides
	}
	if len(cuts) == 4 {
		f.Kind = "cut"
	}
	b.same(f, "cut", cuts, func(q []float64, p int) float64 { return b.seg(q, p).Chord() })
	switch {
	case !b.alike(legs, b.leg) && b.alike(along, b.leg) && b.alike(across, b.leg):
		b.same(f, "cut leg along", along, b.leg)
		b.same(f, "cut leg across", across, b.leg)
	default:
		b.same(f, "cut leg", legs, b.leg)
	}
}

// leg is the distance from where the sides at a cut corner would meet to the start (even) or the
// end of the cut.
func (b *body) leg(q []float64, leg int) float64 {
	s := b.seg(q, b.corner[leg/2])
	if leg%2 == 0 {
		return b.virtual(q, leg/2).Dist(s.A)
	}
	return b.virtual(q, leg/2).Dist(s.B)
}
