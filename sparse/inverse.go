package sparse

// Inverse holds the blocks of the inverse that stand on the diagonal or where L has a block.
type Inverse struct {
	sym *Symbolic
	z   []float64 // on the layout of L
	zd  []float64 // diagonal blocks
}

// SelectedInverse computes these blocks from the factor, last column first.
func (f *Factor) SelectedInverse() *Inverse {
	s := f.sym
	v := &Inverse{sym: s, z: make([]float64, s.ln), zd: make([]float64, s.dn)}
	if s.all2 {
		v.fill2(f)
	} else {
		v.fillAny(f)
	}
	return v
}

func (v *Inverse) fill2(f *Factor) {
	s, l, z, zd := f.sym, f.l, v.z, v.zd
	n := len(s.dim)
	acc := make([]float64, 4*n)
	own := make([]float64, 4*n)
	mark := make([]bool, n)
	for j := n - 1; j >= 0; j-- {
		first, end := s.lp[j], s.lp[j+1]
		rows := s.li[first:end]
		for q, r := range rows {
			mark[r] = true
			copy(own[4*r:4*r+4], l[4*(int(first)+q):])
			clear(acc[4*r : 4*r+4])
		}
		for q, r := range rows {
			g := own[4*r : 4*r+4 : 4*r+4]
			g0, g1, g2, g3 := g[0], g[1], g[2], g[3]
			d := zd[4*r : 4*r+4 : 4*r+4]
			a0, a1 := d[0]*g0+d[1]*g2, d[0]*g1+d[1]*g3
			a2, a3 := d[2]*g0+d[3]*g2, d[2]*g1+d[3]*g3
			left := len(rows) - q - 1
			for p := s.lp[r]; left > 0; p++ {
				i := s.li[p]
				if !mark[i] {
					continue
				}
				left--
				w := z[4*p : 4*p+4 : 4*p+4]
				t := acc[4*i : 4*i+4 : 4*i+4]
				t[0] += w[0]*g0 + w[1]*g2
				t[1] += w[0]*g1 + w[1]*g3
				t[2] += w[2]*g0 + w[3]*g2
				t[3] += w[2]*g1 + w[3]*g3
				h := own[4*i : 4*i+4 : 4*i+4]
				a0 += w[0]*h[0] + w[2]*h[2]
				a1 += w[0]*h[1] + w[2]*h[3]
				a2 += w[1]*h[0] + w[3]*h[2]
				a3 += w[1]*h[1] + w[3]*h[3]
			}
			t := acc[4*r : 4*r+4 : 4*r+4]
			t[0] += a0
			t[1] += a1
			t[2] += a2
			t[3] += a3
		}
		di := f.dinv[4*j : 4*j+4 : 4*j+4]
		d0, d1, d3 := di[0], di[1], di[3]
		for q, r := range rows {
			e := 4 * (int(first) + q)
			t := acc[4*r : 4*r+4 : 4*r+4]
			g := own[4*r : 4*r+4 : 4*r+4]
			z[e], z[e+1], z[e+2], z[e+3] = -t[0], -t[1], -t[2], -t[3]
			d0 += g[0]*t[0] + g[2]*t[2]
			d1 += g[0]*t[1] + g[2]*t[3]
			d3 += g[1]*t[1] + g[3]*t[3]
			mark[r] = false
		}
		zd[4*j], zd[4*j+1], zd[4*j+2], zd[4*j+3] = d0, d1, d1, d3
	}
}

func (v *Inverse) fillAny(f *Factor) {
	s, l := f.sym, f.l
	n := len(s.dim)
	step := int(s.most * s.most)
	acc := make([]float64, step*n)
	own := make([]int32, n) // entry of the current column, -1 outside it
	for i := range own {
		own[i] = -1
	}
	for j := n - 1; j >= 0; j-- {
		dj := int(s.dim[j])
		for e := s.lp[j]; e < s.lp[j+1]; e++ {
			r := s.li[e]
			own[r] = e
			clear(acc[step*int(r) : step*int(r)+step])
		}
		for e := s.lp[j]; e < s.lp[j+1]; e++ {
			r := s.li[e]
			dr := int(s.dim[r])
			addProduct(acc[step*int(r):], v.zd[s.ld[r]:], l[s.lo[e]:], dr, dr, dj)
			for p := s.lp[r]; p < s.lp[r+1]; p++ {
				i := s.li[p]
				if own[i] < 0 {
					continue
				}
				di := int(s.dim[i])
				addProduct(acc[step*int(i):], v.z[s.lo[p]:], l[s.lo[e]:], di, dr, dj)
				addTransposed(acc[step*int(r):], v.z[s.lo[p]:], l[s.lo[own[i]]:], dr, di, dj)
			}
		}
		zd := v.zd[s.ld[j] : int(s.ld[j])+dj*dj]
		copy(zd, f.dinv[s.ld[j]:])
		for e := s.lp[j]; e < s.lp[j+1]; e++ {
			r := s.li[e]
			dr := int(s.dim[r])
			t := acc[step*int(r):]
			addTransposed(zd, l[s.lo[e]:], t, dj, dr, dj)
			for c := range dr * dj {
				v.z[int(s.lo[e])+c] = -t[c]
			}
			own[r] = -1
		}
		for a := range dj { // keep the block symmetric to the last digit
			for b := range a {
				m := (zd[a*dj+b] + zd[b*dj+a]) / 2
				zd[a*dj+b], zd[b*dj+a] = m, m
			}
		}
	}
}

// addProduct: t (m×n) += v (m×c) · u (c×n).
func addProduct(t, v, u []float64, m, c, n int) {
	for a := range m {
		for b := range n {
			for k := range c {
				t[a*n+b] += v[a*c+k] * u[k*n+b]
			}
		}
	}
}

// addTransposed: t (m×n) += vᵀ (v is c×m) · u (c×n).
func addTransposed(t, v, u []float64, m, c, n int) {
	for a := range m {
		for b := range n {
			for k := range c {
				t[a*n+b] += v[k*m+a] * u[k*n+b]
			}
		}
	}
}

// Block copies the block (i, j) of the inverse, dim(i) × dim(j) row-major, into out; false when
// it was not selected.
func (v *Inverse) Block(i, j int, out []float64) bool {
	s := v.sym
	a, b := s.pos[i], s.pos[j]
	da, db := int(s.dim[a]), int(s.dim[b])
	if a == b {
		copy(out[:da*da], v.zd[s.ld[a]:])
		return true
	}
	lo, hi := a, b
	if a > b {
		lo, hi = b, a
	}
	e := s.findFactor(hi, lo)
	if e < 0 {
		return false
	}
	z := v.z[s.lo[e]:]
	if a > b {
		copy(out[:da*db], z)
		return true
	}
	for x := range da {
		for y := range db {
			out[x*db+y] = z[y*da+x]
		}
	}
	return true
}

func (s *Symbolic) findFactor(row, col int32) int32 {
	lo, hi := s.lp[col], s.lp[col+1]
	for lo < hi {
		m := (lo + hi) / 2
		if s.li[m] < row {
			lo = m + 1
		} else {
			hi = m
		}
	}
	if lo < s.lp[col+1] && s.li[lo] == row {
		return lo
	}
	return -1
}
