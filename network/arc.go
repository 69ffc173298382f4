package network

import (
	"math"

	"brimline/fieldbook"
)

// Arc asserts that marks stand on one circle: the distance of each from a free circle is 0. The
// circle's block is θ, its direction where it passes nearest to the first mark, ρ, its distance to
// the left of that mark, and κ, its curvature, positive when it turns left.
type Arc struct{}

// Name of the kind.
func (Arc) Name() string { return "arc" }

// Parts are the marks, counted from 1.
func (Arc) Parts(o *Obs) []string { return counted(len(o.Marks)) }

// Says is no distance.
func (Arc) Says() float64 { return 0 }

// Touches the marks and the free circle.
func (Arc) Touches(o *Obs) []Unknown { return freely(o) }

// Predict gives the distance d of each mark p to the left of the circle. With q = p − p₀ − ρn,
// a = q·u and b = q·n: F = b − κ(a² + b²)/2 and d = 2F/(1 + √(1 − 2κF)), which stays exact as κ
// goes to 0. As F = d − κd²/2, its derivatives follow from √(1 − 2κF)·dd = dF + d²/2·dκ.
func (Arc) Predict(x State, o *Obs, value, jac []float64) {
	k := len(o.Marks)
	at := o.At[k]
	uy, ux := math.Sincos(x[at])
	nx, ny := -uy, ux
	rho, curv := x[at+1], x[at+2]
	w := o.Size
	clear(jac[:k*w])
	first := o.At[0]
	for i, m := range o.At[:k] {
		qx, qy := x[m]-x[first], x[m+1]-x[first+1]
		a, b := ux*qx+uy*qy, nx*qx+ny*qy-rho
		f := b - curv*(a*a+b*b)/2
		root := math.Sqrt(math.Max(1-2*curv*f, 0))
		d := 2 * f / (1 + root)
		value[i] = d
		root = math.Max(root, leastRoot)
		px, py := ((1-curv*b)*nx-curv*a*ux)/root, ((1-curv*b)*ny-curv*a*uy)/root
		j := jac[i*w : (i+1)*w]
		j[2*i], j[2*i+1] = px, py
		j[0] -= px
		j[1] -= py
		j[2*k] = -a * (1 + curv*rho) / root
		j[2*k+1] = -(1 - curv*b) / root
		j[2*k+2] = (d*d - a*a - b*b) / 2 / root
	}
}

// leastRoot keeps the derivatives finite at the centre of the circle.
const leastRoot = 1e-6

// Sigma of each mark's distance, from the book's table of defaults.
func (Arc) Sigma(_ *Obs, sd []float64) {
	for k := range sd {
		sd[k] = fieldbook.DefaultSigma("arc", "across", "", 0, 0)
	}
}
