package outline

import (
	"math"
	"slices"
)

// prices are what parts of a description cost, in the unit of a sum of squares: twice the
// negative logarithm of their odds against a mark that only lies on the line. One more free
// length costs 2·ln(u/(σ√(2π))), the Occam factor of a length spread evenly over the usual step u
// and found to σ (D. MacKay, Bayesian interpolation, Neural Computation 4, 1992, section 2.3). The
// figures added to it were set on simulated pools so that noise alone seldom makes a piece.
type prices struct {
	straight, arc    float64 // one piece
	kink, open       float64 // a joint that bends: at a mark, and where nobody touched the corner
	tangent          float64 // a joint that does not
	fillet           float64 // an arc between two straights of which no end was marked: an open corner and a radius
	untold           float64 // a joint that bends between two arcs that no mark to spare tells of
	curve, curveMark float64 // a fair curve, and every mark on it
}

func (t *trail) prices() prices {
	free := math.Min(math.Max(2*math.Log(t.step/(t.sd*math.Sqrt(2*math.Pi))), 5), 14)
	return prices{straight: 2, arc: free + 4.5, kink: free + 4, open: free + 12, tangent: 4, fillet: free + 18, untold: 12, curve: 2 * free, curveMark: 3}
}

// uneven is what an arc costs beyond its price when one of its spans is much longer than the usual
// one: who marks an arc does it at about even steps, and a single mark inside it near the middle.
// Common practice, no source.
func (t *trail) uneven(from, to int) float64 {
	if to-from == 2 {
		const usual = 0.35 // sd of the logarithm of one half over the other
		d := math.Log(t.gap(from)/t.gap(from+1)) / usual
		return d * d
	}
	var gaps []float64
	for i := from; i < to; i++ {
		gaps = append(gaps, t.gap(i))
	}
	slices.Sort(gaps)
	return math.Max(0, 5*math.Log(gaps[len(gaps)-1]/(2.5*gaps[(len(gaps)-1)/2])))
}

// lone says that an arc has no mark to spare: any three lie on one.
func (f *primitive) lone() bool { return f.kind == "arc" && f.to-f.from < 3 }

// bent is the price of a joint that bends at a mark.
func (c prices) bent(p, q *primitive) float64 {
	if p.lone() && q.lone() {
		return c.kink + c.untold
	}
	return c.kink
}

// longest is how many spans a trail has.
func (t *trail) longest() int {
	if t.ring {
		return len(t.at)
	}
	return len(t.at) - 1
}

// fits says that a sum of squares is one that n marks may have about a curve of so many figures:
// its mean and wide times its standard deviation, and a margin for covariance left out.
func fits(chi float64, n, figures int, wide, margin float64) bool {
	dof := math.Max(float64(n-figures), 0)
	return chi <= dof+wide*math.Sqrt(2*dof)+margin
}

// least is the number of marks that a long piece has, inside which no joint is looked for but
// near its ends.
const leastLong, nearEnd = 9, 3

// breaks says of each mark whether a joint may be near it: not well inside a long stretch that one
// straight or one arc fits as it should.
func (t *trail) breaks() []bool {
	out := make([]bool, len(t.at))
	for i := range out {
		out[i] = true
	}
	for from := range t.at {
		for _, fit := range []func(*trail, int, int) (primitive, bool){fitStraight, fitArc} {
			long := 0
			for n := leastLong - 1; n < len(t.at) && (t.ring || from+n < len(t.at)); n += 1 + n/3 {
				f, ok := fit(t, from, from+n)
				if !ok || !fits(f.chi, n+1, 3, 1, 0) {
					break
				}
				long = n
			}
			for i := from + nearEnd; i <= from+long-nearEnd; i++ {
				out[t.index(i)] = false
			}
		}
	}
	return out
}

// pieces lists the straights and arcs that marks of the trail may lie on, from one possible joint
// to another, in the order of their marks; and the steps of a fair curve from mark to mark.
func (t *trail) pieces() []primitive {
	var out []primitive
	may := t.breaks()
	last := len(t.at) - 1
	if !t.ring {
		may[0], may[last] = true, true
	}
	for from := range t.at {
		if !may[from] || !t.ring && from == last {
			continue
		}
		out = append(out, primitive{kind: "curve", from: from, to: from + 1})
		out = t.from(from, may, fitStraight, 1, out)
		out = t.from(from, may, fitArc, 2, out)
	}
	return slices.Clip(out)
}

// from adds the pieces of one kind that begin at a mark, of least spans and more.
func (t *trail) from(from int, may []bool, fit func(*trail, int, int) (primitive, bool), least int, out []primitive) []primitive {
	failed := 0
	for n := least; n < len(t.at) && (t.ring || from+n < len(t.at)); n++ {
		if !may[t.index(from+n)] {
			continue
		}
		f, ok := fit(t, from, from+n)
		figures := least + 1
		if !ok || !fits(f.chi, n+1, figures, 4, 9) {
			if failed++; failed > 2 {
				break
			}
			continue
		}
		failed = 0
		if f.kind == "arc" && n > 2 && f.k*f.k < 6*f.cov[2][2] {
			continue // straight as far as can be told
		}
		out = append(out, f)
	}
	return out
}
