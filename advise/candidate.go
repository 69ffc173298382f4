package advise

import (
	"brimline/network"
	"brimline/plane"
)

// candidate is a tie that could be read: its derivatives are −u at a and u at b.
type candidate struct {
	a, b    int
	u       plane.Point
	about   float64
	v       float64 // variance of the reading
	minutes float64
	hooked  bool
	reads   int // how often it was read already
}

// along is the change of the length by moves of all marks.
func (c *candidate) along(move []float64) float64 {
	return c.u.X*(move[2*c.b]-move[2*c.a]) + c.u.Y*(move[2*c.b+1]-move[2*c.a+1])
}

// spread is C·aᵀ.
func (c *candidate) spread(g *ground, out []float64) {
	clear(out)
	g.times([]int{c.a, c.b}, []float64{-c.u.X, -c.u.Y, c.u.X, c.u.Y}, 1, out)
}

// total is D = s² + a·C·aᵀ.
func (c *candidate) total(g *ground) float64 {
	n, x, y := g.n, c.u.X, c.u.Y
	a, b := 2*c.a, 2*c.b
	at := func(i, j int) float64 {
		r := g.cov[i*n:]
		q := g.cov[(i+1)*n:]
		return x*x*r[j] + x*y*(r[j+1]+q[j]) + y*y*q[j+1]
	}
	return c.v + at(a, a) + at(b, b) - 2*at(a, b)
}

// candidates are the ties between any two placed marks that can be read and were not read too
// often, none to where a peg was before it was moved, in the order of their marks.
func (g *ground) candidates(o Options) []candidate {
	n := g.s.Net
	barred := map[[2]int]bool{}
	for _, p := range o.Cannot {
		barred[ordered(p[0], p[1])] = true
	}
	reads := map[[2]int]int{}
	for i := range n.Obs {
		if ob := &n.Obs[i]; ob.Use && ob.Kind.Name() == (network.Tie{}).Name() {
			reads[ordered(ob.Marks[0], ob.Marks[1])]++
		}
	}
	var placed []int
	for m := range n.Marks {
		if n.Taped(m) && g.placed([]int{m}) {
			placed = append(placed, m)
		}
	}
	step := 1 + len(placed)/(2*partners)
	var out []candidate
	for i, a := range placed {
		for j := i + 1; j < len(placed); j++ {
			b := placed[j]
			key := [2]int{a, b}
			if step > 1 && (i+j)%step != 0 && !peg(n, a) && !peg(n, b) && reads[key] == 0 {
				continue
			}
			if barred[key] || reads[key] > mostRead {
				continue
			}
			if c, ok := g.candidate(a, b, o); ok {
				c.reads = reads[key]
				out = append(out, c)
			}
		}
	}
	return out
}

// candidate is the tie between two placed marks; false where it is too short or too long to tape.
func (g *ground) candidate(a, b int, o Options) (candidate, bool) {
	d := g.s.X.Point(b).Sub(g.s.X.Point(a))
	l := d.Len()
	if !(l >= o.Shortest && l <= o.Longest) {
		return candidate{}, false
	}
	sd := o.sd(a, b)
	return candidate{a: a, b: b, u: d.Mul(1 / l), about: l, v: sd * sd, minutes: o.minutes(l), hooked: o.hooks(g.s.Net, a, b)}, true
}

func ordered(a, b int) [2]int {
	if b < a {
		a, b = b, a
	}
	return [2]int{a, b}
}

func peg(n *network.Network, m int) bool { return n.Pegs != nil && n.Pegs[m] }
