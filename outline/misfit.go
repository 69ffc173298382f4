package outline

// misfitCov is the covariance of the misfits that the marks cause, at the present place of the line.
func (c *chain) misfitCov(edge []float64) []float64 {
	marks, at := c.markList()
	normals := c.normals(marks)
	cm := c.openCov(marks, normals, edge)
	k, n := 2*len(marks), len(c.rows)
	loads := c.loads(at, normals)
	out := make([]float64, n*n)
	for i, r := range c.rows {
		switch r.axis {
		case 3:
			out[i*n+i] = tangentSD * tangentSD
			continue
		case 4:
			sd := c.pieces[r.piece].rise.sd
			out[i*n+i] = sd * sd
			continue
		}
		p, u := 2*at[r.mark], loads[i]
		for j := i; j < n; j++ {
			if a := c.rows[j].axis; a == 3 || a == 4 {
				continue
			}
			q, w := 2*at[c.rows[j].mark], loads[j]
			v := u[0]*(cm[p*k+q]*w[0]+cm[p*k+q+1]*w[1]) + u[1]*(cm[(p+1)*k+q]*w[0]+cm[(p+1)*k+q+1]*w[1])
			out[i*n+j], out[j*n+i] = v, v
		}
		if r.axis > 4 {
			sd := c.vertex[r.vertex].sd
			out[i*n+i] += sd * sd
		}
	}
	return out
}

// openCov is the covariance of marks with what stays open about the edge across the line.
func (c *chain) openCov(marks []int, normals [][2]float64, edge []float64) []float64 {
	cm, k := c.block.some(c.frame, marks), 2*len(marks)
	for i, m := range marks {
		e := edge[m]*edge[m] + leastSD*leastSD
		nx, ny := normals[i][0], normals[i][1]
		cm[(2*i)*k+2*i] += e*nx*nx + leastSD*leastSD
		cm[(2*i)*k+2*i+1] += e * nx * ny
		cm[(2*i+1)*k+2*i] += e * nx * ny
		cm[(2*i+1)*k+2*i+1] += e*ny*ny + leastSD*leastSD
	}
	return cm
}

// loads say along which direction a move of its mark enters each condition.
func (c *chain) loads(at map[int]int, normals [][2]float64) [][2]float64 {
	out := make([][2]float64, len(c.rows))
	for i, r := range c.rows {
		switch r.axis {
		case 0, 5:
			out[i] = [2]float64{1, 0}
		case 1, 6:
			out[i] = [2]float64{0, 1}
		case 2:
			out[i] = normals[at[r.mark]]
		}
	}
	return out
}

// markList lists the marks that conditions hang on, and the place of each in the list.
func (c *chain) markList() (marks []int, at map[int]int) {
	at = map[int]int{}
	for _, r := range c.rows {
		if r.axis == 3 || r.axis == 4 {
			continue
		}
		if _, ok := at[r.mark]; !ok {
			at[r.mark] = len(marks)
			marks = append(marks, r.mark)
		}
	}
	return marks, at
}

func (c *chain) weights(edge []float64) []float64 {
	return invert(c.misfitCov(edge), len(c.rows))
}
