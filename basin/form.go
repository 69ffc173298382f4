package basin

import (
	"cmp"
	"slices"

	"brimline/plane"
)

// term is the weight of one input.
type term struct {
	in int
	w  float64
}

// form is a height as a weighted sum of inputs and a constant; each input once, by number.
type form struct {
	terms []term
	c     float64
}

// of is the form of one input.
func of(in int) form { return form{terms: []term{{in, 1}}} }

// up is the form with the constant raised.
func (f form) up(by float64) form { return form{f.terms, f.c + by} }

// mix is Σ weight × form.
func mix(forms []form, weights []float64) form {
	var out form
	for k, f := range forms {
		if weights[k] == 0 {
			continue
		}
		out.c += weights[k] * f.c
		for _, t := range f.terms {
			out.terms = append(out.terms, term{t.in, weights[k] * t.w})
		}
	}
	slices.SortStableFunc(out.terms, func(a, b term) int { return cmp.Compare(a.in, b.in) })
	n := 0
	for _, t := range out.terms {
		if n > 0 && out.terms[n-1].in == t.in {
			out.terms[n-1].w += t.w
		} else {
			out.terms[n] = t
			n++
		}
	}
	out.terms = out.terms[:n]
	return out
}

// between is the form at share t of the way from a to b.
func between(a, b form, t float64) form { return mix([]form{a, b}, []float64{1 - t, t}) }

// input is a number that heights hang on: a height read, or by how much the floor runs on down or up
// beyond the outermost sounding, as a share of what its slope there says.
type input struct {
	z     float64
	index int     // row of the covariance; negative: none
	own   float64 // variance besides
	cause Cause
	floor bool // it is a height of the floor, at the place
	at    plane.Point
	place float64 // standard deviation of each coordinate of the place
	name  string
}

// runOut is the variance of the share of its slope by which the floor goes on beyond the outermost
// sounding: taken as 0, it may be anything from 0 to 1, whose mean square is a third.
const runOut = 1.0 / 3

// height makes an input of a height.
func (b *Basin) height(h Height, c Cause) form {
	b.inputs = append(b.inputs, input{z: h.Z, index: h.Index, cause: c})
	return of(len(b.inputs) - 1)
}

// floorHeight makes an input of a height of the floor.
func (b *Basin) floorHeight(h Height, name string, at plane.Point, place float64) form {
	f := b.height(h, FloorReadings)
	in := &b.inputs[len(b.inputs)-1]
	in.floor, in.name, in.at, in.place = true, name, at, place
	return f
}

// value is what the form comes to.
func (b *Basin) value(f form) float64 {
	z := f.c
	for _, t := range f.terms {
		z += t.w * b.inputs[t.in].z
	}
	return z
}
