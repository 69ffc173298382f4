package basin

import (
	"math"

	"brimline/plane"
)

// arcPieces are the chords of a round cove: their water is short of the true by half a hundredth of the
// square of its radius, per metre.
const arcPieces = 8

// cove adds the strip between wall and floor.
func (b *Basin) cove(i, j int) {
	pieces := 1
	if b.nodes[i].cove > 0 && b.nodes[i].bent || b.nodes[j].cove > 0 && b.nodes[j].bent {
		pieces = arcPieces
	}
	a, c := b.fillet(i, pieces), b.fillet(j, pieces)
	for k := range pieces { // from the toe to the wall
		b.shell.quad(a[k], a[k+1], c[k+1], c[k], Coves)
	}
}

// fillet are the vertices of the cove at a node, from the toe E up to the wall T over the foot P:
// P + (E−P)(1−sin θ) + (T−P)(1−cos θ), a quarter of an ellipse tangent to floor and wall.
func (b *Basin) fillet(i, pieces int) []int {
	n := &b.nodes[i]
	end, toe := n.low, n.foot
	if n.cove > 0 {
		toe = n.foot.Add(n.out.Mul(-n.cove))
		end = b.base.find(toe).form(b.base)
	}
	var out []int
	for k := range pieces + 1 {
		s, c := math.Sincos(float64(k) * math.Pi / 2 / float64(pieces))
		if pieces == 1 {
			s, c = float64(k), 1-float64(k)
		}
		z := between(end, n.low, s).up(n.cove * (1 - c))
		at := plane.Lerp(toe, n.foot, s)
		out = append(out, b.shell.vertex(vertex{p: vec{at.X, at.Y, b.value(z)}, z: z, node: i, down: b.value(n.rim) - b.value(n.low), foot: true}))
	}
	return out
}
