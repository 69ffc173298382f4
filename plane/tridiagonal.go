package plane

// solveBand solves the tridiagonal system lower·x[i−1] + diag·x[i] + upper·x[i+1] = right by
// elimination without exchange of rows, which the dominant diagonals made here allow. The
// slices given are left as they are.
func solveBand(lower, diag, upper, right []float64) []float64 {
	n := len(diag)
	c, x := make([]float64, n), make([]float64, n)
	pivot := diag[0]
	x[0] = right[0] / pivot
	for i := 1; i < n; i++ {
		c[i-1] = upper[i-1] / pivot
		pivot = diag[i] - lower[i]*c[i-1]
		x[i] = (right[i] - lower[i]*x[i-1]) / pivot
	}
	for i := n - 2; i >= 0; i-- {
		x[i] -= c[i] * x[i+1]
	}
	return x
}

// solveRing solves the same with the ends joined: lower[0] stands before the last unknown and
// upper[n−1] before the first. The two corners are split off as a change of rank one
// (Sherman–Morrison). At least three unknowns.
func solveRing(lower, diag, upper, right []float64) []float64 {
	n := len(diag)
	corner := -diag[0]
	d := append([]float64(nil), diag...)
	d[0] -= corner
	d[n-1] -= upper[n-1] * lower[0] / corner
	u := make([]float64, n)
	u[0], u[n-1] = corner, upper[n-1]
	x, z := solveBand(lower, d, upper, right), solveBand(lower, d, upper, u)
	share := lower[0] / corner
	f := (x[0] + share*x[n-1]) / (1 + z[0] + share*z[n-1])
	for i := range x {
		x[i] -= f * z[i]
	}
	return x
}
