package fieldbook

import "strconv"

// SetupForm is one entry of the block setups: words about an instrument's set-up, of seen readings and
// of a staff's alike.
type SetupForm struct {
	Sigma       Length   `book:"sigma"`
	Scale       Choice   `book:"scale" jsonschema:"enum=solve"`
	Collimation Solvable `book:"collimation"`
	Sight       Length   `book:"sight"`
}

// mostCollimation is a level that nobody would take into a garden, millimetres a metre: common
// practice, no source.
const mostCollimation = 10

// build reads a collimation in millimetres for each metre of sight, upward.
func (f *SetupForm) build(b *builder, name string) Body {
	s := Setup{Name: name, Sigma: b.length(f.Sigma, positive), SolveScale: f.Scale.text == solve, Sight: b.length(f.Sight, positive)}
	if s.SolveCollimation = f.Collimation.text == solve; !s.SolveCollimation {
		mm := b.figure(f.Collimation.leaf, anySign)
		if mm > mostCollimation || mm < -mostCollimation {
			b.fault(f.Collimation.at, "too-large", "a collimation of "+f.Collimation.text+" mm a metre", "millimetres a metre of sight, such as 0.05, or solve")
		}
		s.Collimation = thousandth(f.Collimation.text, mm)
	}
	return s
}

// thousandth is the decimal number v, typed as text, with its point moved, so that nothing is rounded
// twice; 0 where it was at fault.
func thousandth(text string, v float64) float64 {
	if v == 0 {
		return 0
	}
	out, err := strconv.ParseFloat(shifted(text, -3), 64)
	if err != nil {
		return 0
	}
	return out
}

func (s Setup) write(w *writer) {
	w.length("sigma", s.Sigma)
	if s.SolveScale {
		w.text("scale", solve)
	}
	if s.SolveCollimation {
		w.text("collimation", solve)
	} else {
		w.thousandths("collimation", s.Collimation)
	}
	w.length("sight", s.Sight)
}
