package advise

import "brimline/network"

// bench holds a solution to which readings are put in or from which they are taken, by rank-one
// updates. Besides the marks it carries the other blocks that its readings touch.
type bench struct {
	g    *ground
	n    int
	at   []int // row of each block, −1: not on the bench
	cov  []float64
	move []float64
	cost float64 // change of the weighted sum of squares
}

// bench for readings of the given observations.
func (g *ground) bench(obs ...int) *bench {
	net := g.s.Net
	b := &bench{g: g, at: make([]int, len(net.Offset)-1)}
	for k := range b.at {
		b.at[k] = -1
	}
	var blocks []int
	put := func(block int) {
		if b.at[block] < 0 && net.Placed(g.s.X, network.Unknown(block)) {
			b.at[block] = b.n
			b.n += net.Dim(network.Unknown(block))
			blocks = append(blocks, block)
		}
	}
	for m := range net.Marks {
		put(m)
	}
	few := len(blocks)
	for _, i := range obs {
		for _, block := range net.Obs[i].Blocks {
			put(int(block))
		}
	}
	b.move = make([]float64, b.n)
	if few == len(net.Marks) && few == len(blocks) {
		b.cov = append([]float64(nil), g.cov...)
	} else {
		b.cov = g.s.Cov(blocks...)
	}
	return b
}

// marks is the move of all marks of the network.
func (b *bench) marks() []float64 { return b.spreadOut(b.move) }

func (b *bench) spreadOut(v []float64) []float64 {
	out := make([]float64, b.g.n)
	for m := range b.g.s.Net.Marks {
		if at := b.at[m]; at >= 0 {
			copy(out[2*m:2*m+2], v[at:])
		}
	}
	return out
}

// putIn adds the parts of a reading that are left out; false where there are none.
func (b *bench) putIn(i int) bool {
	s := b.g.s
	o := &s.Net.Obs[i]
	if !s.Net.Ready(s.X, o) {
		return false
	}
	any := false
	for k := range o.SD {
		if p := s.First[i] + k; !s.In[i] || s.Out[p] {
			b.update(i, k, s.SD[p]*s.SD[p])
			any = true
		}
	}
	return any
}

// takeOut removes the parts that take part; false where a mark would be lost.
func (b *bench) takeOut(i int) bool {
	s := b.g.s
	for k := range s.Net.Obs[i].SD {
		p := s.First[i] + k
		if s.In[i] && !s.Out[p] && !b.update(i, k, -s.SD[p]*s.SD[p]) {
			return false
		}
	}
	return true
}

// against is C·aᵀ, a·C·aᵀ and a·move for part k of observation i.
func (b *bench) against(i, k int) (w []float64, own, moved float64) {
	o := &b.g.s.Net.Obs[i]
	row := b.g.derivatives(o, k)
	w = make([]float64, b.n)
	at := 0
	each := func(visit func(row int, a float64)) {
		at = 0
		for _, block := range o.Blocks {
			for c := range b.g.s.Net.Dim(block) {
				visit(b.at[block]+c, row[at])
				at++
			}
		}
	}
	each(func(r int, a float64) { add(w, b.cov[r*b.n:(r+1)*b.n], a) })
	each(func(r int, a float64) {
		own += a * w[r]
		moved += a * b.move[r]
	})
	return w, own, moved
}

// unit is the move of all marks by one unit of error in part k of an observation that takes part.
func (b *bench) unit(i, k int) []float64 {
	w, _, _ := b.against(i, k)
	sd := b.g.s.SD[b.g.s.First[i]+k]
	for r := range w {
		w[r] /= sd * sd
	}
	return b.spreadOut(w)
}

// update adds part k of observation i with the variance v, or takes it out with −v; false where
// its redundancy is too small to do without it.
func (b *bench) update(i, k int, v float64) bool {
	w, own, moved := b.against(i, k)
	misfit := b.g.s.Net.Obs[i].Values[k] - b.g.buf[k] - moved // predicted by derivatives
	d := v + own
	if v < 0 && d > leastRed*v {
		return false
	}
	b.cost += misfit * misfit / d
	for r, x := range w {
		b.move[r] += x * misfit / d
		add(b.cov[r*b.n:(r+1)*b.n], w, -x/d)
	}
	return true
}

// leastRed is the redundancy below which a reading cannot be done without.
const leastRed = 1e-3
