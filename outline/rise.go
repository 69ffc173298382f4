package outline

import (
	"math"

	"brimline/finding"
	"brimline/plane"
)

// rise is what a bow says of an arc of two marks: the rise in the solution, signed as the sagitta
// of the piece is (positive to the right of its direction), and its standard deviation. That a
// tool's zero, where it is solved, is common to the rise and the ties is left out of account.
type rise struct {
	h, sd float64
}

// risen takes the rise of an arc without inner marks from the bow of its ends; false where no bow
// in the solution reads it.
func (c *chain) risen(p *piece) ([]finding.Finding, bool) {
	f := c.bow(c.vertex[p.from].mark, c.vertex[p.to].mark)
	if f < 0 || len(p.inner) > 0 {
		return nil, false
	}
	n := c.s.Net
	block := n.FreeBlock(f)
	h := c.s.X[n.Offset[block]]
	sd := math.Hypot(c.s.BlockSD(int(block), 0), leastSD)
	outward, known := c.outward()
	toward := n.Free[f].Toward
	if toward == "water" {
		outward = -outward
	}
	p.rise = &rise{h: outward * h, sd: sd}
	if toward != "" && known {
		return nil, true
	}
	hand := "right"
	if outward < 0 {
		hand = "left"
	}
	return []finding.Finding{{Code: "bow-side", Lines: []string{c.l.Name}, Marks: p.names[:], Words: map[string]string{"hand": hand}}}, true
}

// bow is the free block of a chord's rise, −1 where no bow of it is in the solution.
func (c *chain) bow(a, b int) int {
	for i := range c.s.Net.Obs {
		o := &c.s.Net.Obs[i]
		if o.Kind.Name() != "bow" || !c.s.In[i] || o.Free < 0 || c.s.Net.Free[o.Free].Kind != "bow" {
			continue
		}
		if m := o.Marks; m[0] == a && m[1] == b || m[0] == b && m[1] == a {
			return o.Free
		}
	}
	return -1
}

// outward is the sign of the sagitta of an arc that bulges towards the deck: positive where the
// line runs counter-clockwise round the water. An open line is closed for this by a straight;
// where its marks enclose nothing it is taken to run clockwise, as marks are numbered, and that is
// not known.
func (c *chain) outward() (sign float64, known bool) {
	var at []plane.Point
	for _, r := range c.l.Runs {
		for _, m := range r.Marks[1:] {
			at = append(at, c.block.point(m))
		}
	}
	at = append(at, c.block.point(c.l.Runs[0].Marks[0]))
	area, round := 0.0, 0.0
	for i, p := range at {
		q := at[(i+1)%len(at)]
		area += p.Sub(at[0]).Cross(q.Sub(at[0])) / 2
		round += p.Dist(q)
	}
	if math.Abs(area) < 1e-3*round*round {
		return -1, false
	}
	return math.Copysign(1, area), true
}
