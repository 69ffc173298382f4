package outline

// misfitCov is the covariance of the misfits that the marks and what stays open about the edge
// across the line cause, at the present place of the line.
func (c *chain) misfitCov(edge []float64) []float64 {
	marks, at := c.markList()
	normals := c.normals(marks)
	n := len(c.rows)
	loads := c.loads(at, normals)
	out := make([]float64, n*n)
	for i, r := range c.rows {
		if !r.marked() {
			sd := c.ownSD(r)
			out[i*n+i] = sd * sd
			continue
		}
		u, k := loads[i], c.block.k
		x := c.frame[2*c.block.row[r.mark]*k:]
		y := x[k:]
		for j := i; j < n; j++ {
			s := &c.rows[j]
			if !s.marked() {
				continue
			}
			q, w := 2*c.block.row[s.mark], loads[j]
			v := u[0]*(x[q]*w[0]+x[q+1]*w[1]) + u[1]*(y[q]*w[0]+y[q+1]*w[1])
			if s.mark == r.mark {
				a := normals[at[r.mark]]
				e := edge[r.mark]*edge[r.mark] + leastSD*leastSD
				v += e*(u[0]*a[0]+u[1]*a[1])*(w[0]*a[0]+w[1]*a[1]) + leastSD*leastSD*(u[0]*w[0]+u[1]*w[1])
			}
			out[i*n+j], out[j*n+i] = v, v
		}
		if r.axis == 5 || r.axis == 6 {
			sd := c.vertex[r.vertex].sd
			out[i*n+i] += sd * sd
		}
	}
	return out
}

// ownSD is the standard deviation of a condition that hangs on no mark.
func (c *chain) ownSD(r row) float64 {
	p := &c.pieces[r.piece]
	switch r.axis {
	case 4:
		return p.rise.sd
	case 9:
		return c.block.corner[p.corner-1].radiusSD
	}
	return tangentSD
}

// loads say along which direction a move of its mark enters each condition.
func (c *chain) loads(at map[int]int, normals [][2]float64) [][2]float64 {
	out := make([][2]float64, len(c.rows))
	for i, r := range c.rows {
		switch r.axis {
		case 0, 5, 7:
			out[i] = [2]float64{1, 0}
		case 1, 6, 8:
			out[i] = [2]float64{0, 1}
		case 2:
			out[i] = normals[at[r.mark]]
		}
	}
	return out
}

// marked says that a condition hangs on a mark.
func (r row) marked() bool { return r.axis != 3 && r.axis != 4 && r.axis != 9 }

// markList lists the marks that conditions hang on, and the place of each in the list.
func (c *chain) markList() (marks []int, at map[int]int) {
	at = map[int]int{}
	for _, r := range c.rows {
		if !r.marked() {
			continue
		}
		if _, ok := at[r.mark]; !ok {
			at[r.mark] = len(marks)
			marks = append(marks, r.mark)
		}
	}
	return marks, at
}
