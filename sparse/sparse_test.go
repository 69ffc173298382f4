package sparse_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/sparse"

	"gonum.org/v1/gonum/mat"
)

// system is a random symmetric matrix on a random pattern of cliques, dense beside sparse.
type system struct {
	dims     []int
	ptr, idx []int32
	off      []int
	dense    *mat.SymDense
	sym      *sparse.Symbolic
	m        *sparse.Matrix
}

func random(r *rand.Rand, n int, dim func(i int) int, cliques int, indefinite bool) *system {
	s := &system{dims: make([]int, n), off: make([]int, n+1), ptr: []int32{0}}
	for i := range n {
		s.dims[i] = dim(i)
		s.off[i+1] = s.off[i] + s.dims[i]
	}
	add := func(m ...int32) { s.idx = append(s.idx, m...); s.ptr = append(s.ptr, int32(len(s.idx))) }
	for i := 1; i < n; i++ {
		add(int32(i), int32(r.IntN(i)))
	}
	for range cliques {
		a, b, c := r.IntN(n), r.IntN(n), r.IntN(n)
		if a != b && b != c && a != c {
			add(int32(a), int32(b), int32(c))
		}
	}
	s.sym = sparse.Analyze(s.dims, s.ptr, s.idx)
	s.m = s.sym.NewMatrix()
	s.dense = mat.NewSymDense(s.off[n], nil)
	for c := 0; c+1 < len(s.ptr); c++ {
		m := s.idx[s.ptr[c]:s.ptr[c+1]]
		var at []int
		var slots []sparse.Slot
		for _, b := range m {
			for k := range s.dims[b] {
				at = append(at, s.off[b]+k)
			}
		}
		j := make([]float64, len(at))
		for k := range j {
			j[k] = r.NormFloat64()
		}
		s.addOuter(m, at, j, slots)
	}
	for i := range n {
		slot := s.sym.Slot(i, i)
		for k := range s.dims[i] {
			v := 0.5 + r.Float64()
			if indefinite && r.IntN(4) == 0 {
				v = -20
			}
			s.m.Values[slot.Base+int32(k)*(slot.RowStep+slot.ColStep)] += v
			s.dense.SetSym(s.off[i]+k, s.off[i]+k, s.dense.At(s.off[i]+k, s.off[i]+k)+v)
		}
	}
	return s
}

// addOuter adds j·jᵀ of one clique to both matrices.
func (s *system) addOuter(m []int32, at []int, j []float64, _ []sparse.Slot) {
	pa := 0
	for x, a := range m {
		pb := 0
		for y, b := range m {
			if y >= x {
				slot := s.sym.Slot(int(a), int(b))
				for u := range s.dims[a] {
					for v := range s.dims[b] {
						s.m.Values[slot.Base+int32(u)*slot.RowStep+int32(v)*slot.ColStep] += j[pa+u] * j[pb+v]
					}
				}
			}
			pb += s.dims[b]
		}
		pa += s.dims[a]
	}
	for u := range at {
		for v := u; v < len(at); v++ {
			s.dense.SetSym(at[u], at[v], s.dense.At(at[u], at[v])+j[u]*j[v])
		}
	}
}

func dimsOf(kind string, r *rand.Rand) func(int) int {
	if kind == "pairs" {
		return func(int) int { return 2 }
	}
	return func(int) int { return r.IntN(5) }
}

// The dense inverse of gonum is the second method for solution and selected inverse.
func TestSolveAndInverseAgainstDense(t *testing.T) {
	for _, kind := range []string{"pairs", "mixed"} {
		for seed := range uint64(60) {
			r := rand.New(rand.NewPCG(seed, 1))
			n := 2 + r.IntN(60)
			s := random(r, n, dimsOf(kind, r), r.IntN(n), false)
			f := s.sym.NewFactor()
			f.Compute(s.m, 1e-13)
			if f.Negative != 0 || len(f.Weak) != 0 {
				t.Fatalf("%s seed %d: a positive definite matrix came out with %d negative, %v weak pivots", kind, seed, f.Negative, f.Weak)
			}
			if s.off[n] == 0 {
				continue
			}
			var inv mat.Dense
			if err := inv.Inverse(s.dense); err != nil {
				t.Fatal(err)
			}
			b := make([]float64, s.off[n])
			for i := range b {
				b[i] = r.NormFloat64()
			}
			var want mat.VecDense
			want.MulVec(&inv, mat.NewVecDense(len(b), append([]float64(nil), b...)))
			f.Solve(b)
			for i := range b {
				if math.Abs(b[i]-want.AtVec(i)) > 1e-9 {
					t.Fatalf("%s seed %d: x[%d] = %g, dense says %g", kind, seed, i, b[i], want.AtVec(i))
				}
			}
			checkInverse(t, s, f.SelectedInverse(), &inv)
		}
	}
}

func checkInverse(t *testing.T, s *system, z *sparse.Inverse, inv *mat.Dense) {
	t.Helper()
	out := make([]float64, 64)
	for c := 0; c+1 < len(s.ptr); c++ {
		m := s.idx[s.ptr[c]:s.ptr[c+1]]
		for _, a := range m {
			for _, b := range m {
				if !z.Block(int(a), int(b), out) {
					t.Fatalf("block %d,%d of a clique was not selected", a, b)
				}
				for u := range s.dims[a] {
					for v := range s.dims[b] {
						got, want := out[u*s.dims[b]+v], inv.At(s.off[a]+u, s.off[b]+v)
						if math.Abs(got-want) > 1e-9 {
							t.Fatalf("inverse block %d,%d [%d,%d] = %g, dense says %g", a, b, u, v, got, want)
						}
					}
				}
			}
		}
	}
}

func TestNegativePivotsAreCounted(t *testing.T) {
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 2))
		s := random(r, 3+r.IntN(20), dimsOf("mixed", r), 5, true)
		f := s.sym.NewFactor()
		f.Compute(s.m, 1e-13)
		var eig mat.EigenSym
		if s.sym.N == 0 || !eig.Factorize(s.dense, false) {
			continue
		}
		want := 0
		for _, v := range eig.Values(nil) {
			if v < 0 {
				want++
			}
		}
		if f.Negative != want { // Sylvester's law of inertia
			t.Fatalf("seed %d: %d negative pivots, %d negative eigenvalues", seed, f.Negative, want)
		}
	}
}

func TestWeakBlockIsNamed(t *testing.T) {
	s := sparse.Analyze([]int{2, 2, 2}, []int32{0, 2, 4}, []int32{0, 1, 1, 2})
	m := s.NewMatrix()
	for i := range 3 {
		d := s.Slot(i, i)
		m.Values[d.Base] = 1
		m.Values[d.Base+3] = 1
	}
	d := s.Slot(1, 1)
	m.Values[d.Base+3] = 0
	f := s.NewFactor()
	f.Compute(m, 1e-12)
	if len(f.Weak) != 1 || f.Weak[0] != 1 {
		t.Fatalf("weak blocks %v, want [1]", f.Weak)
	}
}

// An order is a permutation, and on a grid it beats the natural order by far.
func TestOrderKeepsFactorSparse(t *testing.T) {
	const w = 40
	var ptr, idx []int32
	ptr = append(ptr, 0)
	edge := func(a, b int) { idx = append(idx, int32(a), int32(b)); ptr = append(ptr, int32(len(idx))) }
	for y := range w {
		for x := range w {
			if x+1 < w {
				edge(y*w+x, y*w+x+1)
			}
			if y+1 < w {
				edge(y*w+x, (y+1)*w+x)
			}
		}
	}
	order := sparse.Order(w*w, ptr, idx)
	seen := make([]bool, w*w)
	for _, i := range order {
		if seen[i] {
			t.Fatalf("node %d eliminated twice", i)
		}
		seen[i] = true
	}
	if len(order) != w*w {
		t.Fatalf("%d of %d nodes ordered", len(order), w*w)
	}
	dims := make([]int, w*w)
	for i := range dims {
		dims[i] = 1
	}
	got := sparse.Analyze(dims, ptr, idx).Entries()
	if natural := w * w * w; got > natural/2 {
		t.Fatalf("factor has %d entries, natural order has about %d", got, natural)
	}
}

func TestHubsAreSetAside(t *testing.T) { // a chain with two nodes joined to everything
	const n = 5000
	var ptr, idx []int32
	ptr = append(ptr, 0)
	for i := 0; i+1 < n; i++ {
		idx = append(idx, int32(i), int32(i+1), n, n+1)
		ptr = append(ptr, int32(len(idx)))
	}
	dims := make([]int, n+2)
	for i := range dims {
		dims[i] = 2
	}
	s := sparse.Analyze(dims, ptr, idx)
	if s.Entries() > 40*n {
		t.Fatalf("factor of a chain with two hubs has %d entries for %d nodes", s.Entries(), n)
	}
}
