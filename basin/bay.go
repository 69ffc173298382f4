package basin

import (
	"math"

	"brimline/mesh"
	"brimline/plane"
)

// layBays adds the treads beyond the rim, the walls round them and their fronts; the side along the
// rim stays open.
func (b *Basin) layBays() {
	var points []mesh.Point3
	var lines [][]int
	for k := range b.bays {
		first := len(points)
		for _, p := range b.bays[k].ring {
			points = append(points, mesh.Point3{X: p.X, Y: p.Y})
		}
		line := []int{}
		for i := range b.bays[k].ring {
			line = append(line, first+i)
		}
		lines = append(lines, append(line, first))
	}
	s, _ := mesh.Options{Tolerance: 2e-3}.Triangulate(points, lines, nil, nil)
	g := &ground{s, make([]form, len(s.Points))}
	class := make([]int, len(s.Triangles))
	for t, v := range s.Triangles {
		middle := s.Points[v[0]].Plan().Add(s.Points[v[1]].Plan()).Add(s.Points[v[2]].Plan()).Mul(1.0 / 3)
		class[t] = -2
		for k := range b.bays {
			if b.bays[k].path.Contains(middle) && (class[t] < 0 || b.bays[k].z > b.bays[class[t]].z) {
				class[t] = k
			}
		}
	}
	b.layFloor(g, class, b.bays)
	b.bayWalls(g, class)
}

// bayWalls adds the walls round the treads of bays.
func (b *Basin) bayWalls(g *ground, class []int) {
	for t, v := range g.Triangles {
		for i := range v {
			u := g.Beside[t][i]
			if class[t] < 0 || u >= 0 && class[u] >= 0 {
				continue
			}
			p, q := g.Points[v[(i+1)%3]], g.Points[v[(i+2)%3]]
			mid := plane.Lerp(p.Plan(), q.Plan(), 0.5)
			f := b.rim.Foot(mid)
			if math.Abs(f.Right) < atWall {
				continue // the opening
			}
			top, low := b.along(b.levels, b.wrap(f.Along)), b.bays[class[t]].top
			lift := func(p mesh.Point3, z form) int {
				return b.shell.vertex(vertex{p: vec{p.X, p.Y, b.value(z)}, z: z, node: -1})
			}
			b.shell.quad(lift(p, low), lift(p, top), lift(q, top), lift(q, low), Steps)
		}
	}
}
