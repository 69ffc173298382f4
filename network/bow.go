package network

import (
	"math"

	"brimline/fieldbook"
)

// Bow is the rise of an edge over a chord at mid-chord: scale·rise + zero. The rise is an unknown
// of its own, shared by every bow of the chord; where a line's arc joins the ends of the chord
// over further marks, it is that of the arc through the ends and the middle one of these. Marks:
// the ends of the chord, and that mark.
type Bow struct{}

// Name of the kind.
func (Bow) Name() string { return "bow" }

// Parts of its value.
func (Bow) Parts(*Obs) []string { return []string{"is"} }

// Touches the rise or the three marks, and the tool where it is solved.
func (Bow) Touches(o *Obs) []Unknown {
	if len(o.Marks) == 2 {
		return o.Extra
	}
	return freely(o)
}

// Predict gives the rise, on either side of the chord.
func (Bow) Predict(x State, o *Obs, value, jac []float64) {
	zero, scale := o.gauge(x)
	if len(o.Marks) == 2 {
		rise := x[o.At[0]]
		value[0] = scale*rise + zero
		jac[0] = scale
		o.gaugeJac(rise, jac[1:])
		return
	}
	rise := riseOf(x, o.At, jac)
	value[0] = scale*rise + zero
	for k := range jac[:6] {
		jac[k] *= scale
	}
	o.gaugeJac(rise, jac[6:])
}

// riseOf is that of the arc from a over m to b (offsets a, b, m), with its derivatives: with chord
// c and φ, the turn at m from a–m to m–b, which is half the sweep, it is c/2·tan(φ/2).
func riseOf(x State, at []int, jac []float64) float64 {
	a, b, m := at[0], at[1], at[2]
	dx, dy := x[b]-x[a], x[b+1]-x[a+1]
	c := math.Sqrt(dx*dx + dy*dy)
	ux, uy := 1.0, 0.0
	if c > 0 {
		ux, uy = dx/c, dy/c
	}
	before, px, py := direction(x, a, m)
	after, qx, qy := direction(x, m, b)
	phi, hand := math.Remainder(after-before, 2*math.Pi), 1.0
	if phi < 0 {
		phi, hand = -phi, -1
	}
	t := math.Min(math.Tan(phi/2), mostRise)
	g := hand * c / 4 * (1 + t*t)
	jac[0], jac[1] = -t/2*ux+g*px, -t/2*uy+g*py
	jac[2], jac[3] = t/2*ux+g*qx, t/2*uy+g*qy
	jac[4], jac[5] = -g*(px+qx), -g*(py+qy)
	return c / 2 * t
}

// mostRise keeps the rise finite where the middle mark coincides with an end: as a share of half
// the chord.
const mostRise = 1e4

// Sigma of a rise read with a rule, from the book's table of defaults.
func (Bow) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("bow", "is", "", 0, 0) }
