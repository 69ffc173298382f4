package basin

import (
	"math"
	"slices"

	"brimline/plane"
)

// node is a place along the rim with what hangs down from it.
type node struct {
	s    float64
	at   plane.Point
	out  plane.Point    // outward; longer than 1 at a corner, so that a step outward keeps both walls parallel
	side int            // stretches of the rim without a sharp corner, counted: that of the wall after it
	last int            // and that of the wall before it
	ways [2]plane.Point // how it moves when the wall before, the wall after it moves outward by 1 alone
	rim  form
	foot plane.Point // where the floor, carried on, meets the wall
	low  form        // its height
	read bool        // hangs on a height read at the wall
	away float64     // of one that is not: how far off the depth was read that it keeps
	cove float64     // size; 0 none
	bent bool        // the cove is round
}

// sharp is the turn from which a joint of the rim is the corner between two sides.
const sharp = math.Pi / 6

// joined is how near two stations are the same (metres).
const joined = 1e-4

// sagitta is what the chords of an arc of the rim leave out (metres).
const sagitta = 0.5e-3

// corners are the stations that the path itself needs: its joints, and places along its arcs.
func corners(p plane.Path) []float64 {
	var out []float64
	start := 0.0
	for _, s := range p.Segs {
		l := s.Length()
		n := 1
		if !s.Straight() {
			n = max(2, len(plane.Path{Segs: []plane.Segment{s}}.Flatten(sagitta))-1)
		}
		for i := range n {
			out = append(out, start+l*float64(i)/float64(n))
		}
		start += l
	}
	return out
}

// place makes the nodes at the stations: those of the path first, so that a station beside one
// is taken as that one.
func (b *Basin) place(stations []float64) {
	all := corners(b.rim)
	for _, s := range stations {
		s = b.clear(s)
		if !slices.ContainsFunc(all, func(o float64) bool { return b.gap(s, o) < joined }) {
			all = append(all, s)
		}
	}
	slices.Sort(all)
	sides := b.sides()
	b.nodes = make([]node, len(all))
	for i, s := range all {
		n := node{s: s}
		b.stand(&n, sides)
		n.rim = b.along(b.levels, s)
		b.nodes[i] = n
	}
}

// wrap brings a station into the round.
func (b *Basin) wrap(s float64) float64 {
	s = math.Mod(s, b.whole)
	if s < 0 {
		s += b.whole
	}
	if b.whole-s < joined {
		s = 0
	}
	return s
}

// gap is the shorter way between two stations.
func (b *Basin) gap(s, t float64) float64 {
	d := math.Abs(b.wrap(s) - b.wrap(t))
	return math.Min(d, b.whole-d)
}

// ahead is the way forward from s to t.
func (b *Basin) ahead(s, t float64) float64 {
	d := math.Mod(t-s, b.whole)
	if d < 0 {
		d += b.whole
	}
	return d
}

// within says that a station lies on the stretch; from = to is all round.
func (b *Basin) within(s, from, to float64) bool {
	whole := b.ahead(from, to)
	return whole == 0 || b.ahead(from, s) <= whole
}

// stand gives a node its place, outward there, and its sides.
func (b *Basin) stand(n *node, sides []int) {
	seg, share, _ := b.rim.Place(n.s)
	segs := b.rim.Segs
	prior, length := seg, segs[seg].Length()
	before, after := segs[seg].Tangent(share), segs[seg].Tangent(share)
	switch {
	case share*length < joined:
		prior = (seg + len(segs) - 1) % len(segs)
		before, share = segs[prior].Tangent(1), 0
	case (1-share)*length < joined:
		seg = (seg + 1) % len(segs)
		after, share = segs[seg].Tangent(0), 0
	}
	n.at, n.out = segs[seg].At(share), mitre(before, after)
	n.last, n.side = sides[prior], sides[seg]
	n.ways[1] = n.out
	if n.last != n.side {
		n.ways = [2]plane.Point{alone(before, after), alone(after, before)}
	}
}

// alone is how a corner moves when the wall in the first direction of travel moves outward by 1 and
// the other stays.
func alone(moved, still plane.Point) plane.Point {
	n, m := moved.Left().Mul(-1), still.Left().Mul(-1)
	c := n.Dot(m)
	return n.Sub(m.Mul(c)).Mul(1 / (1 - c*c))
}

// mitre is the way outward that is 1 from both directions of travel, of a length up to 3.
func mitre(before, after plane.Point) plane.Point {
	n := before.Left().Add(after.Left()).Mul(-1)
	size := 1 + before.Dot(after)
	if size < 2.0/9 {
		return n.Unit().Mul(3)
	}
	return n.Mul(1 / size)
}

// leveled is a height at a station.
type leveled struct {
	s    float64
	f    form
	name string
}

// along is the height at a station of a line round the rim, straight between those read.
func (b *Basin) along(line []leveled, s float64) form {
	if len(line) == 0 {
		return form{c: b.brink}
	}
	k, t := b.bracket(len(line), func(i int) float64 { return line[i].s }, s)
	return between(line[k].f, line[(k+1)%len(line)].f, t)
}

// bracket finds the two of n stations, in order round the rim, between which s lies, and the
// share of the way.
func (b *Basin) bracket(n int, at func(int) float64, s float64) (k int, t float64) {
	if n == 1 {
		return 0, 0
	}
	for i := range n {
		length := b.ahead(at(i), at((i+1)%n))
		if d := b.ahead(at(i), s); length > 0 && d <= length {
			return i, d / length
		}
	}
	return 0, 0
}
