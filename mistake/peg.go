package mistake

import (
	"math"

	"brimline/adjust"
	"brimline/network"
	"brimline/plane"
)

// movedRange is the square in which a moved peg is looked for, metres: common practice, no source.
const movedRange = 1.0

// movedMost is the longest shift of a peg that is looked for, metres: a peg that was set elsewhere
// altogether is another peg. Common practice, no source.
const movedMost = 0.6

// pegsMoved weighs, for each peg and each place in the order of its readings, that it stood
// elsewhere from there on.
func (f *finder) pegsMoved(sp *adjust.Space, taken []*hypothesis) []*hypothesis {
	var out []*hypothesis
	for _, m := range f.pegs {
		list := f.readingsOf(sp, m)
		if len(list) < 4 {
			continue
		}
		t := newTail(sp, 2)
		var best *hypothesis
		var rest []*hypothesis
		prior := math.Log(odds(f.book, "peg-moved") / float64(len(list)))
		for k := len(list) - 1; k >= 2; k-- {
			t.add(list[k], f.slope(sp, list[k], m))
			if len(list)-k < 2 {
				continue
			}
			x, y, half, root := t.two()
			score := half + prior + narrowed(2*math.Pi*root/(movedRange*movedRange))
			if math.IsInf(root, 1) || score < 0 || math.Hypot(x, y) > movedMost || len(list)-k < 3 {
				continue
			}
			h := f.moved(t, m, plane.Point{X: x, Y: y})
			h.score, h.half, h.ln = score, half, score-half
			if best == nil || score > best.score {
				best = h
			}
			rest = append(rest, h)
		}
		if best == nil {
			continue
		}
		was := best.score
		f.relay(sp, best, m, taken)
		out = append(out, best)
		for _, h := range rest {
			if h != best && h.score > was-8 {
				h.score += best.score - was
				h.x = best.x
				out = append(out, h)
			}
		}
	}
	return out
}

// readingsOf lists the parts of a peg's ties in the order read.
func (f *finder) readingsOf(sp *adjust.Space, m int) []int {
	var out []int
	n := f.s.Net
	for i := range n.Obs {
		o := &n.Obs[i]
		if _, tie := o.Kind.(network.Tie); !tie || !f.free(sp, f.s.First[i]) {
			continue
		}
		if o.Marks[0] == m || o.Marks[1] == m {
			out = append(out, f.s.First[i])
		}
	}
	return out
}

// slope is the change of a whitened tie when its peg moves by one metre in x and in y.
func (f *finder) slope(sp *adjust.Space, p, m int) []float64 {
	o := &f.s.Net.Obs[f.s.ObsOf(p)]
	far := o.Marks[0] + o.Marks[1] - m
	u := sp.X.Point(m).Sub(sp.X.Point(far)).Unit()
	return []float64{o.Scale * u.X / sp.SD[p], o.Scale * u.Y / sp.SD[p]}
}

// moved is the hypothesis that the readings of the tail were taken from a peg shifted by d; their
// lengths are brought back to where it stood.
func (f *finder) moved(t *tail, m int, d plane.Point) *hypothesis {
	n := len(t.part)
	parts, values := make([]int, n), make([]float64, n)
	for k, p := range t.part {
		parts[n-1-k] = p
		c := t.coef[k]
		values[n-1-k] = f.value(p) - (c[0]*d.X+c[1]*d.Y)*t.sp.SD[p]
	}
	h := f.named("peg-moved", parts, values)
	h.Peg, h.Size = m, d.Len()
	f.far(h, m)
	return h
}

// relay solves with the lengths brought back, brings them back again from there (the shift is a
// little off where the peg's readings had bent the figure), and scores by the sum of squares then.
func (f *finder) relay(sp *adjust.Space, h *hypothesis, m int, taken []*hypothesis) {
	with := append(append([]*hypothesis(nil), taken...), h)
	_, x, ok := f.s.Try(f.ctx, f.change(with, sp.X))
	if !ok {
		return
	}
	f.reach(h, m, x)
	cost, x, ok := f.s.Try(f.ctx, f.change(with, x))
	if !ok {
		return
	}
	h.x = x
	h.half = (sp.Cost - cost) / 2
	h.score = h.half + h.ln
}

// reach brings the lengths of a moved peg back exactly: the peg's second place is fitted to its
// readings with everything else at x.
func (f *finder) reach(h *hypothesis, m int, x network.State) {
	at := x.Point(m)
	for range 5 {
		var a, b, c, g, k float64
		for _, p := range h.parts {
			o := &f.s.Net.Obs[f.s.ObsOf(p)]
			far := x.Point(o.Marks[0] + o.Marks[1] - m)
			u := at.Sub(far).Unit().Mul(o.Scale)
			r := f.value(p) - o.Zero - o.Scale*at.Dist(far)
			w := 1 / (o.SD[0] * o.SD[0])
			a, b, c = a+w*u.X*u.X, b+w*u.X*u.Y, c+w*u.Y*u.Y
			g, k = g+w*u.X*r, k+w*u.Y*r
		}
		d := a*c - b*b
		if d <= 0 {
			return
		}
		at = at.Add(plane.Point{X: (c*g - b*k) / d, Y: (a*k - b*g) / d})
	}
	h.Size = at.Dist(x.Point(m))
	for n, p := range h.parts {
		o := &f.s.Net.Obs[f.s.ObsOf(p)]
		far := x.Point(o.Marks[0] + o.Marks[1] - m)
		h.values[n] = f.value(p) - o.Scale*(at.Dist(far)-x.Point(m).Dist(far))
		h.Edits[n].Value = h.values[n]
	}
}
