package basin

import (
	"math"
	"slices"

	"brimline/plane"
)

// solid is a tread or a ledge: a region in plan with a level top.
type solid struct {
	name  string
	part  Part
	ring  []plane.Point // counter-clockwise
	top   form
	z     float64
	touch []float64 // stations of its corners at the wall
	path  plane.Path
}

// stretch is a part of the rim where the wall ends at another height.
type stretch struct {
	name     string
	from, to float64
	line     []leveled
}

// atWall is how near to the wall the corner of a solid is at it (metres).
const atWall = 0.08

// readSolids takes steps, ledges, raised walls and spills.
func (b *Basin) readSolids(spec *Spec) {
	for _, s := range spec.Steps {
		for _, t := range s.Treads {
			x := b.solid(s.Name, Steps, t.Ring, t.Height)
			if s.Bay {
				b.bays = append(b.bays, x)
			} else {
				b.solids = append(b.solids, x)
			}
		}
	}
	for _, l := range spec.Ledges {
		b.solids = append(b.solids, b.solid(l.Name, Ledges, l.Ring, l.Height))
	}
	for i := range b.solids {
		b.solids[i].fit(b)
	}
	for _, r := range spec.Raised {
		from, to := b.stretchOf(r.From, r.To)
		b.raised = append(b.raised, stretch{r.Name, from, to, b.line(r.Top, WallReadings)})
	}
	for _, r := range spec.Spills {
		from, to := b.stretchOf(r.From, r.To)
		b.spills = append(b.spills, stretch{r.Name, from, to, b.line(r.Lip, WallReadings)})
	}
}

func (b *Basin) solid(name string, part Part, ring plane.Path, h Height) solid {
	x := solid{name: name, part: part, ring: ring.Flatten(2 * sagitta), top: b.height(h, WallReadings), z: h.Z}
	if plane.PolygonArea(x.ring) < 0 {
		slices.Reverse(x.ring)
	}
	for _, p := range x.ring {
		if f := b.rim.Foot(p); math.Abs(f.Right) <= atWall {
			x.touch = append(x.touch, b.wrap(f.Along))
		}
	}
	x.path = plane.Polyline(x.ring, true)
	return x
}

// fit lays the ring along the rim where it runs beside it: corners near the rim are moved on to it,
// and between two of them with the rim beside all the way the ring follows the rim.
func (x *solid) fit(b *Basin) {
	at := func(p plane.Point) (float64, bool) {
		f := b.rim.Foot(p)
		return b.wrap(f.Along), math.Abs(f.Right) <= atWall
	}
	var out []plane.Point
	n := len(x.ring)
	for i, p := range x.ring {
		q := x.ring[(i+1)%n]
		s, near := at(p)
		if !near {
			out = append(out, p)
			continue
		}
		out = append(out, b.spot(s))
		t, too := at(q)
		mid := plane.Lerp(p, q, 0.5)
		if !too || math.Abs(b.rim.Foot(mid).Right) > math.Max(atWall, p.Dist(q)/8) {
			continue
		}
		if length := b.ahead(s, t); length < b.whole/2 {
			for _, c := range corners(b.rim) {
				if d := b.ahead(s, c); d > joined && d < length-joined {
					out = append(out, b.spot(c))
				}
			}
		}
	}
	x.ring = b.inOrder(out)
	x.path = plane.Polyline(x.ring, true)
}

// inOrder drops corners that repeat the one before.
func (b *Basin) inOrder(ring []plane.Point) []plane.Point {
	return slices.CompactFunc(ring, func(p, q plane.Point) bool { return p.Dist(q) < joined })
}

// spot is the place of the rim at a station.
func (b *Basin) spot(s float64) plane.Point {
	seg, share, _ := b.rim.Place(s)
	return b.rim.Segs[seg].At(share)
}

// inside is how far from the rim the solids along a wall are looked for (metres).
const inside = 0.02

// beside is a place within the rim beside a station.
func (b *Basin) beside(s float64) plane.Point {
	seg, share, _ := b.rim.Place(s)
	piece := b.rim.Segs[seg]
	return piece.At(share).Add(piece.Tangent(share).Left().Mul(inside))
}

// covering is the highest solid over a place that stands above the floor there; −1 for none.
func (b *Basin) covering(p plane.Point, floor float64) int {
	best := -1
	for i := range b.solids {
		x := &b.solids[i]
		if x.z > floor && (best < 0 || x.z > b.solids[best].z) && x.path.Contains(p) {
			best = i
		}
	}
	return best
}

// top is where the wall ends between two nodes, at one of them: the rim, a raised top, or a lip; over
// the opening of a bay its tread.
func (b *Basin) top(middle float64, n *node) form {
	if len(b.bays) > 0 {
		if k := b.opening(b.spot(middle)); k >= 0 {
			return b.bays[k].top
		}
	}
	for _, list := range [][]stretch{b.spills, b.raised} {
		for _, x := range list {
			if b.within(middle, x.from, x.to) && len(x.line) > 0 {
				return b.level(x, n.s)
			}
		}
	}
	return n.rim
}

// level is the height of a raised top or lip at a station: straight between those read, and beyond the
// outermost as there.
func (b *Basin) level(x stretch, s float64) form {
	at := func(l leveled) float64 { return b.ahead(x.from, l.s) }
	line := slices.Clone(x.line)
	slices.SortStableFunc(line, func(p, q leveled) int {
		if at(p) < at(q) {
			return -1
		}
		return 1
	})
	d := b.ahead(x.from, s)
	if d <= at(line[0]) || b.whole-d < edge {
		return line[0].f
	}
	for i := 1; i < len(line); i++ {
		if from, to := at(line[i-1]), at(line[i]); d <= to {
			return between(line[i-1].f, line[i].f, (d-from)/(to-from))
		}
	}
	return line[len(line)-1].f
}

// opening is the bay tread whose ring passes a place of the rim; −1 for none.
func (b *Basin) opening(p plane.Point) int {
	best, k := atWall, -1
	for i := range b.bays {
		if _, _, q := b.bays[i].path.Nearest(p); q.Dist(p) < best {
			best, k = q.Dist(p), i
		}
	}
	return k
}
