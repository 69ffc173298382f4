package mesh

import "math"

// Exact sums of floating-point numbers, after J. R. Shewchuk, "Adaptive Precision Floating-Point
// Arithmetic and Fast Robust Geometric Predicates", Discrete & Computational Geometry 18 (1997),
// sections 2.2 to 2.5. An expansion is a slice of numbers that do not overlap, the smallest
// first, without zeros; its value is their exact sum, its sign that of the last one. All of it
// holds while nothing overflows or underflows.

// twoSum is a+b and what rounding took from it (Shewchuk's Theorem 7, after Knuth).
func twoSum(a, b float64) (sum, err float64) {
	sum = a + b
	bv := sum - a
	av := sum - bv
	return sum, (a - av) + (b - bv)
}

// twoDiff is a−b and what rounding took from it.
func twoDiff(a, b float64) (diff, err float64) {
	diff = a - b
	bv := a - diff
	av := diff + bv
	return diff, (a - av) + (bv - b)
}

// twoProduct is a·b and what rounding took from it.
func twoProduct(a, b float64) (product, err float64) {
	product = float64(a * b)
	return product, math.FMA(a, b, -product)
}

// add appends the expansion e+f to h (Shewchuk's fast expansion sum with zero elimination,
// figure 8): the components of both are merged by size and added up one after another.
func add(h, e, f []float64) []float64 {
	q := 0.0
	for len(e)+len(f) > 0 {
		var x, r float64
		if len(f) == 0 || len(e) > 0 && math.Abs(e[0]) < math.Abs(f[0]) {
			x, e = e[0], e[1:]
		} else {
			x, f = f[0], f[1:]
		}
		if q, r = twoSum(q, x); r != 0 {
			h = append(h, r)
		}
	}
	if q != 0 {
		h = append(h, q)
	}
	return h
}

// scale appends the expansion b·e to h (Shewchuk's scale expansion, figure 13).
func scale(h, e []float64, b float64) []float64 {
	q := 0.0
	for _, x := range e {
		p, pe := twoProduct(x, b)
		s, r := twoSum(q, pe)
		if r != 0 {
			h = append(h, r)
		}
		// |p| ≥ |s|, or both vanish: the plain order of the fast two-sum.
		q = p + s
		if r = s - (q - p); r != 0 {
			h = append(h, r)
		}
	}
	if q != 0 {
		h = append(h, q)
	}
	return h
}

// multiply appends the expansion e·f to h.
func multiply(h, e, f []float64) []float64 {
	if len(f) == 1 {
		return scale(h, e, f[0])
	}
	var room [3][32]float64
	sum, next, part := room[0][:0], room[1][:0], room[2][:0]
	for _, b := range f {
		part = scale(part[:0], e, b)
		sum, next = add(next[:0], sum, part), sum
	}
	return append(h, sum...)
}

// negate changes the sign of every component of e, in place.
func negate(e []float64) []float64 {
	for i := range e {
		e[i] = -e[i]
	}
	return e
}

// crossOf appends the expansion a·d − b·c to h.
func crossOf(h, a, b, c, d []float64) []float64 {
	var room [2][32]float64
	return add(h, multiply(room[0][:0], a, d), negate(multiply(room[1][:0], b, c)))
}

// last is the component that carries the sign of e; 0 for the empty expansion, which is zero.
func last(e []float64) float64 {
	if len(e) == 0 {
		return 0
	}
	return e[len(e)-1]
}

// gap is a coordinate difference a−b as an expansion of one or two components.
type gap struct {
	parts [2]float64
	n     int
}

func gapOf(a, b float64) gap {
	d, err := twoDiff(a, b)
	if err == 0 {
		return gap{[2]float64{d}, 1}
	}
	return gap{[2]float64{err, d}, 2}
}

// of is the difference as floating point has it, or exactly.
func (g *gap) of(rounded bool) []float64 {
	if rounded {
		return g.parts[g.n-1 : g.n]
	}
	return g.parts[:g.n]
}
