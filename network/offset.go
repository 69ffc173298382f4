package network

import (
	"math"

	"brimline/fieldbook"
)

// Offset is baseline and offset: along the direction from the line's first mark to its second,
// and left of it (right is negative). Marks: the mark, then the two of the line.
type Offset struct{}

// Name of the kind.
func (Offset) Name() string { return "offset" }

// Parts of its value.
func (Offset) Parts(*Obs) []string { return []string{"at", "left"} }

// Touches the mark and the two marks of the line.
func (Offset) Touches(o *Obs) []Unknown {
	return []Unknown{Unknown(o.Marks[0]), Unknown(o.Marks[1]), Unknown(o.Marks[2])}
}

// Predict gives both parts; the line is taken along +x where its two marks coincide.
func (Offset) Predict(x State, o *Obs, value, jac []float64) {
	m, p, q := o.At[0], o.At[1], o.At[2]
	dx, dy := x[q]-x[p], x[q+1]-x[p+1]
	l := math.Sqrt(dx*dx + dy*dy)
	ux, uy := 1.0, 0.0
	if l > 0 {
		ux, uy = dx/l, dy/l
	} else {
		l = 1
	}
	ex, ey := x[m]-x[p], x[m+1]-x[p+1]
	at, left := ux*ex+uy*ey, ux*ey-uy*ex
	value[0], value[1] = at, left
	// turning the line by δ moves the parts by (left·δ, −at·δ); δ = n·dq/l with n = (−uy, ux)
	nx, ny := -uy/l, ux/l
	jac[0], jac[1] = ux, uy
	jac[2], jac[3] = -ux-left*nx, -uy-left*ny
	jac[4], jac[5] = left*nx, left*ny
	jac[6], jac[7] = -uy, ux
	jac[8], jac[9] = uy+at*nx, -ux+at*ny
	jac[10], jac[11] = -at*nx, -at*ny
}

// Sigma from the book's table of defaults: along the line it grows with the offset, as the eye's
// right angle does.
func (Offset) Sigma(o *Obs, sd []float64) {
	for k, part := range o.Kind.Parts(o) {
		sd[k] = fieldbook.DefaultSigma("offset", part, "", o.Values[k], math.Abs(o.Values[1]))
	}
}
