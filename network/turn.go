package network

import (
	"math"

	"brimline/fieldbook"
)

// Turn is the horizontal angle at a mark, clockwise from one mark to another, radians. Marks:
// from, at, to.
type Turn struct{}

// Name of the kind.
func (Turn) Name() string { return "turn" }

// Parts of its value.
func (Turn) Parts(*Obs) []string { return []string{"is"} }

// Touches the three marks.
func (Turn) Touches(o *Obs) []Unknown {
	return []Unknown{Unknown(o.Marks[0]), Unknown(o.Marks[1]), Unknown(o.Marks[2])}
}

// Predict gives the angle within half a turn of the one read.
func (Turn) Predict(x State, o *Obs, value, jac []float64) {
	from, fx, fy := direction(x, o.At[1], o.At[0])
	to, tx, ty := direction(x, o.At[1], o.At[2])
	read := o.Values[0]
	value[0] = read + math.Remainder(from-to-read, 2*math.Pi)
	jac[0], jac[1] = fx, fy
	jac[2], jac[3] = tx-fx, ty-fy
	jac[4], jac[5] = -tx, -ty
}

// Curve adds the second derivatives of both directions.
func (Turn) Curve(x State, o *Obs, f, hess []float64) {
	bend(x, o.At[1], o.At[0], f[0], hess, o.Size, 2, 0)
	bend(x, o.At[1], o.At[2], -f[0], hess, o.Size, 2, 4)
}

// Sigma of an angle read with a simple instrument, from the book's table of defaults.
func (Turn) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("turn", "is", "", 0, 0) }
