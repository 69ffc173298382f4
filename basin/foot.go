package basin

import (
	"cmp"
	"math"
	"slices"

	"brimline/finding"
	"brimline/plane"
)

// known is a height read at the foot of the wall.
type known struct {
	s     float64
	f     form
	point int // of Floor, then of Walls; −1 for the end of a break carried on
}

// stray is how far beyond the wall a depth may be read and still be one of this basin (metres).
const stray = 0.3

// onePlace is how near along the rim two readings at the wall are one place, whose height is their mean.
const onePlace = 0.02

// readFeet finds what was read at the wall foot: rods down the wall, floor points beside it, and
// breaks that run on to it. It sorts the floor points into those and the ones out in the open.
func (b *Basin) readFeet(spec *Spec) {
	b.feet, b.inner = nil, nil
	for i, w := range spec.Walls {
		f := b.wallForm[i]
		if w.ToCove {
			size, _ := b.coveAt(spec, b.station(w.S))
			f = f.up(-size)
		}
		b.feet = append(b.feet, known{b.clear(b.station(w.S)), f, len(spec.Floor) + i})
	}
	creased := b.creased(spec)
	for i := range spec.Floor {
		b.sortPoint(spec, i, creased[i] > 0)
	}
	b.feet = append(b.feet, b.runOn(spec, creased)...)
	slices.SortStableFunc(b.feet, func(a, c known) int { return cmp.Compare(a.s, c.s) })
	b.mergeFeet()
}

// sortPoint puts a floor point among the feet, the inner ones, or neither.
func (b *Basin) sortPoint(spec *Spec, i int, creased bool) {
	p := spec.Floor[i]
	foot := b.rim.Foot(p.At)
	in := -foot.Right // positive within a counter-clockwise ring
	s := b.wrap(foot.Along)
	down := b.value(b.along(b.levels, s)) - p.Height.Z
	u, _ := b.lean(s, down)
	in += u
	size, _ := b.coveAt(spec, s)
	switch {
	case in < -stray:
		b.say(finding.Finding{Code: "floor-stray", Marks: []string{p.Name}, Figures: map[string]float64{"off": -in}})
	case in <= spec.Options.Snap, creased && in <= size:
		b.feet = append(b.feet, known{b.clear(s), b.floorForm[i], i})
	case in < 0.9*size:
		b.say(finding.Finding{Code: "floor-cove", Marks: []string{p.Name}, Figures: map[string]float64{"size": size}})
	default:
		b.inner = append(b.inner, i)
	}
}

// polylines are breaks, pad and toes, the pad closed.
func (s *Spec) polylines() [][]int {
	out := append([][]int(nil), s.Breaks...)
	if len(s.Pad) > 2 {
		out = append(out, append(slices.Clone(s.Pad), s.Pad[0]))
	}
	return append(out, s.Toes...)
}

// creased counts in how many polylines each floor point stands.
func (b *Basin) creased(spec *Spec) []int {
	out := make([]int, len(spec.Floor)+len(spec.Walls))
	for _, line := range spec.polylines() {
		for k, i := range line {
			if k == 0 || i != line[0] {
				out[i]++
			}
		}
	}
	return out
}

// runOn carries the free ends of breaks that come near the wall on to it at their depth.
func (b *Basin) runOn(spec *Spec, creased []int) []known {
	var out []known
	b.runs = map[int]float64{}
	for _, line := range append(append([][]int(nil), spec.Breaks...), spec.Toes...) {
		n := len(line)
		if n < 2 || line[0] == line[n-1] {
			continue
		}
		for _, e := range [][2]int{{line[0], line[1]}, {line[n-1], line[n-2]}} {
			if creased[e[0]] != 1 || !slices.Contains(b.inner, e[0]) {
				continue
			}
			if s, ok := b.hit(b.pointAt(spec, e[1]), spec.Floor[e[0]].At, spec.Options.Reach); ok {
				s = b.clear(s)
				b.runs[e[0]] = s
				out = append(out, known{s, b.floorForm[e[0]], -1})
			}
		}
	}
	return out
}

// pointAt is the place of a point that breaks name.
func (b *Basin) pointAt(spec *Spec, i int) plane.Point {
	if i < len(spec.Floor) {
		return spec.Floor[i].At
	}
	return b.spot(b.station(spec.Walls[i-len(spec.Floor)].S))
}

// hit is the station where the straight from a over c meets the rim within reach of c; where that is
// too far on a slant, the nearest.
func (b *Basin) hit(a, c plane.Point, reach float64) (float64, bool) {
	foot := b.rim.Foot(c)
	if math.Abs(foot.Right) > reach {
		return 0, false
	}
	best, at := math.Inf(1), foot.At
	ray := plane.Segment{A: c, B: c.Add(c.Sub(a).Unit().Mul(2 * reach))}
	for _, s := range b.rim.Segs {
		for _, q := range ray.Meet(s) {
			if d := q.Dist(c); d < best {
				best, at = d, q
			}
		}
	}
	return b.wrap(b.rim.Foot(at).Along), true
}

// mergeFeet makes one of the readings at one place of the wall.
func (b *Basin) mergeFeet() {
	b.footOf = map[int]float64{}
	var out []known
	var share []float64
	for _, k := range b.feet {
		if n := len(out); n > 0 && k.s-out[n-1].s <= onePlace {
			share[n-1]++
			out[n-1].f = between(out[n-1].f, k.f, 1/share[n-1])
			k.s = out[n-1].s
		} else {
			out, share = append(out, k), append(share, 1)
		}
		if k.point >= 0 {
			b.footOf[k.point] = k.s
		}
	}
	b.feet = out
}

// straightOn says that the foot between two readings at the wall is taken straight from one to the
// other: where the wall hardly turns between them, or they are near.
func (b *Basin) straightOn(from, to float64) bool {
	length := b.ahead(from, to)
	return length > 0 && (length <= 1 || b.turn(from, to) <= math.Pi/3)
}

// openStations are places along the wall foot between readings that are too far apart.
func (b *Basin) openStations(spacing float64) []float64 {
	stretches := make([][2]float64, 0, len(b.feet))
	for i, k := range b.feet {
		next := b.feet[(i+1)%len(b.feet)].s
		if !b.straightOn(k.s, next) {
			stretches = append(stretches, [2]float64{k.s, next})
		}
	}
	if len(b.feet) == 0 {
		stretches = append(stretches, [2]float64{0, 0})
	}
	var out []float64
	for _, x := range stretches {
		length := b.ahead(x[0], x[1])
		if length == 0 {
			length = b.whole
		}
		n := int(math.Ceil(length / spacing))
		for k := 1; k < n; k++ {
			out = append(out, b.wrap(x[0]+length*float64(k)/float64(n)))
		}
		if len(b.feet) == 0 {
			out = append(out, 0)
		}
	}
	return out
}

// lowRead gives the foot its height at every node that hangs on readings at the wall.
func (b *Basin) lowRead() {
	for i := range b.nodes {
		n := &b.nodes[i]
		n.read = false
		if len(b.feet) == 0 {
			continue
		}
		k, t := b.bracket(len(b.feet), func(i int) float64 { return b.feet[i].s }, n.s)
		from, to := b.feet[k], b.feet[(k+1)%len(b.feet)]
		switch {
		case b.gap(n.s, from.s) <= joined:
			n.low, n.read = from.f, true
		case b.gap(n.s, to.s) <= joined:
			n.low, n.read = to.f, true
		case b.straightOn(from.s, to.s):
			n.low, n.read = between(from.f, to.f, t), true
		}
	}
}
