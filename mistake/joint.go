package mistake

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/network"
)

// sizes are what the other readings say of the errors of two: both, with their covariance.
type sizes struct {
	e    [2]float64
	s    [2]float64 // standard deviations
	both float64    // covariance
}

// det is the determinant of the covariance.
func (z sizes) det() float64 { return z.s[0]*z.s[0]*z.s[1]*z.s[1] - z.both*z.both }

// joint scores two readings wrong at once by the solution that leaves out both: what either may have
// been is weighed with what the other may, as the errors that the rest gives them are correlated. It
// gives copies of both, each with its explanations summed over the other's, scored alike. Where a mark
// would hang on one reading the solution leaves out a alone, with which it agrees as well. ok is false
// where nothing would hold a mark, or the rest does not tell the two sizes and no one mark that both
// share would.
func (f *finder) joint(sp *adjust.Space, a, b *hypothesis, others []*hypothesis) (pair [2]*hypothesis, ok bool) {
	if len(a.parts) > 1 || len(b.parts) > 1 {
		return pair, false
	}
	left := f.left(sp, a, b)
	c := f.change(others, f.replaced(sp, a, b))
	switch {
	case left > 1:
		c.Out = append(c.Out, a.parts[0], b.parts[0])
	case left == 1:
		c.From = f.replaced(sp, a)
		c.Out = append(c.Out, a.parts[0])
	default:
		return pair, false
	}
	cost, x, ok := f.s.Try(f.ctx, c)
	if !ok {
		return pair, false
	}
	p, q := a.parts[0], b.parts[0]
	ways := [2][]way{f.ways(p, x), f.ways(q, x)}
	there := f.model(x, others)
	var fit func(v, w way) float64
	if z, told := f.sizesAt(there, p, q); told && left > 1 {
		fit = z.fit
	} else if m := f.markOf(p, q); m >= 0 {
		fit = f.crossing(there, m, p, q).fit
	} else {
		return pair, false
	}
	half := (sp.Cost - cost) / 2
	pair = [2]*hypothesis{f.lone(p, half, x), f.lone(q, half, x)}
	weighBoth(pair, ways, fit)
	return pair, true
}

// markOf is the one mark, no peg, that two readings share; −1 for none.
func (f *finder) markOf(p, q int) int {
	for _, a := range f.s.Net.Obs[f.s.ObsOf(p)].Marks {
		for _, b := range f.s.Net.Obs[f.s.ObsOf(q)].Marks {
			if a == b && !f.isPeg[a] {
				return a
			}
		}
	}
	return -1
}

// lone is a mistake in one part, not yet explained.
func (f *finder) lone(p int, half float64, x network.State) *hypothesis {
	h := &hypothesis{parts: []int{p}, half: half, x: x, score: math.Inf(-1)}
	h.Obs, h.Peg, h.Other, h.From, h.To = []int{f.s.ObsOf(p)}, -1, -1, -1, -1
	h.Size = f.misclosure(x, p)
	return h
}

// left is the fewest values that a mark, no peg, of two readings keeps without both.
func (f *finder) left(sp *adjust.Space, a, b *hypothesis) int {
	fewest := math.MaxInt
	for _, h := range []*hypothesis{a, b} {
		for _, m := range f.s.Net.Obs[h.Obs[0]].Marks {
			if f.isPeg[m] {
				continue
			}
			n := 0
			for i := range f.s.Net.Obs {
				o := &f.s.Net.Obs[i]
				if i != a.Obs[0] && i != b.Obs[0] && sp.Member[f.s.First[i]] && slices.Contains(o.Marks, m) {
					n += len(o.Values)
				}
			}
			fewest = min(fewest, n)
		}
	}
	return fewest
}

// sizesAt are the errors of p and q in the model at the place that leaves both out. With R's block of
// the two, whitened, their covariance is its inverse.
func (f *finder) sizesAt(sp *adjust.Space, p, q int) (sizes, bool) {
	col := sp.Column(p)
	rp, rq, r := sp.R[p], sp.R[q], col[q]
	det := rp*rq - r*r
	if rp < adjust.LeastRed || rq < adjust.LeastRed || det < adjust.LeastRed*math.Max(rp, rq) {
		return sizes{}, false
	}
	return sizes{
		e:    [2]float64{f.misclosure(sp.X, p), f.misclosure(sp.X, q)},
		s:    [2]float64{sp.SD[p] * math.Sqrt(rq/det), sp.SD[q] * math.Sqrt(rp/det)},
		both: -sp.SD[p] * sp.SD[q] * r / det,
	}, true
}

// weighBoth scores every explanation of one with every one of the other.
func weighBoth(pair [2]*hypothesis, ways [2][]way, fit func(v, w way) float64) {
	for k, h := range pair {
		for _, w := range ways[k] {
			h.why = append(h.why, option{w.candidate, w.peg, math.Inf(-1)})
		}
	}
	for i, v := range ways[0] {
		for j, w := range ways[1] {
			score := pair[0].half + v.ln + w.ln + fit(v, w)
			pair[0].why[i].score = addLog(pair[0].why[i].score, score)
			pair[1].why[j].score = addLog(pair[1].why[j].score, score)
		}
	}
	for _, h := range pair {
		slices.SortStableFunc(h.why, func(a, b option) int { return higher(a.score, b.score) })
		for _, o := range h.why {
			h.score = addLog(h.score, o.score)
		}
		h.ln = h.score - h.half
		h.Code, h.Cause, h.values = h.why[0].code, h.why[0].cause, []float64{h.why[0].metres}
	}
}

// fit is the log of what the sizes say of two explanations: the normal density of both over its
// peak, an open size being integrated over its range.
func (z sizes) fit(v, w way) float64 {
	if v.open && w.open {
		return narrowed(z.s[0]*math.Sqrt(2*math.Pi)/v.width) + narrowed(math.Sqrt(2*math.Pi*z.det())/z.s[0]/w.width)
	}
	if v.open {
		return misfit(z.e[1]-w.size, z.s[1], w.loose) + narrowed(math.Sqrt(2*math.Pi*z.det())/z.s[1]/v.width)
	}
	if w.open {
		return misfit(z.e[0]-v.size, z.s[0], v.loose) + narrowed(math.Sqrt(2*math.Pi*z.det())/z.s[0]/w.width)
	}
	a, b, c := z.s[0]*z.s[0], z.s[1]*z.s[1], z.both
	before := a*b - c*c
	if v.loose {
		a *= 2
	}
	if w.loose {
		b *= 2
	}
	d, e, det := z.e[0]-v.size, z.e[1]-w.size, a*b-c*c
	return -(b*d*d-2*c*d*e+a*e*e)/(2*det) + math.Log(before/det)/2
}
