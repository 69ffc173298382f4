package network

import (
	"math"

	"brimline/fieldbook"
)

// Seen is a mark's place in an instrument's own frame: scale·R(−turn)·(mark − set-up), with y
// the other way round where the instrument's y points downward in plan.
type Seen struct{}

// Name of the kind.
func (Seen) Name() string { return "seen" }

// Parts of its value; a height is not used in plan.
func (Seen) Parts(*Obs) []string { return []string{"x", "y"} }

// Touches the mark and the set-up.
func (Seen) Touches(o *Obs) []Unknown { return []Unknown{Unknown(o.Marks[0]), Unknown(o.Setup)} }

// Predict gives both coordinates. The set-up's block is x, y, turn and, when solved, scale.
func (Seen) Predict(x State, o *Obs, value, jac []float64) {
	m, p := o.At[0], o.At[1]
	s, c := math.Sincos(x[p+2])
	k := 1.0
	if o.Solve {
		k = x[p+3]
	}
	f := 1.0
	if o.Flip {
		f = -1
	}
	dx, dy := x[m]-x[p], x[m+1]-x[p+1]
	lx, ly := c*dx+s*dy, -s*dx+c*dy
	value[0], value[1] = k*lx, f*k*ly
	w := o.Size
	jac[0], jac[1], jac[2], jac[3], jac[4] = k*c, k*s, -k*c, -k*s, k*ly
	r := jac[w:]
	r[0], r[1], r[2], r[3], r[4] = -f*k*s, f*k*c, f*k*s, -f*k*c, -f*k*lx
	if o.Solve {
		jac[5], r[5] = lx, f*ly
	}
}

// Sigma of a coordinate, from the book's table of defaults.
func (Seen) Sigma(o *Obs, sd []float64) {
	for k, part := range o.Kind.Parts(o) {
		sd[k] = fieldbook.DefaultSigma("seen", part, "", 0, 0)
	}
}
