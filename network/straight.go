package network

import (
	"math"
	"strconv"

	"brimline/fieldbook"
)

// Straight asserts that marks stand in one line: the distance of each from a free line is 0. The
// line's block is θ, its direction, and ρ, its distance to the left of the first mark.
type Straight struct{}

// Name of the kind.
func (Straight) Name() string { return "straight" }

// Parts are the marks, counted from 1.
func (Straight) Parts(o *Obs) []string { return counted(len(o.Marks)) }

// Says is no distance.
func (Straight) Says() float64 { return 0 }

// Touches the marks and the free line.
func (Straight) Touches(o *Obs) []Unknown { return freely(o) }

// Predict gives n·(p − p₀) − ρ for each mark p, with n to the left of the line.
func (Straight) Predict(x State, o *Obs, value, jac []float64) {
	k := len(o.Marks)
	line := o.At[k]
	uy, ux := math.Sincos(x[line])
	nx, ny := -uy, ux
	w := o.Size
	clear(jac[:k*w])
	first := o.At[0]
	for i, at := range o.At[:k] {
		qx, qy := x[at]-x[first], x[at+1]-x[first+1]
		value[i] = nx*qx + ny*qy - x[line+1]
		j := jac[i*w : (i+1)*w]
		j[2*i], j[2*i+1] = nx, ny
		j[0] -= nx
		j[1] -= ny
		j[2*k], j[2*k+1] = -(ux*qx + uy*qy), -1
	}
}

// Sigma of each mark's distance, from the book's table of defaults.
func (Straight) Sigma(_ *Obs, sd []float64) {
	for k := range sd {
		sd[k] = fieldbook.DefaultSigma("straight", "across", "", 0, 0)
	}
}

// counted is the names of n parts.
func counted(n int) []string {
	var out []string
	for i := range n {
		out = append(out, strconv.Itoa(i+1))
	}
	return out
}

// freely lists all marks of a reading and what it brings along.
func freely(o *Obs) []Unknown {
	var out []Unknown
	for _, m := range o.Marks {
		out = append(out, Unknown(m))
	}
	return append(out, o.Extra...)
}
