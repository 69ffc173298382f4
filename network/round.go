package network

import "brimline/fieldbook"

// Round is the length of a whole closed line, or of a line derived from it, taped along it; see
// Along. Marks: those said with it.
type Round struct{}

// Name of the kind.
func (Round) Name() string { return "round" }

// Parts of its value.
func (Round) Parts(*Obs) []string { return []string{"is"} }

// Touches the marks of the line, rises of arcs without inner marks, and the tool where it is solved.
func (Round) Touches(o *Obs) []Unknown { return o.tracks() }

// Predict gives the length of the loop.
func (Round) Predict(x State, o *Obs, value, jac []float64) { Along{}.Predict(x, o, value, jac) }

// Sigma grows with the length of the tape, from the book's table of defaults.
func (Round) Sigma(o *Obs, sd []float64) {
	sd[0] = fieldbook.DefaultSigma("round", "is", "", o.Values[0], 0)
}
