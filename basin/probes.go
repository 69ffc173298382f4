package basin

import (
	"math"

	"brimline/plane"
)

// fine is the largest side of the pieces by which a figure feels the floor (metres).
const fine = 0.8

// floorProbes are the places of the wet floor, each with its area in plan, less those that a solid
// covers.
func (b *Basin) floorProbes(level float64) []probe {
	var out []probe
	g := b.base
	for _, v := range g.Triangles {
		p, q, r := g.Points[v[0]].Plan(), g.Points[v[1]].Plan(), g.Points[v[2]].Plan()
		side := math.Max(p.Dist(q), math.Max(q.Dist(r), r.Dist(p)))
		n := max(1, int(math.Ceil(side/fine)))
		area := q.Sub(p).Cross(r.Sub(p)) / 2 / float64(n*n)
		forms := []form{g.forms[v[0]], g.forms[v[1]], g.forms[v[2]]}
		for i := range n {
			for j := range 2*(n-i) - 1 {
				w := pieceShares(n, i, j)
				at := p.Mul(w[0]).Add(q.Mul(w[1])).Add(r.Mul(w[2]))
				f := mix(forms, w[:])
				z := b.value(f)
				if z >= level || b.covering(at, z) >= 0 {
					continue
				}
				out = append(out, probe{at: at, weight: -area, drawn: b.sampling.drawn(f)})
			}
		}
	}
	return out
}

// pieceShares are the shares of the corners at the middle of piece j in row i of the n² equal
// pieces of a triangle.
func pieceShares(n, i, j int) [3]float64 {
	third := 1.0 / 3
	u, v := float64(i)+third, float64(j/2)+third
	if j%2 == 1 {
		u, v = float64(i)+2*third, float64(j/2)+2*third
	}
	u, v = u/float64(n), v/float64(n)
	return [3]float64{1 - u - v, v, u}
}

// footProbes are the places of the wall foot, each with the length of wall that ends there.
func (b *Basin) footProbes(level float64) []probe {
	var out []probe
	for i := range b.nodes {
		n, m := &b.nodes[i], &b.nodes[(i+1)%len(b.nodes)]
		length := n.foot.Dist(m.foot)
		pieces := max(1, int(math.Ceil(length/fine)))
		for k := range pieces {
			t := (float64(k) + 0.5) / float64(pieces)
			f := between(n.low, m.low, t)
			at := plane.Lerp(n.foot, m.foot, t)
			if z := b.value(f); z < level && b.covering(b.beside(n.s+t*b.ahead(n.s, m.s)), z) < 0 {
				out = append(out, probe{at: at, weight: -length / float64(pieces), drawn: b.sampling.drawn(f)})
			}
		}
	}
	return out
}
