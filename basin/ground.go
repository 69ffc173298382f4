package basin

import (
	"math"

	"brimline/finding"
	"brimline/mesh"
	"brimline/plane"
)

// ground is a surface whose heights are forms.
type ground struct {
	*mesh.Surface
	forms []form // by point
}

// layGround triangulates the floor out to the wall: inner points and nodes, along the breaks and round
// what was read. Nodes whose height was not read at the wall take the depth of the nearest place of that.
func (b *Basin) layGround(spec *Spec) {
	n := len(b.nodes)
	points := make([]mesh.Point3, n, n+len(b.inner))
	forms := make([]form, n, n+len(b.inner))
	ring := make([]int, n)
	for i := range b.nodes {
		d := &b.nodes[i]
		points[i], forms[i], ring[i] = mesh.Point3{X: d.foot.X, Y: d.foot.Y}, d.low, i
		if d.read {
			points[i].Z = b.value(d.low)
		}
	}
	b.number = map[int]int{}
	for _, i := range b.inner {
		p := spec.Floor[i]
		b.number[i] = len(points)
		points = append(points, mesh.Point3{X: p.At.X, Y: p.At.Y, Z: p.Height.Z})
		forms = append(forms, b.floorForm[i])
	}
	lines := b.lines(spec)
	b.read = b.layRead(points, forms, lines)
	s, issues := mesh.Triangulate(points, append(lines, b.read.border(b)...), ring, nil)
	b.base = &ground{s, forms}
	b.hear(spec, issues)
	b.keepDepth()
	b.findEdges(lines)
}

// findEdges notes which points of the ground are at the wall or on a break.
func (b *Basin) findEdges(lines [][]int) {
	b.edged, b.breaks = make([]bool, len(b.base.Points)), lines
	for i := range b.nodes {
		b.edged[i] = true
	}
	for _, line := range lines {
		for _, p := range line {
			b.edged[p] = true
		}
	}
	for _, m := range b.base.Made {
		b.edged[m.Point] = true
	}
}

// follow gives the points made where breaks cross their forms.
func (g *ground) follow() {
	for _, m := range g.Made {
		var fs []form
		for _, from := range m.From {
			fs = append(fs, g.forms[from])
		}
		g.forms = append(g.forms, mix(fs, m.Weight[:]))
	}
}

// lines are breaks, pad and toes by the numbers of the points of the ground, run on to the wall.
func (b *Basin) lines(spec *Spec) [][]int {
	var out [][]int
	for _, line := range spec.polylines() {
		var l []int
		closed := len(line) > 2 && line[0] == line[len(line)-1]
		for k, i := range line {
			end := !closed && (k == 0 || k == len(line)-1)
			s, on := b.runs[i]
			if end && on && k == 0 {
				l = append(l, b.nodeAt(s))
			}
			if at, ok := b.footOf[i]; ok {
				l = append(l, b.nodeAt(at))
			} else if p, ok := b.number[i]; ok {
				l = append(l, p)
			}
			if end && on && k > 0 {
				l = append(l, b.nodeAt(s))
			}
		}
		if len(l) > 1 {
			out = append(out, l)
		}
	}
	return out
}

// nodeAt is the node nearest to a station.
func (b *Basin) nodeAt(s float64) int {
	best, k := math.Inf(1), 0
	for i := range b.nodes {
		if d := b.gap(s, b.nodes[i].s); d < best {
			best, k = d, i
		}
	}
	return k
}

// hear turns what the triangulation met into findings.
func (b *Basin) hear(spec *Spec, issues []mesh.Issue) {
	name := func(p int) string {
		for _, i := range b.inner {
			if b.number[i] == p {
				return spec.Floor[i].Name
			}
		}
		return ""
	}
	for _, x := range issues {
		var marks []string
		for _, e := range x.Edges {
			for _, p := range e {
				if s := name(p); s != "" {
					marks = append(marks, s)
				}
			}
		}
		switch x.Kind {
		case mesh.Crossing, mesh.Through:
			b.say(finding.Finding{Code: "floor-crossing", Marks: marks, Figures: map[string]float64{"gap": math.Abs(x.Gap)}})
		case mesh.Duplicate:
			b.say(finding.Finding{Code: "floor-twice", Marks: []string{name(x.Points[0]), name(x.Points[1])}, Figures: map[string]float64{"gap": math.Abs(x.Gap)}})
		}
	}
}

// keepDepth gives each node that was not read the height of the nearest place of what was, and notes by
// how much the floor would run on beyond it.
func (b *Basin) keepDepth() {
	g := b.base
	for i := range b.nodes {
		n := &b.nodes[i]
		if n.read {
			continue
		}
		n.low, n.away = b.read.depthAt(b, n)
		g.forms[i] = n.low
	}
	g.follow()
	for i := range g.Points {
		g.Points[i].Z = b.value(g.forms[i])
	}
}

// spot is a place of a ground: in a triangle, by the shares of its corners.
type spot struct {
	triangle int // −1: none
	share    [3]float64
	at       plane.Point
}

func (s spot) form(g *ground) form {
	v := g.Triangles[s.triangle]
	return mix([]form{g.forms[v[0]], g.forms[v[1]], g.forms[v[2]]}, s.share[:])
}

// shares are those of the corners at p, which may lie outside.
func (g *ground) shares(t int, p plane.Point) [3]float64 {
	v := g.Triangles[t]
	a, b, c := g.Points[v[0]].Plan(), g.Points[v[1]].Plan(), g.Points[v[2]].Plan()
	twice := b.Sub(a).Cross(c.Sub(a))
	sb, sc := p.Sub(a).Cross(c.Sub(a))/twice, b.Sub(a).Cross(p.Sub(a))/twice
	return [3]float64{1 - sb - sc, sb, sc}
}

// needle is the width of a triangle below which its shares are rounding: of points in a line (metres).
const needle = 1e-6

// within is the place of the triangle nearest to p.
func (g *ground) within(t int, p plane.Point) spot {
	w := g.shares(t, p)
	if w[0] >= 0 && w[1] >= 0 && w[2] >= 0 && g.width(t) > needle {
		return spot{triangle: t, share: w, at: p}
	}
	v := g.Triangles[t]
	best, out := math.Inf(1), spot{triangle: t}
	for i := range v {
		j := (i + 1) % 3
		a, c := g.Points[v[i]].Plan(), g.Points[v[j]].Plan()
		q, along := plane.Segment{A: a, B: c}.Nearest(p)
		if d := q.Dist(p); d < best {
			best = d
			out = spot{triangle: t, at: q}
			out.share[i], out.share[j] = 1-along, along
		}
	}
	return out
}

// find is the triangle over which p lies, or the one it is least outside of.
func (g *ground) find(p plane.Point) spot {
	best, out := math.Inf(1), spot{triangle: -1}
	for t := range g.Triangles {
		s := g.within(t, p)
		if d := s.at.Dist(p); d < best {
			best, out = d, s
			if d == 0 {
				break
			}
		}
	}
	return out
}
