package outline

// invert is the inverse of a symmetric positive definite matrix by Cholesky's method.
func invert(a []float64, n int) []float64 { return squareOf(invertLower(cholesky(a, n), n), n) }

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
