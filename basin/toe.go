package basin

import (
	"math"

	"brimline/finding"
	"brimline/mesh"
	"brimline/plane"
)

// far is how far from the wall the outermost depth may stand before it is said: common practice,
// no source.
const far = 1.0

// farFromWall says where the floor at the wall rests on a depth read far off.
func (b *Basin) farFromWall() {
	worst := 0.0
	for i := range b.nodes {
		worst = math.Max(worst, b.nodes[i].away)
	}
	if worst > far {
		b.say(finding.Finding{Code: "floor-far", Figures: map[string]float64{"away": worst}})
	}
}

// coveAt is the size of the cove at a station, 0 for none, and whether it is round. Where two
// are given the later holds.
func (b *Basin) coveAt(spec *Spec, s float64) (size float64, round bool) {
	for _, c := range spec.Coves {
		if from, to := b.stretchOf(c.From, c.To); b.within(s, from, to) {
			size, round = c.Size, c.Round
		}
	}
	return size, round
}

// layToe cuts the floor back to the toe of the coves and along the rings of steps and ledges.
func (b *Basin) layToe(spec *Spec) {
	for i := range b.nodes {
		n := &b.nodes[i]
		n.cove, n.bent = b.coveAt(spec, n.s)
		if b.touched(n.s) || b.covering(b.beside(n.s), b.value(n.low)) >= 0 {
			n.cove = 0
		}
	}
	b.floor = b.base
	if len(b.solids) > 0 || b.coved() {
		b.cutFloor(spec)
	}
	b.class = make([]int, len(b.floor.Triangles))
	for t, v := range b.floor.Triangles {
		p, q, r := b.floor.Points[v[0]], b.floor.Points[v[1]], b.floor.Points[v[2]]
		middle := p.Plan().Add(q.Plan()).Add(r.Plan()).Mul(1.0 / 3)
		b.class[t] = b.covering(middle, (p.Z+q.Z+r.Z)/3)
	}
	b.sunken()
}

// touched says that a solid's ring comes to the wall at the station.
func (b *Basin) touched(s float64) bool {
	for _, x := range b.solids {
		for _, t := range x.touch {
			if b.gap(s, t) < 2*joined {
				return true
			}
		}
	}
	return false
}

// sunken names the steps and ledges that cover nothing.
func (b *Basin) sunken() {
	seen := make([]bool, len(b.solids))
	for _, k := range b.class {
		if k >= 0 {
			seen[k] = true
		}
	}
	for k, x := range b.solids {
		if !seen[k] {
			b.say(finding.Finding{Code: "step-sunken", Words: map[string]string{"name": x.name}})
		}
	}
}

func (b *Basin) coved() bool {
	for i := range b.nodes {
		if b.nodes[i].cove > 0 {
			return true
		}
	}
	return false
}

// cutFloor triangulates the floor anew, with the toes of the coves and the rings of the solids.
func (b *Basin) cutFloor(spec *Spec) {
	old := b.base
	points := append([]mesh.Point3(nil), old.Points...)
	forms := append([]form(nil), old.forms...)
	add := func(p plane.Point) int {
		f := old.find(p).form(old)
		points, forms = append(points, mesh.Point3{X: p.X, Y: p.Y, Z: b.value(f)}), append(forms, f)
		return len(points) - 1
	}
	ring := make([]int, len(b.nodes))
	for i := range b.nodes {
		ring[i] = i
		if n := &b.nodes[i]; n.cove > 0 {
			ring[i] = add(n.foot.Add(n.out.Mul(-n.cove)))
		}
	}
	lines := b.lines(spec)
	for _, m := range old.Made { // breaks that cross each other do so again, at a point that is there now
		points[m.Point].Z = b.value(old.forms[m.Point])
	}
	for k := range b.solids {
		lines = append(lines, b.ringLine(&b.solids[k], add)...)
	}
	s, _ := mesh.Triangulate(points, lines, ring, nil)
	b.floor = &ground{s, forms}
	b.floor.follow()
	for i := range s.Points {
		s.Points[i].Z = b.value(b.floor.forms[i])
	}
}

// ringLine are the sides of a solid that do not run along the wall, as breaks of the floor.
func (b *Basin) ringLine(x *solid, add func(plane.Point) int) [][]int {
	number := make([]int, len(x.ring))
	for i, p := range x.ring {
		number[i] = -1
		if f := b.rim.Foot(p); math.Abs(f.Right) <= joined {
			number[i] = b.nodeAt(b.wrap(f.Along))
		} else {
			number[i] = add(p)
		}
	}
	var out [][]int
	for i, p := range x.ring {
		j := (i + 1) % len(x.ring)
		if mid := plane.Lerp(p, x.ring[j], 0.5); math.Abs(b.rim.Foot(mid).Right) > atWall/4 {
			out = append(out, []int{number[i], number[j]})
		}
	}
	return out
}
