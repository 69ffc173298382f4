package survey

import (
	"brimline/adjust"
	"brimline/basin"
	"brimline/network"
)

// ups numbers the heights that a basin hangs on: each a sum of solved heights and of what is read
// from there, with a variance of its own.
type ups struct {
	g      *gather
	blocks []network.Unknown
	at     map[network.Unknown]int // looked up only
	rows   []upRow
}

type upRow struct {
	terms []upTerm
	own   float64 // variance
}

type upTerm struct {
	block int // place in ups.blocks
	by    float64
}

func newUps(g *gather) *ups { return &ups{g: g, at: map[network.Unknown]int{}} }

// mark is the height of a mark; false where the readings do not hold it.
func (u *ups) mark(m int) (basin.Height, bool) {
	b, ok := adjust.HeightBlock(u.g.net, m)
	if !ok {
		return basin.Height{}, false
	}
	return u.block(b)
}

// named is the height of a mark of a name.
func (u *ups) named(mark string) (basin.Height, bool) {
	i, ok := u.g.net.ByName[mark]
	if !ok {
		return basin.Height{}, false
	}
	return u.mark(i)
}

// other is that of a water surface or of a line taken as level.
func (u *ups) other(kind, name string) (basin.Height, bool) {
	b, ok := adjust.UpBlock(u.g.net, kind, name)
	if !ok {
		return basin.Height{}, false
	}
	return u.block(b)
}

func (u *ups) block(b network.Unknown) (basin.Height, bool) {
	z, ok := u.g.sol.Height(b)
	if !ok {
		return basin.Height{}, false
	}
	i, have := u.at[b]
	if !have {
		i = len(u.blocks)
		u.at[b], u.blocks = i, append(u.blocks, b)
	}
	return u.row(z+u.g.upAt, upRow{terms: []upTerm{{i, 1}}}), true
}

func (u *ups) row(z float64, r upRow) basin.Height {
	u.rows = append(u.rows, r)
	return basin.Height{Z: z, Index: len(u.rows) - 1}
}

// under is a height so far below another, by a reading of a standard deviation.
func (u *ups) under(h basin.Height, down, sd float64) basin.Height {
	r := upRow{own: sd * sd}
	if h.Index >= 0 {
		r.terms = u.rows[h.Index].terms
		r.own += u.rows[h.Index].own
	}
	return u.row(h.Z-down, r)
}

// mix is the weighted sum of heights, whose own variances count as independent.
func (u *ups) mix(list []basin.Height, weights []float64) basin.Height {
	var r upRow
	z := 0.0
	for k, h := range list {
		z += weights[k] * h.Z
		if h.Index < 0 {
			continue
		}
		r.own += weights[k] * weights[k] * u.rows[h.Index].own
		for _, t := range u.rows[h.Index].terms {
			r.terms = append(r.terms, upTerm{t.block, weights[k] * t.by})
		}
	}
	return u.row(z, r)
}

// cov is the covariance of all rows, against what heights are counted from in the book's frame.
func (u *ups) cov() []float64 {
	n := len(u.blocks)
	all := append(append([]network.Unknown(nil), u.blocks...), u.g.upFrom...)
	m := len(all)
	c := u.g.sol.HeightCov(all...)
	level := make([]float64, m) // covariance of each with the mean of what heights are counted from
	own := 0.0
	for i := range m {
		for k := n; k < m; k++ {
			level[i] += c[i*m+k] / float64(m-n)
		}
	}
	for k := n; k < m; k++ {
		own += level[k] / float64(m-n)
	}
	block := func(i, j int) float64 { return c[i*m+j] - level[i] - level[j] + own }
	out := make([]float64, len(u.rows)*len(u.rows))
	for i, p := range u.rows {
		for j, q := range u.rows[:i+1] {
			v := 0.0
			for _, a := range p.terms {
				for _, b := range q.terms {
					v += a.by * b.by * block(a.block, b.block)
				}
			}
			if v *= u.g.factor * u.g.factor; i == j {
				v += p.own
			}
			out[i*len(u.rows)+j], out[j*len(u.rows)+i] = v, v
		}
	}
	return out
}
