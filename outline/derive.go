package outline

// derive adds the corners, numbered from first on, to the covariance in the datum: as their four
// marks move them, and their own sigma.
func (b *block) derive(first int) {
	for i := range b.corner {
		c := &b.corner[i]
		if !c.used {
			continue
		}
		k := 2 * len(b.marks)
		n := k + 2
		out := make([]float64, n*n)
		for j := range k {
			copy(out[j*n:], b.datum[j*k:(j+1)*k])
		}
		weight := make([]float64, 2*k) // slopes by the coordinates in the block
		for a := range 2 {
			for p, m := range c.marks() {
				weight[a*k+2*b.row[m]] += c.slope[a][2*p]
				weight[a*k+2*b.row[m]+1] += c.slope[a][2*p+1]
			}
		}
		for a := range 2 {
			row := out[(k+a)*n:]
			for j, w := range weight[a*k : (a+1)*k] {
				for l := range k {
					row[l] += w * b.datum[j*k+l]
				}
			}
			for e := range 2 {
				for j, w := range weight[e*k : (e+1)*k] {
					row[k+e] += w * row[j]
				}
			}
			row[k+a] += c.Sigma * c.Sigma
			for j := range k {
				out[j*n+k+a] = row[j]
			}
		}
		b.datum = out
		b.take(first + i)
	}
}
