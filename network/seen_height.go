package network

import "brimline/fieldbook"

// SeenHeight is the third number of a seen mark: scale·(z of the mark − z of the instrument's own
// zero). It is the other half of a Seen and no member of Kinds. Marks is empty, Of holds the mark.
type SeenHeight struct{}

// Halves are the kinds of which a reading of another kind makes an observation beside its own.
var Halves = []Kind{SeenHeight{}}

// Name of the reading that it is half of.
func (SeenHeight) Name() string { return "seen" }

// Parts of its value.
func (SeenHeight) Parts(*Obs) []string { return []string{"z"} }

// Touches the height of the mark, that of the instrument, and the set-up where its scale is solved.
func (SeenHeight) Touches(o *Obs) []Unknown {
	if o.Solve {
		return []Unknown{o.Extra[0], o.Extra[1], Unknown(o.Setup)}
	}
	return o.Extra
}

// Predict gives the height in the instrument's frame.
func (SeenHeight) Predict(x State, o *Obs, value, jac []float64) {
	clear(jac)
	d, k := x[o.At[0]]-x[o.At[1]], 1.0
	if o.Solve {
		k = x[o.At[2]+3]
		jac[5] = d
	}
	value[0] = k * d
	jac[0], jac[1] = k, -k
}

// Sigma of a coordinate, from the book's table of defaults.
func (SeenHeight) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("seen", "z", "", 0, 0) }
