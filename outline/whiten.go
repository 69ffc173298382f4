package outline

import "math"

// whitening is the lower Cholesky factor L of the covariance V = L·Lᵀ of the misfits: L⁻¹ makes of
// them independent ones of unit variance, so that rᵀ·V⁻¹·r = |L⁻¹·r|².
type whitening struct {
	l []float64
	n int
}

// whiten is the whitening at the present place of the line.
func (c *chain) whiten(edge []float64) whitening {
	n := len(c.rows)
	return whitening{cholesky(c.misfitCov(edge), n), n}
}

// solve puts L⁻¹·b in the place of b.
func (w whitening) solve(b []float64) {
	first := 0
	for first < w.n && b[first] == 0 {
		first++
	}
	for i := first; i < w.n; i++ {
		li := w.l[i*w.n : i*w.n+i+1]
		b[i] = (b[i] - dot(li[first:i], b[first:i])) / li[i]
	}
}

// cost is rᵀ·V⁻¹·r at the present place of the line.
func (c *chain) cost(w whitening) float64 {
	r := c.misfits()
	w.solve(r)
	return dot(r, r)
}

func (c *chain) misfits() []float64 {
	r := make([]float64, len(c.rows))
	for i, x := range c.rows {
		r[i] = c.value(c.q, x)
	}
	return r
}

// equations forms Jᵀ·V⁻¹·J and Jᵀ·V⁻¹·r.
func (c *chain) equations(w whitening) (n, g []float64) {
	j, r := c.jacobian(), c.misfits()
	w.solve(r)
	n, g = make([]float64, c.n*c.n), make([]float64, c.n)
	col := make([]float64, c.n*w.n)
	for a := range c.n {
		x := col[a*w.n : (a+1)*w.n]
		for i := range x {
			x[i] = j[i*c.n+a]
		}
		w.solve(x)
		g[a] = dot(x, r)
		for e := range a + 1 {
			v := dot(x, col[e*w.n:(e+1)*w.n])
			n[a*c.n+e], n[e*c.n+a] = v, v
		}
	}
	return n, g
}

// cholesky is the lower factor of a symmetric positive definite matrix; a pivot lost to rounding is
// held up at 1e-14 of the largest.
func cholesky(a []float64, n int) []float64 {
	l := make([]float64, n*n)
	top := 0.0
	for i := range n {
		top = math.Max(top, a[i*n+i])
	}
	for i := range n {
		li := l[i*n : i*n+i+1]
		for j := range i + 1 {
			lj := l[j*n : j*n+j+1]
			v := a[i*n+j] - dot(li[:j], lj[:j])
			if i == j {
				li[i] = math.Sqrt(math.Max(v, 1e-14*top))
			} else {
				li[j] = v / lj[j]
			}
		}
	}
	return l
}

// dot is the scalar product, four sums side by side.
func dot(a, b []float64) float64 {
	var s0, s1, s2, s3 float64
	b = b[:len(a)]
	k := 0
	for ; k+4 <= len(a); k += 4 {
		s0 += a[k] * b[k]
		s1 += a[k+1] * b[k+1]
		s2 += a[k+2] * b[k+2]
		s3 += a[k+3] * b[k+3]
	}
	for ; k < len(a); k++ {
		s0 += a[k] * b[k]
	}
	return (s0 + s1) + (s2 + s3)
}
