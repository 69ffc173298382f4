package simulate

import (
	"math"

	"brimline/plane"
)

// report writes down the truth and the readings of a visit.
func (v *visit) report(c *Case, p pool) {
	c.Truth = map[string]plane.Point{}
	for _, list := range [][]string{v.pegs, v.order} {
		for _, name := range list {
			c.Truth[name] = v.at[name]
		}
	}
	c.Pegs, c.Order = v.pegs, v.order
	c.Outline = p.figure.Move(v.frame).Reverse().Path()
	c.Area, c.Perimeter = c.Outline.Area(), c.Outline.Length()
	c.Rim = Rim{Edge: v.edge, Definition: v.shared, JointsSaid: chance(v.r, 0.75), Runs: v.runs(p.figure)}
	if v.shared == 0 {
		for _, m := range v.order {
			c.Rim.Own = append(c.Rim.Own, v.definition[m])
		}
	}
	c.Tools, c.Setups, c.Readings, c.Side = v.tools, v.setups, v.readings, v.side
}

// runs gives the pieces in the book's direction, from the first joint at or after r1.
func (v *visit) runs(f Figure) []Run {
	first := v.firstJoint()
	n := len(f)
	var out []Run
	for i := range n {
		k := (first + i) % n
		x := f[k]
		names := v.stations[k]
		if n == 1 {
			names = v.order // one curve all round begins at r1
		}
		end := v.stations[(k+1)%n][0]
		if n == 1 {
			end = names[0]
		}
		run := Run{Kind: x.Kind, Joint: "kink", Length: x.Length()}
		run.Marks = append(append(run.Marks, names...), end)
		if x.Tangent {
			run.Joint = "tangent"
		}
		if x.Kind == arc {
			run.Radius, run.Sweep = math.Abs(x.Segs[0].Radius()), x.Segs[0].Sweep()
		}
		out = append(out, run)
	}
	return out
}

// firstJoint is the number of the piece whose first mark comes first in the order of the marks.
func (v *visit) firstJoint() int {
	for _, m := range v.order {
		for k, names := range v.stations {
			if names[0] == m {
				return k
			}
		}
	}
	panic("simulate: an outline without marks")
}
