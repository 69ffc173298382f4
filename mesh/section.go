package mesh

import (
	"cmp"
	"math"
	"slices"

	"brimline/plane"
)

// Station is a point of a section: how far along the line, and the height there.
type Station struct{ S, Z float64 }

// Section cuts the surface along a polyline in plan. Each part of the line over the surface gives its
// stations in order, S counted from the line's start, one wherever the line crosses an edge of
// a triangle or bends; between them the surface is straight. Where the line leaves the surface
// a part ends.
func (s *Surface) Section(line []plane.Point) [][]Station {
	var parts [][]Station
	start := 0.0
	for k := 1; k < len(line); k++ {
		length := line[k-1].Dist(line[k])
		if length == 0 || math.IsNaN(length-length) {
			continue
		}
		for _, c := range s.chords(line[k-1], line[k]) {
			parts = extend(parts, c, start, length)
		}
		start += length
	}
	return parts
}

// chord is the part of a leg in one triangle: from and to as shares of the leg.
type chord struct {
	from, to   float64
	zFrom, zTo float64
}

// chords are the parts of a leg by triangle, in order. Where it runs along an edge, the triangles on both
// sides have the same part; one is kept.
func (s *Surface) chords(a, b plane.Point) []chord {
	var out []chord
	for t := range s.Triangles {
		if c, ok := s.chord(t, a, b); ok {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(p, q chord) int {
		return cmp.Or(cmp.Compare(p.from, q.from), cmp.Compare(p.to, q.to))
	})
	return slices.CompactFunc(out, func(p, q chord) bool { return p.from == q.from && p.to == q.to })
}

// chord is the part of the leg from a to b in triangle t.
func (s *Surface) chord(t int, a, b plane.Point) (chord, bool) {
	v := s.Triangles[t]
	var side [3]float64
	left, right := 0, 0
	for i := range v {
		switch side[i] = Orient(a, b, s.Points[v[i]].Plan()); {
		case side[i] > 0:
			left++
		case side[i] < 0:
			right++
		}
	}
	if left == 3 || right == 3 {
		return chord{}, false
	}
	c := chord{from: math.Inf(1), to: math.Inf(-1)}
	for i := range v {
		j := (i + 1) % 3
		if side[i] == 0 {
			p := s.Points[v[i]]
			c.widen(share(p.Plan(), a, b), p.Z)
		}
		if side[i]*side[j] < 0 {
			c.widen(s.crossing(v[i], v[j], a, b))
		}
	}
	return c.clip()
}

// crossing is where the edge between two points meets the leg, the same number whichever
// triangle asks.
func (s *Surface) crossing(i, j int32, a, b plane.Point) (at, z float64) {
	p, q := s.Points[min(i, j)], s.Points[max(i, j)]
	r := ratio(Orient(a, b, p.Plan()), Orient(a, b, q.Plan()))
	return share(plane.Lerp(p.Plan(), q.Plan(), r), a, b), p.Z*(1-r) + q.Z*r
}

// share is how far along from a to b the foot of p lies.
func share(p, a, b plane.Point) float64 {
	d := b.Sub(a)
	return p.Sub(a).Dot(d) / d.Dot(d)
}

func (c *chord) widen(at, z float64) {
	if at < c.from {
		c.from, c.zFrom = at, z
	}
	if at > c.to {
		c.to, c.zTo = at, z
	}
}

// clip keeps what lies on the leg itself; false when nothing of any length does.
func (c chord) clip() (chord, bool) {
	if c.from >= c.to || c.to <= 0 || c.from >= 1 {
		return c, false
	}
	slope := (c.zTo - c.zFrom) / (c.to - c.from)
	if c.from < 0 {
		c.from, c.zFrom = 0, c.zFrom-slope*c.from
	}
	if c.to > 1 {
		c.to, c.zTo = 1, c.zTo-slope*(c.to-1)
	}
	return c, c.from < c.to
}

// joined is how near in shares of a leg the end of one chord and the start of the next are the
// same place: rounding of a few units in the last place of 1.
const joined = 1e-12

// extend puts a chord at the end of the last part, or begins a new part after a gap.
func extend(parts [][]Station, c chord, start, length float64) [][]Station {
	first, last := Station{start + c.from*length, c.zFrom}, Station{start + c.to*length, c.zTo}
	n := len(parts)
	if n > 0 {
		part := parts[n-1]
		if end := part[len(part)-1]; first.S-end.S <= joined*(start+length) {
			if last.S > end.S {
				parts[n-1] = append(part, last)
			}
			return parts
		}
	}
	return append(parts, []Station{first, last})
}
