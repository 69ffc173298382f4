package network

import "brimline/fieldbook"

// Level is the height of the second mark above the first: z₂ − z₁, metres. Its blocks are the two
// heights; it touches no place in plan, so Marks is empty and Of holds the two marks.
type Level struct{}

// Name of the kind.
func (Level) Name() string { return "level" }

// Parts of its value.
func (Level) Parts(*Obs) []string { return []string{"rise"} }

// Touches the heights of both marks.
func (Level) Touches(o *Obs) []Unknown { return o.Extra }

// Predict gives the rise.
func (Level) Predict(x State, o *Obs, value, jac []float64) {
	value[0] = x[o.At[1]] - x[o.At[0]]
	jac[0], jac[1] = -1, 1
}

// Sigma of a rise, from the book's table of defaults.
func (Level) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("level", "rise", "", 0, 0) }
