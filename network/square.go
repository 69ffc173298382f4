package network

import (
	"math"

	"brimline/fieldbook"
)

// Square asserts a right angle at the middle one of three marks, on either hand, radians.
type Square struct{}

// Name of the kind.
func (Square) Name() string { return "square" }

// Parts of its value.
func (Square) Parts(*Obs) []string { return []string{"is"} }

// Says is a right angle.
func (Square) Says() float64 { return math.Pi / 2 }

// Touches the three marks.
func (Square) Touches(o *Obs) []Unknown {
	return []Unknown{Unknown(o.Marks[0]), Unknown(o.Marks[1]), Unknown(o.Marks[2])}
}

// Predict gives the angle between the two sides, 0 to π.
func (Square) Predict(x State, o *Obs, value, jac []float64) {
	a, ax, ay := direction(x, o.At[1], o.At[0])
	b, bx, by := direction(x, o.At[1], o.At[2])
	angle, hand := math.Remainder(b-a, 2*math.Pi), 1.0
	if angle < 0 {
		angle, hand = -angle, -1
	}
	value[0] = angle
	jac[0], jac[1] = -hand*ax, -hand*ay
	jac[2], jac[3] = hand*(ax-bx), hand*(ay-by)
	jac[4], jac[5] = hand*bx, hand*by
}

// Sigma of a corner called square, from the book's table of defaults.
func (Square) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("square", "is", "", 0, 0) }
