package basin

import (
	"math"

	"brimline/mesh"
	"brimline/plane"
)

// readGround is the surface over what was read alone: floor points and feet of the wall.
type readGround struct {
	ground
	number []int  // of its points: that in the ground
	kept   []bool // by triangle: it lies within the rim
}

// layRead triangulates what was read, along the breaks. points, forms and lines are those of the
// ground, nodes first.
func (b *Basin) layRead(points []mesh.Point3, forms []form, lines [][]int) *readGround {
	r := &readGround{}
	at := make([]int, len(points))
	var own []mesh.Point3
	for i := range points {
		at[i] = -1
		if i >= len(b.nodes) || b.nodes[i].read {
			at[i] = len(own)
			own, r.forms, r.number = append(own, points[i]), append(r.forms, forms[i]), append(r.number, i)
		}
	}
	breaks := make([][]int, len(lines))
	for k, line := range lines {
		for _, p := range line {
			if at[p] >= 0 {
				breaks[k] = append(breaks[k], at[p])
			}
		}
	}
	r.Surface, _ = mesh.Triangulate(own, breaks, nil, nil)
	r.follow()
	r.kept = make([]bool, len(r.Triangles))
	for t := range r.Triangles {
		r.kept[t] = b.holds(&r.ground, t)
	}
	return r
}

// beyondWall is how far beyond the rim the side of a triangle may run: as the chord of a wall that leans.
const beyondWall = 0.05

// holds says that the sides of a triangle run within the rim, or hardly beyond it.
func (b *Basin) holds(g *ground, t int) bool {
	v := g.Triangles[t]
	for i := range v {
		if b.outside(g.Points[v[i]].Plan(), g.Points[v[(i+1)%3]].Plan()) > beyondWall {
			return false
		}
	}
	return true
}

// outside is how far beyond the rim the straight between two places runs; negative where it keeps within.
func (b *Basin) outside(p, q plane.Point) float64 {
	const looks = 8
	worst := math.Inf(-1)
	for k := 1; k < looks; k++ {
		worst = math.Max(worst, b.rim.Distance(plane.Lerp(p, q, float64(k)/looks)))
	}
	return worst
}

// border are the sides round the kept triangles that run within the rim, and not from wall to wall, by
// points of the ground, of which the first n are nodes.
func (r *readGround) border(b *Basin) [][]int {
	n := len(b.nodes)
	var out [][]int
	for t, v := range r.Triangles {
		for i := range v {
			u := r.Beside[t][i]
			if !r.kept[t] || u >= 0 && r.kept[u] {
				continue
			}
			p, q := int(v[(i+1)%3]), int(v[(i+2)%3])
			if p >= len(r.number) || q >= len(r.number) || r.number[p] < n && r.number[q] < n {
				continue
			}
			if b.outside(r.Points[p].Plan(), r.Points[q].Plan()) < -joined {
				out = append(out, []int{r.number[p], r.number[q]})
			}
		}
	}
	return out
}

// depthAt is the height of what was read nearest to a node, with the term by which it runs on, and how
// far off that is.
func (r *readGround) depthAt(b *Basin, n *node) (form, float64) {
	best, broadest := math.Inf(1), math.Inf(1)
	at, slope := spot{triangle: -1}, -1 // the nearest, and the nearest triangle that tells a slope
	for t := range r.Triangles {
		if !r.kept[t] {
			continue
		}
		s := r.within(t, n.foot)
		d := s.at.Dist(n.foot)
		if d < best {
			best, at = d, s
		}
		if d < broadest && r.width(t) >= broad {
			broadest, slope = d, t
		}
	}
	if f, d := r.onLine(n.foot); at.triangle < 0 || d < best-joined {
		return f, d
	}
	low := at.form(&r.ground)
	if slope >= 0 {
		low.terms = append(low.terms, r.runsOn(b, n, at, slope)...)
	}
	return low, best
}

// onLine is the height of the nearest place of the sides of triangles that are not kept and, where there
// are no triangles, of the straights from each point to the next along their line.
func (r *readGround) onLine(p plane.Point) (form, float64) {
	best, out := math.Inf(1), form{}
	try := func(i, j int) {
		q, t := plane.Segment{A: r.Points[i].Plan(), B: r.Points[j].Plan()}.Nearest(p)
		if d := q.Dist(p); d < best {
			best, out = d, between(r.forms[i], r.forms[j], t)
		}
	}
	for i := range r.Points {
		try(i, i)
		if len(r.Triangles) == 0 {
			if j := r.next(i); j >= 0 {
				try(i, j)
			}
		}
	}
	return out, best
}

// next is the nearest point onward of point i in the direction of growing x, or y for one line upright;
// −1 for the last.
func (r *readGround) next(i int) int {
	after := func(p, q mesh.Point3) bool { return q.X > p.X || q.X == p.X && q.Y > p.Y }
	k := -1
	for j := range r.Points {
		if after(r.Points[i], r.Points[j]) && (k < 0 || after(r.Points[j], r.Points[k])) {
			k = j
		}
	}
	return k
}

// steepest is the most by which a floor is taken to run on beyond what was read: common practice, no
// source.
const steepest = 1.0

// runsOn is how far the floor's slope beside the outermost place read would carry it by the wall, as a
// term of the input that says whether it does. The slope is that of the triangle given.
func (r *readGround) runsOn(b *Basin, n *node, at spot, triangle int) []term {
	slope := r.SlopeOf(triangle)
	by := math.Min(slope.Rise, steepest) * slope.Uphill.Dot(n.foot.Sub(at.at))
	if by == 0 {
		return nil
	}
	return []term{{b.runout[n.side], by}}
}
