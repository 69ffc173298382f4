package simulate

import "brimline/plane"

// MovePeg moves a peg before reading number from (counted from 0) is taken.
func (c *Case) MovePeg(peg string, from int, by plane.Point) Mistake {
	m := Mistake{Kind: "peg-moved", Peg: peg}
	for i := from; i < len(c.Readings); i++ {
		if x := c.Readings[i]; x.Kind == "tie" && (x.Marks[0] == peg || x.Marks[1] == peg) {
			m.Hits = append(m.Hits, c.reread(i, peg, by))
		}
	}
	return m
}

// reread reads a tie again, with the noise that it had, one of its marks standing elsewhere.
func (c *Case) reread(i int, mark string, by plane.Point) Hit {
	x := c.Readings[i]
	from, to := c.Truth[x.Marks[0]], c.Truth[x.Marks[1]]
	if x.Marks[0] == mark {
		from = from.Add(by)
	} else {
		to = to.Add(by)
	}
	text, _ := typedAs(x.Read[0]-x.True[0]+from.Dist(to), c.Unit, false)
	return c.hit(i, 0, spoiledPart{x.Typed[0], text})
}

// TapeZero lets every tie that one person took read too long by one length.
func (c *Case) TapeZero(who string, by float64) Mistake {
	m := Mistake{Kind: "tape-zero"}
	for i, x := range c.Readings {
		if x.Kind == "tie" && x.By == who {
			text, _ := typedAs(x.Read[0]+by, c.Unit, false)
			m.Hits = append(m.Hits, c.hit(i, 0, spoiledPart{x.Typed[0], text}))
		}
	}
	return m
}

// WrongEdge reads one peg's ties in the rows from to to, the last one not included, to an edge
// that lies off metres outside of the right one.
func (c *Case) WrongEdge(peg string, from, to int, off float64) Mistake {
	m := Mistake{Kind: "wrong-edge", Peg: peg}
	list := c.column(peg)
	for i := from; i < to; i++ {
		if list[i] < 0 {
			continue
		}
		name := c.Order[i]
		seg, t, _ := c.Outline.Nearest(c.Truth[name])
		outward := c.Outline.Segs[seg].Tangent(t).Left().Mul(-1) // the outline runs counter-clockwise
		m.Hits = append(m.Hits, c.reread(list[i], name, outward.Mul(off)))
	}
	sortHits(m.Hits)
	return m
}
