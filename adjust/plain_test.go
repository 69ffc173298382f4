package adjust_test

import (
	"math"
	"testing"

	"brimline/adjust"
	"brimline/network"

	"gonum.org/v1/gonum/mat"
)

// plainModel is the linear model of a choice of parts at a place by full matrices, none of it taken
// from a solution: whitened derivatives a of all parts, misclosures y = (read − predicted)/sd, and the
// projector of the members.
type plainModel struct {
	a, c   *mat.Dense // parts × scalars; covariance of the scalars
	y, sd  []float64
	member []bool
	at     []int      // row among the members, −1 none
	p      *mat.Dense // I − A·C·Aᵀ of the members
	free   []int
}

// modelOf makes it; values are those of the network.
func modelOf(t *testing.T, n *network.Network, x network.State, base [2]int, member func(obs, part int) bool) *plainModel {
	t.Helper()
	d := &plainModel{}
	var rows [][]float64
	for i := range n.Obs {
		o := &n.Obs[i]
		v, j := make([]float64, len(o.SD)), make([]float64, len(o.SD)*o.Size)
		o.Kind.Predict(x, o, v, j)
		for k := range o.SD {
			sd := o.SD[k]
			if o.Long > 0 && o.Values[k] > v[k] {
				sd = math.Hypot(sd, o.Long)
			}
			row := make([]float64, len(x))
			at := 0
			for b, blk := range o.Blocks {
				for c := range n.Dim(blk) {
					row[o.At[b]+c] += j[k*o.Size+at] / sd
					at++
				}
			}
			d.member = append(d.member, member(i, len(d.sd)))
			rows, d.sd, d.y = append(rows, row), append(d.sd, sd), append(d.y, (o.Values[k]-v[k])/sd)
		}
	}
	for i := range x {
		if i != 2*base[0] && i != 2*base[0]+1 && i != 2*base[1]+1 {
			d.free = append(d.free, i)
		}
	}
	d.a = mat.NewDense(len(rows), len(d.free), nil)
	for r, row := range rows {
		for k, c := range d.free {
			d.a.Set(r, k, row[c])
		}
	}
	d.project(t)
	return d
}

func (d *plainModel) project(t *testing.T) {
	t.Helper()
	d.at = make([]int, len(d.sd))
	var own []int
	for p, in := range d.member {
		d.at[p] = -1
		if in {
			d.at[p] = len(own)
			own = append(own, p)
		}
	}
	am := mat.NewDense(len(own), len(d.free), nil)
	for r, p := range own {
		am.SetRow(r, d.a.RawRowView(p))
	}
	var qr mat.QR
	qr.Factorize(am)
	var rm, inv mat.Dense
	qr.RTo(&rm)
	if err := inv.Inverse(rm.Slice(0, len(d.free), 0, len(d.free))); err != nil {
		t.Fatal(err)
	}
	d.c, d.p = &mat.Dense{}, &mat.Dense{}
	d.c.Mul(&inv, inv.T())
	var ac mat.Dense
	ac.Mul(am, d.c)
	d.p.Mul(&ac, am.T())
	d.p.Scale(-1, d.p)
	for r := range own {
		d.p.Set(r, r, d.p.At(r, r)+1)
	}
}

// spread is the variance of a part's prediction by the members, in units of its own variance.
func (d *plainModel) spread(p int) float64 {
	row := d.a.RowView(p)
	var v mat.VecDense
	v.MulVec(d.c, row)
	return mat.Dot(row, &v)
}

// residuals is P times a whitened vector over all parts; 0 for parts that are no members.
func (d *plainModel) residuals(y []float64) []float64 {
	out := make([]float64, len(y))
	for p, r := range d.at {
		for q, c := range d.at {
			if r >= 0 && c >= 0 {
				out[p] += d.p.At(r, c) * y[q]
			}
		}
	}
	return out
}

// step is the move of all free scalars that one linear step of the members makes, by scalar of the
// state.
func (d *plainModel) step(y []float64, scalars int) []float64 {
	g := mat.NewVecDense(len(d.free), nil)
	for p, in := range d.member {
		if in {
			g.AddScaledVec(g, y[p], d.a.RowView(p))
		}
	}
	var v mat.VecDense
	v.MulVec(d.c, g)
	out := make([]float64, scalars)
	for k, c := range d.free {
		out[c] = v.AtVec(k)
	}
	return out
}

// taking says that a part takes part in a solution.
func taking(s *adjust.Solution) func(obs, part int) bool {
	return func(i, p int) bool { return s.In[i] && !s.Out[p] }
}
