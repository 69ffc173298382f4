package adjust_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/network"
)

// spaces are residual spaces at several places and of several choices of parts, each with the same
// by full matrices: at the solution, some centimetres beside it, with parts left out, and with
// other values.
func spaces(t *testing.T, visit func(s *adjust.Solution, sp *adjust.Space, d *plainModel)) {
	t.Helper()
	for seed := range uint64(6) {
		m := pool(60+seed, 7, 1, seed%2 == 0)
		s := m.solve(t)
		x := append(network.State(nil), s.X...)
		r := rand.New(rand.NewPCG(seed, 4))
		if seed >= 2 {
			for i := range x {
				if i != 0 && i != 1 && i != 3 {
					x[i] += 0.04*r.Float64() - 0.02
				}
			}
		}
		drop := map[int]bool{}
		for p := range s.W {
			if seed >= 4 && s.Redund[p] > 0.3 && len(drop) < 3 {
				drop[p] = true
			}
		}
		member := func(i, p int) bool { return s.In[i] && !drop[p] }
		c, n := adjust.Change{}, *s.Net
		if seed%3 == 1 { // the network as the change makes it, written anew
			c = adjust.Change{Parts: []int{s.First[3], s.First[6]}, Values: []float64{s.Net.Obs[3].Values[0] + 0.1, s.Net.Obs[6].Values[0] - 0.3}}
			n.Obs = append([]network.Obs(nil), n.Obs...)
			for k, i := range []int{3, 6} {
				n.Obs[i].Values = append([]float64(nil), n.Obs[i].Values...)
				n.Obs[i].Values[0] = c.Values[k]
			}
		}
		visit(s, s.Space(x, c, member), modelOf(t, &n, x, s.Base, member))
	}
}

// Residuals, redundancies, tests and estimates of members and of parts left out.
func TestSpaceAgainstMatrices(t *testing.T) {
	left := 0
	spaces(t, func(s *adjust.Solution, sp *adjust.Space, d *plainModel) {
		u := d.residuals(d.y)
		step := d.step(d.y, len(s.X))
		cost := 0.0
		for p, in := range d.member {
			near(t, "y", sp.Y[p], d.y[p], 1e-9)
			e, sd := sp.Estimate(p)
			if !in { // misfit with the place one step on, and the variance of both together
				left++
				misfit := d.y[p]
				for k, c := range d.free {
					misfit -= d.a.At(p, k) * step[c]
				}
				q := 1 + d.spread(p)
				near(t, "misfit", sp.U[p], misfit, 1e-6)
				near(t, "redundancy put back", sp.R[p], 1/q, 1e-8)
				near(t, "w put back", sp.W(p), misfit/math.Sqrt(q), 1e-6)
				near(t, "error put back", e, misfit*d.sd[p], 1e-8)
				near(t, "its sd", sd, d.sd[p]*math.Sqrt(q), 1e-8)
				continue
			}
			r := d.p.At(d.at[p], d.at[p])
			cost += u[p] * u[p]
			near(t, "residual", sp.U[p], u[p], 1e-6)
			near(t, "redundancy", sp.R[p], r, 1e-8)
			if r > 0.02 {
				near(t, "w", sp.W(p), u[p]/math.Sqrt(r), 1e-5)
				near(t, "error", e, u[p]/r*d.sd[p], 1e-6)
				near(t, "its sd", sd, d.sd[p]/math.Sqrt(r), 1e-6*sd)
			}
		}
		near(t, "sum of squares", sp.Cost, cost, 1e-6*(1+cost))
	})
	if left < 6 {
		t.Errorf("only %d parts were left out", left)
	}
}

// What a pattern of errors in several parts does: R·c, its columns, and both terms of the
// likelihood ratio; the ratio itself by the sums of squares with and without the errors.
func TestSpacePatterns(t *testing.T) {
	spaces(t, func(s *adjust.Solution, sp *adjust.Space, d *plainModel) {
		r := rand.New(rand.NewPCG(uint64(s.Rows), 9))
		for _, count := range []int{1, 2, 5} {
			q := adjust.Pattern{}
			var whitened []float64
			c := make([]float64, len(d.y))
			for _, p := range r.Perm(len(d.y))[:count] {
				size := 0.2*r.Float64() - 0.1
				q.Parts, q.Size = append(q.Parts, p), append(q.Size, size)
				whitened = append(whitened, size/d.sd[p])
				if d.member[p] {
					c[p] = size / d.sd[p]
				}
			}
			rc, ry := d.residuals(c), d.residuals(d.y)
			for p, v := range sp.Apply(q.Parts, whitened) {
				near(t, "R·c", v, rc[p], 1e-6)
			}
			lin, quad, with, without := 0.0, 0.0, 0.0, 0.0
			for p := range c {
				lin, quad = lin+c[p]*ry[p], quad+c[p]*rc[p]
				without += ry[p] * ry[p]
				with += (ry[p] - rc[p]) * (ry[p] - rc[p]) // the errors taken away
			}
			l, v := sp.Effect(q)
			near(t, "linear term", l, lin, 1e-6*(1+math.Abs(lin)))
			near(t, "quadratic term", v, quad, 1e-6*(1+quad))
			near(t, "likelihood ratio", l-v/2, (without-with)/2, 1e-6*(1+without))
		}
		for p, in := range d.member {
			if !in {
				continue
			}
			for o, v := range sp.Column(p) {
				want := 0.0
				if d.member[o] {
					want = d.p.At(d.at[o], d.at[p])
				}
				near(t, "column", v, want, 1e-7)
			}
			break
		}
	})
}
