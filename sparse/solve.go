package sparse

// Solve replaces b (the caller's order) by the solution of the factored matrix times x = b.
func (f *Factor) Solve(b []float64) {
	x := make([]float64, f.sym.N)
	f.SolveWork(b, x)
}

// SolveWork is Solve with the caller's scratch vector of length N.
func (f *Factor) SolveWork(b, x []float64) {
	s := f.sym
	for k, c := range s.block {
		copy(x[s.off[k]:s.off[k+1]], b[s.offset[c]:s.offset[c+1]])
	}
	if s.all2 {
		f.solve2(x)
	} else {
		f.solveAny(x)
	}
	for k, c := range s.block {
		copy(b[s.offset[c]:s.offset[c+1]], x[s.off[k]:s.off[k+1]])
	}
}

func (f *Factor) solve2(x []float64) {
	s, l := f.sym, f.l
	n := len(s.dim)
	for i := range n {
		x0, x1 := x[2*i], x[2*i+1]
		if x0 == 0 && x1 == 0 {
			continue
		}
		first, end := s.lp[i], s.lp[i+1]
		vals := l[4*first : 4*end]
		for q, r := range s.li[first:end] {
			v := vals[4*q : 4*q+4 : 4*q+4]
			t := x[2*r : 2*r+2 : 2*r+2]
			t[0] -= v[0]*x0 + v[1]*x1
			t[1] -= v[2]*x0 + v[3]*x1
		}
	}
	for i := n - 1; i >= 0; i-- {
		d := f.dinv[4*i : 4*i+4 : 4*i+4]
		x0, x1 := d[0]*x[2*i]+d[1]*x[2*i+1], d[1]*x[2*i]+d[3]*x[2*i+1]
		first, end := s.lp[i], s.lp[i+1]
		vals := l[4*first : 4*end]
		for q, r := range s.li[first:end] {
			v := vals[4*q : 4*q+4 : 4*q+4]
			t := x[2*r : 2*r+2 : 2*r+2]
			x0 -= v[0]*t[0] + v[2]*t[1]
			x1 -= v[1]*t[0] + v[3]*t[1]
		}
		x[2*i], x[2*i+1] = x0, x1
	}
}

func (f *Factor) solveAny(x []float64) {
	s, l := f.sym, f.l
	n := len(s.dim)
	for i := range n {
		xi := x[s.off[i]:s.off[i+1]]
		for e := s.lp[i]; e < s.lp[i+1]; e++ {
			r := s.li[e]
			subtractProduct(x[s.off[r]:], l[s.lo[e]:], xi, int(s.dim[r]), len(xi), 1)
		}
	}
	var t [MaxDim]float64
	for i := n - 1; i >= 0; i-- {
		xi := x[s.off[i]:s.off[i+1]]
		d := len(xi)
		copy(t[:d], xi)
		for a := range d {
			sum := 0.0
			for b := range d {
				sum += f.dinv[int(s.ld[i])+a*d+b] * t[b]
			}
			xi[a] = sum
		}
		for e := s.lp[i]; e < s.lp[i+1]; e++ {
			r := s.li[e]
			xr := x[s.off[r]:s.off[r+1]]
			v := l[s.lo[e]:]
			for a := range d {
				for b := range xr {
					xi[a] -= v[b*d+a] * xr[b]
				}
			}
		}
	}
}
