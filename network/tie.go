package network

import (
	"math"

	"brimline/fieldbook"
)

// Tie is a level distance between two marks: scale·|b − a| + zero, where zero and scale are the
// tool's, given or unknown. A sloping tie, both of whose marks have heights, is that in space.
type Tie struct{}

// Name of the kind.
func (Tie) Name() string { return "tie" }

// Parts of its value.
func (Tie) Parts(*Obs) []string { return []string{"is"} }

// Touches the two marks, their heights where it slopes, and the tool where it is solved.
func (Tie) Touches(o *Obs) []Unknown {
	return append([]Unknown{Unknown(o.Marks[0]), Unknown(o.Marks[1])}, o.Extra...)
}

// Predict gives the distance; the direction from a to b is taken as +x where they coincide.
func (Tie) Predict(x State, o *Obs, value, jac []float64) {
	if o.Slope {
		o.slopePredict(x, value, jac)
		return
	}
	a, b := o.At[0], o.At[1]
	dx, dy := x[b]-x[a], x[b+1]-x[a+1]
	d := math.Sqrt(dx*dx + dy*dy)
	ux, uy := 1.0, 0.0
	if d > 0 {
		ux, uy = dx/d, dy/d
	}
	s := o.Scale
	if o.SolveZero || o.SolveScale {
		var zero float64
		zero, s = o.gauge(x)
		value[0] = s*d + zero + o.Sag
		o.gaugeJac(d, jac[4:])
	} else {
		value[0] = s*d + o.Zero + o.Sag
	}
	jac[0], jac[1], jac[2], jac[3] = -s*ux, -s*uy, s*ux, s*uy
}

// Curve adds the second derivatives: of a distance (I − u·uᵀ)/d, and of scale times distance u.
func (Tie) Curve(x State, o *Obs, f, hess []float64) {
	if o.Slope {
		o.slopeCurve(x, f, hess)
		return
	}
	a, b := o.At[0], o.At[1]
	dx, dy := x[b]-x[a], x[b+1]-x[a+1]
	d2 := dx*dx + dy*dy
	if d2 < 1e-6 {
		return
	}
	d := math.Sqrt(d2)
	_, s := o.gauge(x)
	g := f[0] * s / (d2 * d)
	w := o.Size
	xx, xy, yy := g*dy*dy, -g*dx*dy, g*dx*dx
	for r := 0; r < 4; r += 2 {
		for c := 0; c < 4; c += 2 {
			sign := 1.0
			if r != c {
				sign = -1
			}
			hess[r*w+c] += sign * xx
			hess[r*w+c+1] += sign * xy
			hess[(r+1)*w+c] += sign * xy
			hess[(r+1)*w+c+1] += sign * yy
		}
	}
	if o.SolveScale {
		last := w - 1 // the scale is the last scalar touched
		for c, u := range [4]float64{-dx / d, -dy / d, dx / d, dy / d} {
			hess[c*w+last] += f[0] * u
			hess[last*w+c] += f[0] * u
		}
	}
}

// Sigma of a hand-pulled tape between two marks, from the book's table of defaults.
func (Tie) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("tie", "is", "", 0, 0) }
