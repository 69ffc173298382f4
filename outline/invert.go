package outline

import "math"

// invert is the inverse of a symmetric positive definite matrix by Cholesky's method; a pivot
// lost to rounding is held up at 1e-14 of the largest.
func invert(a []float64, n int) []float64 {
	l := make([]float64, n*n)
	top := 0.0
	for i := range n {
		top = math.Max(top, a[i*n+i])
	}
	for i := range n {
		for j := range i + 1 {
			v := a[i*n+j]
			li, lj := l[i*n:i*n+j], l[j*n:j*n+j]
			for k := range li {
				v -= li[k] * lj[k]
			}
			if i == j {
				l[i*n+i] = math.Sqrt(math.Max(v, 1e-14*top))
			} else {
				l[i*n+j] = v / l[j*n+j]
			}
		}
	}
	return squareOf(invertLower(l, n), n)
}

// invertLower is the inverse of a lower triangle, by rows.
func invertLower(l []float64, n int) []float64 {
	inv := make([]float64, n*n)
	for c := range n {
		for i := c; i < n; i++ {
			v := 0.0
			if i == c {
				v = 1
			}
			for k := c; k < i; k++ {
				v -= l[i*n+k] * inv[k*n+c]
			}
			inv[i*n+c] = v / l[i*n+i]
		}
	}
	return inv
}

// squareOf is iᵀ·i of a lower triangle.
func squareOf(inv []float64, n int) []float64 {
	out := make([]float64, n*n)
	for k := range n {
		row := inv[k*n : k*n+k+1]
		for i, x := range row {
			if x == 0 {
				continue
			}
			for j, y := range row[:i+1] {
				out[i*n+j] += x * y
			}
		}
	}
	for i := range n {
		for j := range i {
			out[j*n+i] = out[i*n+j]
		}
	}
	return out
}
