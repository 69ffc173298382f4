package mistake

import (
	"math"

	"brimline/adjust"
)

// crossing is one mark with two of its readings in doubt, where the others hold it in one direction
// only: the size of either error then depends on where the other puts the mark. Everything else is
// held.
type crossing struct {
	s     *scene
	m     int
	parts [2]int
	value [2]float64
	sd    [2]float64
	least float64 // the sum of squares without both
}

func (f *finder) crossing(sp *adjust.Space, m, p, q int) *crossing {
	member := append([]bool(nil), sp.Member...)
	member[p], member[q] = false, false
	c := &crossing{s: f.scene(sp.X, member), m: m, parts: [2]int{p, q}}
	c.least, _ = c.s.best(m, sp.X.Point(m))
	for k, part := range c.parts {
		c.value[k], c.sd[k] = f.value(part), sp.SD[part]
	}
	return c
}

// fit is the log of what the readings of the mark say of two explanations: half the rise of the sum
// of squares, and for an open size the share of its range that they leave.
func (c *crossing) fit(v, w way) float64 {
	both := [2]way{v, w}
	var in []int
	for k, x := range both {
		if !x.open {
			in = append(in, k)
		}
	}
	c.take(both, in...)
	cost, at := c.s.best(c.m, c.s.x.Point(c.m))
	ln := (c.least - cost) / 2
	for _, x := range both {
		if x.loose {
			ln -= math.Ln2 / 2
		}
	}
	was := c.s.x.Point(c.m)
	c.s.x.SetPoint(c.m, at)
	defer func() { c.s.x.SetPoint(c.m, was) }()
	switch {
	case v.open && w.open:
		ln += math.Min(c.left(both, 0)+c.left(both, 1, 0), c.left(both, 1)+c.left(both, 0, 1))
	case v.open:
		ln += c.left(both, 0, 1)
	case w.open:
		ln += c.left(both, 1, 0)
	}
	c.take(both)
	return ln
}

// take lets these of the two take part, each less the size that its explanation says.
func (c *crossing) take(both [2]way, in ...int) {
	f := c.s.f
	for k, p := range c.parts {
		i := f.s.ObsOf(p)
		for n, o := range c.s.of[c.m] {
			if o == i {
				c.s.of[c.m] = append(c.s.of[c.m][:n:n], c.s.of[c.m][n+1:]...)
				break
			}
		}
		c.s.over[p] = math.NaN()
		for _, j := range in {
			if j == k {
				c.s.of[c.m] = append(c.s.of[c.m][:len(c.s.of[c.m]):len(c.s.of[c.m])], i)
				c.s.over[p] = c.value[k] - both[k].size
			}
		}
	}
}

// left is the log of the share of the range of one that the readings leave to it, with some of the
// two in beside them.
func (c *crossing) left(both [2]way, of int, beside ...int) float64 {
	c.take(both, beside...)
	before := c.det()
	c.take(both, append(beside[:len(beside):len(beside)], of)...)
	s := c.sd[of] * math.Sqrt(c.det()/before)
	return narrowed(s * math.Sqrt(2*math.Pi) / both[of].width)
}

// det is the determinant of the normal matrix of the mark.
func (c *crossing) det() float64 {
	var xx, xy, yy float64
	c.s.each(c.m, func(_, x, y float64) { xx, xy, yy = xx+x*x, xy+x*y, yy+y*y })
	return math.Max(xx*yy-xy*xy, 1e-12*xx*yy)
}
