package survey

import (
	"math"

	"brimline/basin"
	"brimline/finding"
)

// feet are the feet of the wall by rods: below the rim at their mark by what the rod reads, whose upper
// end may stand below the rim. A rod along a wall that leans reads more than the drop.
func (y *body) feet(faces []face) {
	var open []string
	for i := range y.g.book.Readings {
		t := &y.g.book.Readings[i]
		if t.Kind != "wall" || !counts(t) || t.To != "cove" && t.To != "wall-foot" {
			continue
		}
		s, off, ok := y.station(t.Marks[0])
		if !ok || off > beside {
			continue
		}
		top, ok := y.up.named(t.Marks[0])
		if !ok {
			top, ok = y.rimHeight(s)
		}
		down, sd, known := y.downTo(t.From, t.Marks[0])
		if !ok || !known {
			open = append(open, t.N)
			continue
		}
		drop := t.Values[0].Metres * math.Cos(math.Atan(leanAt(faces, t.Marks[0])))
		if _, have := y.point[t.Marks[0]]; !have {
			y.point[t.Marks[0]] = len(y.spec.Floor) + len(y.spec.Walls)
		}
		h := y.up.under(top, down+drop, math.Hypot(sd, y.sigma(t, 0)))
		y.spec.Walls = append(y.spec.Walls, basin.Foot{Name: t.Marks[0], S: s, Height: h, ToCove: t.To == "cove"})
	}
	if len(open) > 0 {
		y.g.found = append(y.g.found, finding.Finding{Code: "wall-open", Readings: open})
	}
}

// leanAt is the lean of the wall at a mark, outward over down, as far as its lowest point was read.
func leanAt(faces []face, mark string) float64 {
	for _, f := range faces {
		if f.mark != mark {
			continue
		}
		low, start := basin.Out{}, meanOut(f.starts)
		for _, o := range f.points {
			if o.Down > low.Down {
				low = o
			}
		}
		if d := low.Down - start.Down; d > onePoint {
			return (low.Outward - start.Outward) / d
		}
	}
	return 0
}

// downTo is how far below the rim an edge lies, by the profiles at a mark, else by all; false where
// nothing says it.
func (y *body) downTo(edge, mark string) (down, sd float64, ok bool) {
	if y.isRim(edge) || y.edge == "" {
		return 0, 0, true
	}
	var here, all []basin.Out
	for i := range y.g.book.Readings {
		t := &y.g.book.Readings[i]
		sign := 1.0
		switch {
		case t.Kind != "profile" || !counts(t):
			continue
		case t.To == y.edge && t.From == edge:
			sign = -1
		case t.From != y.edge || t.To != edge:
			continue
		}
		for k, v := range t.Values {
			if v.Part != "down" {
				continue
			}
			o := basin.Out{Down: sign * v.Metres, SD: y.sigma(t, k)}
			if all = append(all, o); t.Marks[0] == mark {
				here = append(here, o)
			}
		}
	}
	if len(here) == 0 {
		here = all
	}
	m := meanOut(here)
	return m.Down, m.SD, len(here) > 0
}

// rimHeight is the height of the rim at a station: straight between the marks on either side.
func (y *body) rimHeight(s float64) (basin.Height, bool) {
	list := y.spec.Levels
	if len(list) == 0 {
		return basin.Height{}, false
	}
	whole := y.path.Length()
	ahead := func(from, to float64) float64 { return math.Mod(to-from+2*whole, whole) }
	before, after := 0, 0
	for k := range list {
		if ahead(list[k].S, s) < ahead(list[before].S, s) {
			before = k
		}
		if ahead(s, list[k].S) < ahead(s, list[after].S) {
			after = k
		}
	}
	d := ahead(list[before].S, list[after].S)
	if d == 0 {
		return list[before].Height, true
	}
	t := ahead(list[before].S, s) / d
	return y.up.mix([]basin.Height{list[before].Height, list[after].Height}, []float64{1 - t, t}), true
}
