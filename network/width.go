package network

import "brimline/fieldbook"

// Width is a rule across an opening: the level distance between two marks, without a tool's zero or
// scale.
type Width struct{}

// Name of the kind.
func (Width) Name() string { return "width" }

// Parts of its value.
func (Width) Parts(*Obs) []string { return []string{"is"} }

// Touches the two marks.
func (Width) Touches(o *Obs) []Unknown { return Tie{}.Touches(o) }

// Predict gives the distance.
func (Width) Predict(x State, o *Obs, value, jac []float64) { Tie{}.Predict(x, o, value, jac) }

// Curve adds the second derivatives of a distance.
func (Width) Curve(x State, o *Obs, f, hess []float64) { Tie{}.Curve(x, o, f, hess) }

// Sigma of a rule, from the book's table of defaults.
func (Width) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("width", "is", "", 0, 0) }
