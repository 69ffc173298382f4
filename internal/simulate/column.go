package simulate

// column are the places in Readings of the first tie from the peg to each mark, −1 for none.
func (c Case) column(peg string) []int {
	out := make([]int, len(c.Order))
	for i, m := range c.Order {
		out[i] = -1
		for k, x := range c.Readings {
			if out[i] < 0 && x.Kind == "tie" && x.Marks[0] == peg && x.Marks[1] == m {
				out[i] = k
			}
		}
	}
	return out
}

// changeRow is the first row whose first tie from A the second of a crew took, 0 for none.
func (c Case) changeRow() int {
	list := c.column("A")
	for i := 1; i < len(list); i++ {
		if list[i] >= 0 && list[i-1] >= 0 && c.Readings[list[i]].By != c.Readings[list[i-1]].By {
			return i
		}
	}
	return 0
}

// SwapColumns exchanges what is typed for two pegs in the rows from to to, the last one not
// included. The book stays the old one; so with the other exported changes of a case below.
func (c *Case) SwapColumns(p, q string, from, to int) Mistake {
	a, b := c.column(p), c.column(q)
	m := Mistake{Kind: "columns", Peg: p}
	for i := from; i < to; i++ {
		if a[i] < 0 || b[i] < 0 {
			continue
		}
		x, y := c.Readings[a[i]], c.Readings[b[i]]
		first, second := spoiledPart{x.Typed[0], y.Text[0]}, spoiledPart{y.Typed[0], x.Text[0]}
		m.Hits = append(m.Hits, c.hit(a[i], 0, first), c.hit(b[i], 0, second))
	}
	sortHits(m.Hits)
	return m
}

func sortHits(h []Hit) {
	for i := range h {
		for k := i; k > 0 && h[k].Index < h[k-1].Index; k-- {
			h[k], h[k-1] = h[k-1], h[k]
		}
	}
}

// Slip lets the numbering of one peg's column slip by one from a row on. skipped: one mark was
// missed, so that each row holds the reading of the next, and the last row none. Else one was
// read twice, so that each row holds the reading of the one before, the first of them read
// again.
func (c *Case) Slip(peg string, row int, skipped bool) Mistake {
	list, before := c.column(peg), c.copied()
	m := Mistake{Kind: "slip", Peg: peg}
	last := len(list) - 1
	for i := row; i <= last; i++ {
		other := i - 1
		if skipped {
			other = i + 1
		}
		if other > last {
			break
		}
		text := before.Readings[list[other]].Text[0]
		m.Hits = append(m.Hits, c.hit(list[i], 0, spoiledPart{before.Readings[list[i]].Typed[0], text}))
	}
	if skipped {
		gone := list[last]
		c.Readings = append(c.Readings[:gone], c.Readings[gone+1:]...)
		c.numbered()
	}
	for i, h := range m.Hits {
		m.Hits[i].N = c.Readings[h.Index].N
	}
	return m
}
