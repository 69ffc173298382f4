package advise

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// probe is one test in numbers. The figure moves by grad·Δ(marks) − pull·(shift and turn of fit).
type probe struct {
	order, ask int
	marks      []int
	grad       []float64
	fit        int // −1: none
	pull       [3]float64
	open       float64
	tolerance  float64
	share      float64
	placed     bool
	variance   float64   // of the figure by the readings alone, a priori
	response   []float64 // covariance of all marks with the figure
}

// addProbes lists the tests of the orders and works out what each cause does to each.
func (g *ground) addProbes(orders []Order) {
	for o := range orders {
		wide := Widen(orders[o].For)
		for a := range orders[o].Asks {
			k := &orders[o].Asks[a]
			p := probe{order: o, ask: a, marks: k.Func.Marks, grad: k.Func.Grad, fit: -1, open: k.Open,
				tolerance: k.Tolerance * wide, share: orders[o].Share, placed: g.placed(k.Func.Marks) && g.placed(k.Fit)}
			if p.placed {
				g.answer(k, &p)
			}
			g.probes = append(g.probes, p)
		}
	}
	g.moves = make([]float64, len(g.causes)*len(g.probes))
	for c := range g.causes {
		g.moved(g.causes[c].shift, g.moves[c*len(g.probes):(c+1)*len(g.probes)])
	}
}

func (g *ground) placed(marks []int) bool {
	for _, m := range marks {
		if m < 0 || g.s.Rows == 0 || !g.s.Net.Placed(g.s.X, network.Unknown(m)) {
			return false
		}
	}
	return true
}

// answer works out the response and the variance of a figure.
func (g *ground) answer(k *Ask, p *probe) {
	p.response = make([]float64, g.n)
	g.times(k.Func.Marks, k.Func.Grad, 1, p.response)
	if len(k.Fit) > 0 {
		p.fit = g.fitOn(k.Fit)
		f := g.fits[p.fit]
		for i, m := range k.Func.Marks {
			d := f.pull(g.s.X.Point(m), plane.Point{X: k.Func.Grad[2*i], Y: k.Func.Grad[2*i+1]})
			for j := range d {
				p.pull[j] += d[j]
			}
		}
		for j, c := range p.pull {
			for i, z := range f.z[j] {
				p.response[i] -= c * z
			}
		}
	}
	p.variance = math.Max(g.of(p, p.response), 0)
}

// fitOn finds or makes the rigid fit on marks.
func (g *ground) fitOn(marks []int) int {
	for i, f := range g.fits {
		if same(f.marks, marks) {
			return i
		}
	}
	f := newFit(g.s.X, marks)
	for k := range f.z {
		f.z[k] = make([]float64, g.n)
		g.times(marks, f.row[k], 1, f.z[k])
	}
	g.fits = append(g.fits, f)
	return len(g.fits) - 1
}

func same(a, b []int) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// times adds f·C·gradᵀ to out.
func (g *ground) times(marks []int, grad []float64, f float64, out []float64) {
	for k, m := range marks {
		for c := range 2 {
			w := f * grad[2*k+c]
			if w == 0 {
				continue
			}
			for i, v := range g.cov[(2*m+c)*g.n : (2*m+c+1)*g.n] {
				out[i] += w * v
			}
		}
	}
}

// of is what moves of all marks do to the figure.
func (g *ground) of(p *probe, move []float64) float64 {
	sum := 0.0
	for k, m := range p.marks {
		sum += p.grad[2*k]*move[2*m] + p.grad[2*k+1]*move[2*m+1]
	}
	if p.fit >= 0 {
		for k, t := range g.fits[p.fit].of(move) {
			sum -= p.pull[k] * t
		}
	}
	return sum
}

// moved is of for all figures; the fits are made once.
func (g *ground) moved(move, out []float64) {
	turn := make([][3]float64, len(g.fits))
	for i, f := range g.fits {
		turn[i] = f.of(move)
	}
	for t := range g.probes {
		p := &g.probes[t]
		if !p.placed {
			continue
		}
		sum := 0.0
		for k, m := range p.marks {
			sum += p.grad[2*k]*move[2*m] + p.grad[2*k+1]*move[2*m+1]
		}
		if p.fit >= 0 {
			for k, v := range turn[p.fit] {
				sum -= p.pull[k] * v
			}
		}
		out[t] = sum
	}
}

// u95 is 1.96 standard deviations of a figure with variance v of the readings: factor widens what
// the readings give, not what stays open about the edge.
func (p *probe) u95(v, factor float64) float64 {
	if !p.placed {
		return math.Inf(1)
	}
	return two95 * math.Sqrt(math.Max(v, 0)*factor*factor+p.open*p.open)
}
