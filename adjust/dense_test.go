package adjust_test

import (
	"math"
	"testing"

	"brimline/adjust"
	"brimline/network"

	"gonum.org/v1/gonum/mat"
)

// dense is the same linear problem at the solution, by full matrices.
type dense struct {
	s    *adjust.Solution
	a    *mat.Dense // whitened rows × all scalars
	free []int      // scalars that the inner datum does not hold
	c    *mat.Dense // covariance of all scalars in the inner datum
	sd   []float64  // by row
	part []int      // place of each row in the per-part slices
}

func denseOf(t *testing.T, s *adjust.Solution) *dense {
	t.Helper()
	d := &dense{s: s, a: mat.NewDense(s.Rows, len(s.X), nil)}
	for i := range s.Net.Obs {
		o := &s.Net.Obs[i]
		if !s.In[i] {
			continue
		}
		v, j := make([]float64, len(o.SD)), make([]float64, len(o.SD)*o.Size)
		o.Kind.Predict(s.X, o, v, j)
		for k, sd := range o.SD {
			at := 0
			for b, blk := range o.Blocks {
				for c := range s.Net.Dim(blk) {
					d.a.Set(len(d.sd), o.At[b]+c, j[k*o.Size+at]/sd)
					at++
				}
			}
			d.sd, d.part = append(d.sd, sd), append(d.part, s.First[i]+k)
		}
	}
	a, b := s.Base[0], s.Base[1]
	for i := range s.X {
		if i != 2*a && i != 2*a+1 && i != 2*b+1 {
			d.free = append(d.free, i)
		}
	}
	d.invert(t)
	return d
}

func (d *dense) invert(t *testing.T) {
	t.Helper()
	n := len(d.free)
	red := mat.NewDense(len(d.sd), n, nil)
	for r := range d.sd {
		for k, c := range d.free {
			red.Set(r, k, d.a.At(r, c))
		}
	}
	var qr mat.QR // from the rows, not from the normal matrix
	qr.Factorize(red)
	var rm, inv, cov mat.Dense
	qr.RTo(&rm)
	if err := inv.Inverse(rm.Slice(0, n, 0, n)); err != nil {
		t.Fatal(err)
	}
	cov.Mul(&inv, inv.T())
	d.c = mat.NewDense(len(d.s.X), len(d.s.X), nil)
	for i, p := range d.free {
		for j, q := range d.free {
			d.c.Set(p, q, cov.At(i, j))
		}
	}
}

// moves are the moves of all scalars by an error of e metres in a row, in the datum of c.
func (d *dense) moves(c *mat.Dense, row int, e float64) []float64 {
	var v mat.VecDense
	v.MulVec(c, d.a.RowView(row))
	v.ScaleVec(e/d.sd[row], &v)
	return v.RawVector().Data
}

// datum is the S-transformation I − G·(BᵀG)⁻¹·Bᵀ (Baarda 1973): G spans shifts and turn of all
// scalars, B of the condition marks only.
func (d *dense) datum(t *testing.T, b *mat.Dense) *mat.Dense {
	t.Helper()
	g := d.gauge()
	var bg, inv, gi, s mat.Dense
	bg.Mul(b.T(), g)
	if err := inv.Inverse(&bg); err != nil {
		t.Fatal(err)
	}
	gi.Mul(g, &inv)
	s.Mul(&gi, b.T())
	out := mat.NewDense(len(d.s.X), len(d.s.X), nil)
	for i := range d.s.X {
		out.Set(i, i, 1)
	}
	out.Sub(out, &s)
	var sc, scs mat.Dense
	sc.Mul(out, d.c)
	scs.Mul(&sc, out.T())
	return &scs
}

// gauge holds the derivatives of all scalars by shift x, shift y and turn about the origin.
func (d *dense) gauge() *mat.Dense {
	n := d.s.Net
	g := mat.NewDense(len(d.s.X), 3, nil)
	for b := range len(n.Offset) - 1 {
		at := n.Offset[b]
		g.Set(at, 0, 1)
		g.Set(at+1, 1, 1)
		g.Set(at, 2, -d.s.X[at+1])
		g.Set(at+1, 2, d.s.X[at])
		if n.Dim(network.Unknown(b)) > 2 {
			g.Set(at+2, 2, 1)
		}
	}
	return g
}

// largest is the greatest absolute entry.
func largest(m mat.Matrix) float64 {
	r, c := m.Dims()
	out := 0.0
	for i := range r {
		for j := range c {
			out = math.Max(out, math.Abs(m.At(i, j)))
		}
	}
	return out
}
