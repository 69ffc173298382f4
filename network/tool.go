package network

// gauge is the zero and the scale that a length is read with: the tool's figures, or the unknowns
// where they are solved. The tool's block is the last that the reading touches, its zero first.
func (o *Obs) gauge(x State) (zero, scale float64) {
	zero, scale = o.Zero, o.Scale
	if !o.SolveZero && !o.SolveScale {
		return zero, scale
	}
	at := o.At[len(o.At)-1]
	if o.SolveZero {
		zero = x[at]
		at++
	}
	if o.SolveScale {
		scale = x[at]
	}
	return zero, scale
}

// gaugeJac fills the derivatives of scale·d + zero by the tool's unknowns.
func (o *Obs) gaugeJac(d float64, jac []float64) {
	if o.SolveZero {
		jac[0] = 1
		jac = jac[1:]
	}
	if o.SolveScale {
		jac[0] = d
	}
}
