package network

import "brimline/fieldbook"

// Staff is a staff on a mark read from a level: the height of the line of sight less that of the mark,
// and where the line is not quite level its tilt times the length of sight. One line of sight a
// set-up; the tilt (collimation, radians, + upward) is a figure of the set-up, already in Zero, or an
// unknown of the instrument. Marks is empty, Of holds the mark.
type Staff struct{}

// Name of the kind.
func (Staff) Name() string { return "staff" }

// Parts of its value.
func (Staff) Parts(*Obs) []string { return []string{"is"} }

// Touches the line of sight, the height of the mark, and the collimation where it is solved.
func (Staff) Touches(o *Obs) []Unknown { return o.Extra }

// Predict gives the reading.
func (Staff) Predict(x State, o *Obs, value, jac []float64) {
	value[0] = x[o.At[0]] - x[o.At[1]] + o.Zero
	jac[0], jac[1] = 1, -1
	if len(o.At) > 2 {
		value[0] += x[o.At[2]] * o.Sight
		jac[2] = o.Sight
	}
}

// Sigma of a staff reading, from the book's table of defaults.
func (Staff) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("staff", "is", "", 0, 0) }
