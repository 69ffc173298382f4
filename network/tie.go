package network

import (
	"math"

	"brimline/fieldbook"
)

// Tie is a level distance between two marks: scale·|b − a| + zero.
type Tie struct{}

// Name of the kind.
func (Tie) Name() string { return "tie" }

// Parts of its value.
func (Tie) Parts(*Obs) []string { return []string{"is"} }

// Touches the two marks.
func (Tie) Touches(o *Obs) []Unknown { return []Unknown{Unknown(o.Marks[0]), Unknown(o.Marks[1])} }

// Predict gives the distance; the direction from a to b is taken as +x where they coincide.
func (Tie) Predict(x State, o *Obs, value, jac []float64) {
	a, b := o.At[0], o.At[1]
	dx, dy := x[b]-x[a], x[b+1]-x[a+1]
	d := math.Sqrt(dx*dx + dy*dy)
	ux, uy := 1.0, 0.0
	if d > 0 {
		ux, uy = dx/d, dy/d
	}
	s := o.Scale
	value[0] = s*d + o.Zero
	jac[0], jac[1], jac[2], jac[3] = -s*ux, -s*uy, s*ux, s*uy
}

// Curve adds the second derivatives of a distance: (I − u·uᵀ)/d.
func (Tie) Curve(x State, o *Obs, f, hess []float64) {
	a, b := o.At[0], o.At[1]
	dx, dy := x[b]-x[a], x[b+1]-x[a+1]
	d2 := dx*dx + dy*dy
	if d2 < 1e-6 {
		return
	}
	g := f[0] * o.Scale / (d2 * math.Sqrt(d2))
	xx, xy, yy := g*dy*dy, -g*dx*dy, g*dx*dx
	hess[0] += xx
	hess[1] += xy
	hess[2] -= xx
	hess[3] -= xy
	hess[4] += xy
	hess[5] += yy
	hess[6] -= xy
	hess[7] -= yy
	hess[8] -= xx
	hess[9] -= xy
	hess[10] += xx
	hess[11] += xy
	hess[12] -= xy
	hess[13] -= yy
	hess[14] += xy
	hess[15] += yy
}

// Sigma of a hand-pulled tape between two marks, from the book's table of defaults.
func (Tie) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("tie", "is", "", 0, 0) }
