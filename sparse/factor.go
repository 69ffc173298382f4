package sparse

import "math"

// Factor is L·D·Lᵀ of a matrix, D in blocks. Only the inverse of D is kept.
type Factor struct {
	sym  *Symbolic
	l    []float64
	dinv []float64
	y    []float64 // work: one block a block row, stride MaxDim²-sized by the largest block

	// Negative counts the negative pivots: 0 says the matrix is positive definite.
	Negative int
	// Weak lists the caller's blocks whose pivot fell below tiny times their own diagonal.
	Weak []int
	// Lost counts the pivots that did so.
	Lost int
}

// NewFactor makes room for factorisations on one pattern.
func (s *Symbolic) NewFactor() *Factor {
	return &Factor{sym: s, l: make([]float64, s.ln), dinv: make([]float64, s.dn), y: make([]float64, len(s.dim)*int(s.most*s.most))}
}

// Compute factors m. A pivot smaller than tiny times its own diagonal entry of m is replaced by
// that entry and its block listed in Weak, so that the factor always exists. Its own: a block may
// hold one scalar by a weight that says nothing of the other.
func (f *Factor) Compute(m *Matrix, tiny float64) {
	f.Negative, f.Weak, f.Lost = 0, nil, 0
	if f.sym.all2 {
		f.compute2(m.Values, tiny)
		return
	}
	f.computeAny(m.Values, tiny)
}

// compute2 is the common case: all blocks 2 × 2.
func (f *Factor) compute2(a []float64, tiny float64) {
	s, y, l := f.sym, f.y, f.l
	for k := range s.dim {
		for p := s.ap[k]; p < s.ap[k+1]; p++ {
			copy(y[4*s.ai[p]:4*s.ai[p]+4], a[s.ao[p]:s.ao[p]+4])
		}
		d := a[s.ad[k] : s.ad[k]+4 : s.ad[k]+4]
		d00, d10, d11 := d[0], d[2], d[3]
		s0, s1 := math.Abs(d00), math.Abs(d11)
		for q := s.rp[k]; q < s.rp[k+1]; q++ {
			i, e := s.rc[q], s.re[q]
			yi := y[4*i : 4*i+4 : 4*i+4]
			y00, y01, y10, y11 := yi[0], yi[1], yi[2], yi[3]
			yi[0], yi[1], yi[2], yi[3] = 0, 0, 0, 0
			first := s.lp[i]
			rows := s.li[first:e]
			vals := l[4*first : 4*e]
			for n, r := range rows {
				v := vals[4*n : 4*n+4 : 4*n+4]
				t := y[4*r : 4*r+4 : 4*r+4]
				t[0] -= v[0]*y00 + v[1]*y10
				t[1] -= v[0]*y01 + v[1]*y11
				t[2] -= v[2]*y00 + v[3]*y10
				t[3] -= v[2]*y01 + v[3]*y11
			}
			di := f.dinv[4*i : 4*i+4 : 4*i+4]
			l00, l01 := y00*di[0]+y10*di[1], y00*di[1]+y10*di[3]
			l10, l11 := y01*di[0]+y11*di[1], y01*di[1]+y11*di[3]
			le := l[4*e : 4*e+4 : 4*e+4]
			le[0], le[1], le[2], le[3] = l00, l01, l10, l11
			d00 -= l00*y00 + l01*y10
			d10 -= l10*y00 + l11*y10
			d11 -= l10*y01 + l11*y11
		}
		f.invert2(k, d00, d10, d11, s0, s1, tiny)
	}
}

func (f *Factor) invert2(k int, d00, d10, d11, s0, s1, tiny float64) {
	weak := false
	if !(math.Abs(d00) > tiny*s0) {
		d00, weak = scaleOr1(s0), true
		f.Lost++
	}
	h := d10 / d00
	p := d11 - h*d10
	if !(math.Abs(p) > tiny*s1) {
		p, weak = scaleOr1(s1), true
		f.Lost++
	}
	if d00 < 0 {
		f.Negative++
	}
	if p < 0 {
		f.Negative++
	}
	if weak {
		f.Weak = append(f.Weak, int(f.sym.block[k]))
	}
	ip := 1 / p
	o := f.dinv[4*k : 4*k+4]
	o[0] = 1/d00 + h*h*ip
	o[1] = -h * ip
	o[2] = o[1]
	o[3] = ip
}

func scaleOr1(s float64) float64 {
	if s > 0 {
		return s
	}
	return 1
}

func (f *Factor) computeAny(a []float64, tiny float64) {
	s, y, l := f.sym, f.y, f.l
	step := int(s.most * s.most)
	var d [MaxDim * MaxDim]float64
	for k := range s.dim {
		dk := int(s.dim[k])
		for p := s.ap[k]; p < s.ap[k+1]; p++ {
			n := int(s.dim[s.ai[p]]) * dk
			copy(y[step*int(s.ai[p]):], a[s.ao[p]:int(s.ao[p])+n])
		}
		copy(d[:dk*dk], a[s.ad[k]:])
		var scale [MaxDim]float64
		for c := range dk {
			scale[c] = math.Abs(d[c*dk+c])
		}
		for q := s.rp[k]; q < s.rp[k+1]; q++ {
			i, e := s.rc[q], s.re[q]
			di := int(s.dim[i])
			yi := y[step*int(i) : step*int(i)+di*dk]
			for g := s.lp[i]; g < e; g++ {
				r := s.li[g]
				subtractProduct(y[step*int(r):], l[s.lo[g]:], yi, int(s.dim[r]), di, dk)
			}
			le := l[s.lo[e] : int(s.lo[e])+dk*di]
			timesSymmetric(le, yi, f.dinv[s.ld[i]:], dk, di)
			subtractProduct(d[:], le, yi, dk, di, dk)
			clear(yi)
		}
		f.invertAny(k, d[:dk*dk], dk, scale[:dk], tiny)
	}
}

// subtractProduct: t (m×n) -= v (m×c) · u (c×n), row-major.
func subtractProduct(t, v, u []float64, m, c, n int) {
	for a := range m {
		for b := range n {
			sum := 0.0
			for k := range c {
				sum += v[a*c+k] * u[k*n+b]
			}
			t[a*n+b] -= sum
		}
	}
}

// timesSymmetric: t (m×c) = uᵀ (u is c×m) · w (c×c, symmetric).
func timesSymmetric(t, u, w []float64, m, c int) {
	for a := range m {
		for b := range c {
			sum := 0.0
			for k := range c {
				sum += u[k*m+a] * w[k*c+b]
			}
			t[a*c+b] = sum
		}
	}
}

// invertAny inverts a small symmetric diagonal block by LDLᵀ.
func (f *Factor) invertAny(k int, d []float64, n int, scale []float64, tiny float64) {
	var l [MaxDim * MaxDim]float64
	var p [MaxDim]float64
	weak := false
	for j := range n {
		v := d[j*n+j]
		for c := range j {
			v -= l[j*n+c] * l[j*n+c] * p[c]
		}
		if !(math.Abs(v) > tiny*scale[j]) {
			v, weak = scaleOr1(scale[j]), true
			f.Lost++
		}
		if v < 0 {
			f.Negative++
		}
		p[j] = v
		l[j*n+j] = 1
		for i := j + 1; i < n; i++ {
			u := d[i*n+j]
			for c := range j {
				u -= l[i*n+c] * l[j*n+c] * p[c]
			}
			l[i*n+j] = u / v
		}
	}
	if weak {
		f.Weak = append(f.Weak, int(f.sym.block[k]))
	}
	out := f.dinv[f.sym.ld[k] : int(f.sym.ld[k])+n*n]
	for c := range n {
		var x [MaxDim]float64
		x[c] = 1
		for i := c; i < n; i++ {
			for j := c; j < i; j++ {
				x[i] -= l[i*n+j] * x[j]
			}
		}
		for i := range n {
			x[i] /= p[i]
		}
		for i := n - 1; i >= 0; i-- {
			for j := i + 1; j < n; j++ {
				x[i] -= l[j*n+i] * x[j]
			}
		}
		for i := range n {
			out[i*n+c] = x[i]
		}
	}
}
