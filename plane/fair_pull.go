package plane

import "math"

// Pull gives the derivative of a figure by every point given, and by the directions at the ends
// where such were given: at is its derivative by the points with the tangents' directions held,
// turn that by the directions of the tangents, both one a point. The tangents are the solution θ of
// M·θ = r, so that with Mᵀλ = turn the figure moves by λ·(dr − dM·θ) (the adjoint method; G. Strang,
// Computational Science and Engineering, 2007, section 8.7).
func (b *Bend) Pull(at []Point, turn []float64) (grad []Point, start, end float64) {
	n, m := len(b.pts), len(b.s.chord)
	w := pulling{b: b, grad: make([]Point, n), arc: make([]float64, m), bend: make([]float64, m)}
	by := make([]float64, len(b.turn))
	for i, k := range b.of {
		w.grad[k] = w.grad[k].Add(at[i])
		by[k] += turn[i]
	}
	for k, v := range by { // a tangent turns with its chord
		w.turnChord(min(k, m-1), v)
	}
	var l []float64
	lower, upper := transposed(b.lower, b.upper, b.closed)
	if b.closed {
		l = solveRing(lower, b.diag, upper, by)
	} else {
		l = solveBand(lower, b.diag, upper, by)
	}
	start, end = w.equations(l)
	w.chain()
	grad = make([]Point, len(b.of))
	taken := make([]bool, n)
	for i, k := range b.of {
		if !taken[k] {
			grad[i], taken[k] = w.grad[k], true
		}
	}
	return grad, start, end
}

// transposed gives the bands below and above the diagonal of the transposed matrix.
func transposed(lower, upper []float64, ring bool) (l, u []float64) {
	n := len(lower)
	l, u = make([]float64, n), make([]float64, n)
	for i := range n {
		if i > 0 || ring {
			l[i] = upper[(i-1+n)%n]
		}
		if i < n-1 || ring {
			u[i] = lower[(i+1)%n]
		}
	}
	return l, u
}

// pulling is a figure's derivatives on their way back to the points: by the arcs and by the turns
// between chords.
type pulling struct {
	b         *Bend
	grad      []Point
	arc, bend []float64
}

// turnChord adds the derivative by the direction of a chord.
func (w *pulling) turnChord(i int, v float64) {
	c := w.b.s.chord[i]
	g := c.Left().Mul(v / c.Dot(c))
	p, q := w.b.ends(i)
	w.grad[p], w.grad[q] = w.grad[p].Sub(g), w.grad[q].Add(g)
}

// equations takes λ·(dr − dM·θ) apart into arcs, turns and given directions.
func (w *pulling) equations(l []float64) (start, end float64) {
	b, m := w.b, len(w.b.s.chord)
	n := len(b.turn)
	inner := func(i int) bool { return b.closed || i > 0 && i < m }
	for i := range n {
		if !inner(i) {
			continue
		}
		p, q := (i-1+m)%m, i%m
		next := 0.0
		if i+1 < m || b.closed {
			next = b.s.turn[(i+1)%m]
			w.bend[(i+1)%m] -= l[i] / b.s.arc[q]
		}
		w.bend[q] -= 2 * l[i] / b.s.arc[p]
		w.arc[p] += l[i] / (b.s.arc[p] * b.s.arc[p]) * (b.turn[(i-1+n)%n] + 2*b.turn[i] + 2*b.s.turn[q])
		w.arc[q] += l[i] / (b.s.arc[q] * b.s.arc[q]) * (2*b.turn[i] + b.turn[(i+1)%n] + next)
	}
	if b.closed {
		return 0, 0
	}
	if b.start { // its equation: turn[0] = direction − that of the first chord
		start = l[0]
		w.turnChord(0, -l[0])
	} else if m > 1 {
		w.bend[1] -= l[0]
	}
	if b.end {
		end = l[m]
		w.turnChord(m-1, -l[m])
	}
	return start, end
}

// chain takes arcs and turns to the points.
func (w *pulling) chain() {
	b, m := w.b, len(w.b.s.chord)
	for i := range m {
		if v := w.bend[i]; v != 0 { // from the chord before to chord i
			w.turnChord(i, v)
			w.turnChord((i-1+m)%m, -v)
		}
		v := w.arc[i]
		if v == 0 {
			continue
		}
		c := b.s.chord[i]
		p, q := b.ends(i)
		u := c.Unit().Mul(v * arcOverChord(b.half[i]))
		w.grad[p], w.grad[q] = w.grad[p].Sub(u), w.grad[q].Add(u)
		w.sweeps(i, v*c.Len()*arcOverChordSlope(b.half[i]))
	}
}

// sweeps adds the derivative by half the sweep of span i.
func (w *pulling) sweeps(i int, v float64) {
	b := w.b
	eyes := b.eyes(i)
	p, q := b.ends(i)
	for _, eye := range eyes {
		s := v / float64(len(eyes))
		from, to := b.pts[p].Sub(b.pts[eye]), b.pts[q].Sub(b.pts[eye])
		if Between(from, to) < 0 {
			s = -s
		}
		f, t := from.Left().Mul(s/from.Dot(from)), to.Left().Mul(s/to.Dot(to))
		w.grad[p], w.grad[q] = w.grad[p].Sub(f), w.grad[q].Add(t)
		w.grad[eye] = w.grad[eye].Add(f).Sub(t)
	}
}

// arcOverChordSlope is the derivative of arcOverChord: (sin γ − γ cos γ)/sin² γ.
func arcOverChordSlope(half float64) float64 {
	switch {
	case half >= 3:
		return 0
	case half < 1e-4:
		return half / 3
	}
	s, c := math.Sincos(half)
	return (s - half*c) / (s * s)
}
