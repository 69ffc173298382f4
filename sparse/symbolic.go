// Package sparse factors symmetric matrices made of small dense blocks as L·D·Lᵀ, solves with
// the factor, and computes the selected inverse: the blocks of the inverse that stand where L
// has blocks. It knows nothing of what the unknowns mean.
//
// A matrix has n block unknowns of 0 to MaxDim scalars each. Its pattern is the union of
// cliques: block unknowns that appear together in one equation. Everything is stored in
// elimination order; callers speak in their own block numbers.
//
// Method: up-looking LDLᵀ in blocks (T. Davis, Direct Methods for Sparse Linear Systems, 2006,
// chapter 4) and the recurrence for entries of the inverse (K. Takahashi, J. Fagan, M. Chin,
// "Formation of a sparse bus impedance matrix", 1973).
package sparse

import "sort"

// MaxDim is the largest block.
const MaxDim = 8

// Symbolic is the pattern of a matrix and of its factor; it serves any number of factorisations.
type Symbolic struct {
	N      int     // scalars
	pos    []int32 // caller's block -> place in the elimination order
	block  []int32 // place -> caller's block
	dim    []int32 // by place
	off    []int32 // by place: first scalar, in elimination order
	offset []int32 // caller's block -> first scalar in the caller's vector

	ap, ai, ao []int32 // upper block columns of the matrix: rows i < k and value offsets
	ad         []int32 // value offset of diagonal blocks
	an         int

	parent     []int32
	lp, li, lo []int32 // block columns of L below the diagonal: rows and value offsets (dim(row) × dim(col))
	ld         []int32 // offsets of the diagonal blocks
	ln, dn     int
	rp, re, rc []int32 // block rows of L: entry number and column, columns ascending
	all2       bool    // every block has two scalars or none
	most       int32
}

// Analyze orders the blocks and finds the pattern of the factor. dims are the sizes of the
// caller's blocks; clique c holds blocks idx[ptr[c]:ptr[c+1]].
func Analyze(dims []int, ptr, idx []int32) *Symbolic {
	n := len(dims)
	s := &Symbolic{block: Order(n, ptr, idx), pos: make([]int32, n), dim: make([]int32, n), off: make([]int32, n+1), offset: make([]int32, n+1)}
	for i, d := range dims {
		s.offset[i+1] = s.offset[i] + int32(d)
	}
	s.all2 = true
	for k, b := range s.block {
		s.pos[b] = int32(k)
		s.dim[k] = int32(dims[b])
		s.off[k+1] = s.off[k] + s.dim[k]
		s.most = max(s.most, s.dim[k])
		if s.dim[k] != 2 {
			s.all2 = false
		}
	}
	s.N = int(s.off[n])
	s.upper(n, ptr, idx)
	s.factorPattern(n)
	return s
}

// upper collects the block columns of the upper triangle from the cliques.
func (s *Symbolic) upper(n int, ptr, idx []int32) {
	count := make([]int32, n+1)
	each := func(visit func(i, k int32)) {
		for c := 0; c+1 < len(ptr); c++ {
			m := idx[ptr[c]:ptr[c+1]]
			for a, u := range m {
				for _, v := range m[a+1:] {
					i, k := s.pos[u], s.pos[v]
					if i > k {
						i, k = k, i
					}
					if i < k {
						visit(i, k)
					}
				}
			}
		}
	}
	each(func(_, k int32) { count[k+1]++ })
	for k := range n {
		count[k+1] += count[k]
	}
	rows := make([]int32, count[n])
	fill := append([]int32(nil), count[:n]...)
	each(func(i, k int32) { rows[fill[k]] = i; fill[k]++ })
	s.ap = make([]int32, n+1)
	s.ad = make([]int32, n)
	mark := make([]int32, n)
	at := int32(0)
	for k := range n {
		s.ap[k] = int32(len(s.ai))
		col := rows[count[k]:count[k+1]]
		start := len(s.ai)
		for _, i := range col {
			if mark[i] != int32(k)+1 {
				mark[i] = int32(k) + 1
				s.ai = append(s.ai, i)
			}
		}
		part := s.ai[start:]
		sortInt32(part)
		for _, i := range part {
			s.ao = append(s.ao, at)
			at += s.dim[i] * s.dim[k]
		}
		s.ad[k] = at
		at += s.dim[k] * s.dim[k]
	}
	s.ap[n] = int32(len(s.ai))
	s.an = int(at)
}

func sortInt32(a []int32) {
	if len(a) < 12 {
		for i := 1; i < len(a); i++ {
			for j := i; j > 0 && a[j-1] > a[j]; j-- {
				a[j-1], a[j] = a[j], a[j-1]
			}
		}
		return
	}
	sort.Slice(a, func(i, j int) bool { return a[i] < a[j] })
}

// factorPattern finds the elimination tree and the block rows and columns of L.
func (s *Symbolic) factorPattern(n int) {
	s.parent = make([]int32, n)
	mark := make([]int32, n)
	count := make([]int32, n)
	for i := range n {
		s.parent[i], mark[i] = -1, -1
	}
	walk := func(k int, visit func(i int32)) {
		mark[k] = int32(k)
		for _, i := range s.ai[s.ap[k]:s.ap[k+1]] {
			for ; mark[i] != int32(k); i = s.parent[i] {
				if s.parent[i] < 0 {
					s.parent[i] = int32(k)
				}
				mark[i] = int32(k)
				visit(i)
			}
		}
	}
	for k := range n {
		walk(k, func(i int32) { count[i]++ })
	}
	s.lp = make([]int32, n+1)
	for i := range n {
		s.lp[i+1] = s.lp[i] + count[i]
		mark[i] = -1
	}
	total := s.lp[n]
	s.li, s.lo = make([]int32, total), make([]int32, total)
	s.re, s.rc, s.rp = make([]int32, total), make([]int32, total), make([]int32, n+1)
	fill := append([]int32(nil), s.lp[:n]...)
	for k := range n {
		c := int32(0)
		walk(k, func(i int32) { s.li[fill[i]] = int32(k); fill[i]++; c++ })
		s.rp[k+1] = s.rp[k] + c
	}
	copy(fill, s.rp[:n])
	s.ld = make([]int32, n)
	var at, dat int32
	for i := range n {
		s.ld[i] = dat
		dat += s.dim[i] * s.dim[i]
		for e := s.lp[i]; e < s.lp[i+1]; e++ {
			k := s.li[e]
			s.lo[e] = at
			at += s.dim[i] * s.dim[k]
			s.re[fill[k]], s.rc[fill[k]] = e, int32(i)
			fill[k]++
		}
	}
	s.ln, s.dn = int(at), int(dat)
}

// Entries is the number of scalars stored in the factor.
func (s *Symbolic) Entries() int { return s.ln + s.dn }

// Slot is the place of one block in a Matrix: entry (a, b) of the block, a in the caller's first
// block and b in its second, is Values[Base + a·RowStep + b·ColStep].
type Slot struct{ Base, RowStep, ColStep int32 }

// Slot finds the block (i, j) of the matrix; the pair must be in a clique or i == j. Of a
// diagonal block both triangles are stored.
func (s *Symbolic) Slot(i, j int) Slot {
	a, b := s.pos[i], s.pos[j]
	if a == b {
		return Slot{s.ad[a], s.dim[a], 1}
	}
	if a < b {
		return Slot{s.ao[s.find(a, b)], s.dim[b], 1}
	}
	return Slot{s.ao[s.find(b, a)], 1, s.dim[a]}
}

func (s *Symbolic) find(i, k int32) int32 {
	lo, hi := s.ap[k], s.ap[k+1]
	for lo < hi {
		m := (lo + hi) / 2
		if s.ai[m] < i {
			lo = m + 1
		} else {
			hi = m
		}
	}
	return lo
}

// Matrix holds values on the pattern.
type Matrix struct {
	Sym    *Symbolic
	Values []float64
}

// NewMatrix is a zero matrix.
func (s *Symbolic) NewMatrix() *Matrix { return &Matrix{Sym: s, Values: make([]float64, s.an)} }

// Clear sets all values to zero.
func (m *Matrix) Clear() { clear(m.Values) }
