package basin

import (
	"math"

	"brimline/mesh"
	"brimline/plane"
)

// SectionPiece is a stretch of a section that is all of one part.
type SectionPiece struct {
	Part   Part
	Points []mesh.Station
}

// Section cuts the basin upright along the straight through two places, all across the pool; S is
// counted from the first towards the second and is negative before it. Pieces follow each other from the
// wall top at one side over the floor to the other, the water on their left; where the line leaves the
// pool and comes back, pieces of the next part follow.
func (b *Basin) Section(from, to plane.Point) []SectionPiece {
	way := to.Sub(from).Unit()
	if way == (plane.Point{}) || !way.Finite() {
		return nil
	}
	pieces := b.shell.cut(
		func(p vec) float64 { return way.Cross(plane.Point{X: p[0], Y: p[1]}.Sub(from)) },
		func(p vec) flat { return flat{plane.Point{X: p[0], Y: p[1]}.Sub(from).Dot(way), p[2]} },
		func(Part) bool { return true })
	var out []SectionPiece
	for _, c := range link(pieces, true) {
		p := SectionPiece{Part: c.part}
		for _, q := range c.points {
			p.Points = append(p.Points, mesh.Station{S: q.u, Z: q.v})
		}
		out = append(out, p)
	}
	return out
}

// Axis is the line from the shallow to the deep end, where S of the long section begins and ends:
// through the places where people stand to say left and right, else lengthwise through the middle.
func (b *Basin) Axis() (shallow, deep plane.Point) { return b.axis[0], b.axis[1] }

// Long is the section along the axis.
func (b *Basin) Long() []SectionPiece { return b.Section(b.axis[0], b.axis[1]) }

// Across is the section square to the axis, so far along it; S is counted from the axis to its
// left.
func (b *Basin) Across(along float64) []SectionPiece {
	way := b.axis[1].Sub(b.axis[0]).Unit()
	at := b.axis[0].Add(way.Mul(along))
	return b.Section(at, at.Add(way.Left()))
}

// lengthwise finds the axis.
func (b *Basin) lengthwise(spec *Spec) [2]plane.Point {
	if spec.Shallow != nil && spec.Deep != nil && spec.Shallow.Dist(*spec.Deep) > 0 {
		return [2]plane.Point{*spec.Shallow, *spec.Deep}
	}
	middle, way := spread(b.rim.Flatten(sagitta))
	_, deep := b.extremes(Exact(0))
	if deep.At.Sub(middle).Dot(way) < 0 {
		way = way.Mul(-1)
	}
	from, to := math.Inf(1), math.Inf(-1)
	reach := b.rim.Bounds().Diagonal()
	line := plane.Segment{A: middle.Sub(way.Mul(reach)), B: middle.Add(way.Mul(reach))}
	for _, s := range b.rim.Segs {
		for _, q := range line.Meet(s) {
			d := q.Sub(middle).Dot(way)
			from, to = math.Min(from, d), math.Max(to, d)
		}
	}
	return [2]plane.Point{middle.Add(way.Mul(from)), middle.Add(way.Mul(to))}
}

// spread is the centroid of a ring's corners weighted by its sides, and the direction in which they
// spread most.
func spread(ring []plane.Point) (middle, way plane.Point) {
	total := 0.0
	each := func(f func(p plane.Point, w float64)) {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			f(plane.Lerp(p, q, 0.5), p.Dist(q))
		}
	}
	each(func(p plane.Point, w float64) { middle, total = middle.Add(p.Mul(w)), total+w })
	middle = middle.Mul(1 / total)
	var xx, xy, yy float64
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		w := p.Dist(q) / 6
		for _, at := range [3]plane.Point{p, plane.Lerp(p, q, 0.5), q} { // Simpson's rule, exact for squares
			d, v := at.Sub(middle), w
			if at != p && at != q {
				v = 4 * w
			}
			xx, xy, yy = xx+v*d.X*d.X, xy+v*d.X*d.Y, yy+v*d.Y*d.Y
		}
	}
	angle := math.Atan2(2*xy, xx-yy) / 2
	return middle, plane.Point{X: 1}.Turn(angle)
}

// DepthLine is a line of one depth on floor, coves and tops.
type DepthLine struct {
	Depth  float64
	Points []plane.Point
	Closed bool
}

// Contours are the lines of depths below a level.
func (b *Basin) Contours(level float64, depths []float64) []DepthLine {
	var out []DepthLine
	for _, d := range depths {
		pieces := b.shell.cut(
			func(p vec) float64 { return p[2] - (level - d) },
			func(p vec) flat { return flat{p[0], p[1]} },
			func(p Part) bool { return p != Walls })
		for _, c := range link(pieces, false) {
			l := DepthLine{Depth: d, Closed: c.closed}
			for _, q := range c.points {
				l.Points = append(l.Points, plane.Point{X: q.u, Y: q.v})
			}
			out = append(out, l)
		}
	}
	return out
}
