package network

import "brimline/fieldbook"

// Water is the freeboard of a mark: its height less that of a water surface, metres. Readings that
// name the same surface share its height. Marks is empty, Of holds the mark.
type Water struct{}

// Name of the kind.
func (Water) Name() string { return "water" }

// Parts of its value.
func (Water) Parts(*Obs) []string { return []string{"is"} }

// Touches the height of the mark and that of the surface.
func (Water) Touches(o *Obs) []Unknown { return o.Extra }

// Predict gives the freeboard.
func (Water) Predict(x State, o *Obs, value, jac []float64) {
	value[0] = x[o.At[0]] - x[o.At[1]]
	jac[0], jac[1] = 1, -1
}

// Sigma of a freeboard, from the book's table of defaults.
func (Water) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("water", "is", "", 0, 0) }
