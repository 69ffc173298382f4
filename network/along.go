package network

import "brimline/fieldbook"

// Along is a length taped along a line between two of its marks, in the line's own direction, or
// along a line derived from it: scale·length + zero. A straight runs from mark to mark, an arc
// through its end marks with the sweep that its inner marks tell (see halfSweep), a curve as
// plane.Fair draws it; a run of any kind as a curve until its kind is found. Marks: the ends of the
// stretch.
type Along struct{}

// Name of the kind.
func (Along) Name() string { return "along" }

// Parts of its value.
func (Along) Parts(*Obs) []string { return []string{"is"} }

// Touches the marks that bear on the stretch, rises of arcs without inner marks, and the tool where
// it is solved.
func (Along) Touches(o *Obs) []Unknown { return o.tracks() }

// Predict gives the length of the stretch.
func (Along) Predict(x State, o *Obs, value, jac []float64) {
	clear(jac)
	tr := newTrace(o, x)
	l := tr.taped()
	tr.pull(jac)
	o.gauged(x, l, value, jac)
}

// Sigma grows with the length of the tape, from the book's table of defaults.
func (Along) Sigma(o *Obs, sd []float64) {
	sd[0] = fieldbook.DefaultSigma("along", "is", "", o.Values[0], 0)
}

// tracks lists all marks that bear on a reading of a line, and what it brings along.
func (o *Obs) tracks() []Unknown {
	var out []Unknown
	for _, m := range o.Track.Marks {
		out = append(out, Unknown(m))
	}
	return append(out, o.Extra...)
}

// gauged turns a true length l and its derivatives into what the tool reads.
func (o *Obs) gauged(x State, l float64, value, jac []float64) {
	zero, scale := o.gauge(x)
	tool := o.Size
	if o.SolveZero {
		tool--
	}
	if o.SolveScale {
		tool--
	}
	for k := range jac[:tool] {
		jac[k] *= scale
	}
	value[0] = scale*l + zero
	o.gaugeJac(l, jac[tool:])
}
