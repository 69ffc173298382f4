package network

import (
	"math"

	"brimline/fieldbook"
)

// sigma: the reading's own, else its set-up's or tool's, else the book's rule for the kind, else
// the kind's default; the pointing at each mark that it names is added in squares. A tool's sigma
// is that of lengths and coordinates, and pointing is a length in plan: neither enters an angle or an
// asserted shape, and pointing no height.
func (g *builder) sigma(o *Obs, r *fieldbook.Taken, def []float64) {
	o.Kind.Sigma(o, o.SD)
	strung := r.Kind == "depth" && o.Skip > 0 // where its string puts a sounding: no tool says how well
	measured := !fieldbook.Angular(r.Kind) && !fieldbook.Asserted(r.Kind)
	for k := range o.SD {
		switch {
		case len(r.Sigma) == 1:
			o.SD[k] = r.Sigma[0]
		case k+o.Skip < len(r.Sigma):
			o.SD[k] = r.Sigma[k+o.Skip]
		case strung && r.Class != "drawing":
			o.SD[k] = fieldbook.DefaultSigma("depth", r.Values[k+o.Skip].Part, "", o.Values[k], 0)
		case !measured || !g.byInstrument(o, r, k):
			g.byKind(o, r, k)
		}
		if measured && !o.Upright {
			for _, m := range r.Marks {
				o.SD[k] = math.Hypot(o.SD[k], def[g.n.ByName[m]])
			}
		}
		o.SD[k] = math.Max(o.SD[k], leastSD)
	}
}

// byInstrument takes the set-up's sigma, else the tool's; false where neither says anything.
func (g *builder) byInstrument(o *Obs, r *fieldbook.Taken, k int) bool {
	t, _ := g.book.Tool(r.Tool)
	setup := g.book.Setup(r.Setup).Sigma
	switch {
	case setup > 0:
		o.SD[k] = setup
	case t.Sigma > 0:
		o.SD[k] = math.Hypot(t.Sigma, t.PPM*1e-6*o.Values[k])
	case t.PPM > 0: // says nothing of the reading itself: the kind's default stays
		o.SD[k] = math.Hypot(o.SD[k], t.PPM*1e-6*o.Values[k])
	default:
		return false
	}
	return true
}

// byKind takes the default of a drawing, else the book's rule for the kind; without either the
// kind's own default stays.
func (g *builder) byKind(o *Obs, r *fieldbook.Taken, k int) {
	if r.Class == "drawing" {
		part := o.Kind.Parts(o)[k]
		if r.Kind == "straight" || r.Kind == "arc" {
			part = "across"
		}
		o.SD[k] = fieldbook.DefaultSigma(o.Kind.Name(), part, r.Class, 0, 0)
	} else if rule := g.book.Rules.Sigma[o.Kind.Name()]; rule > 0 {
		o.SD[k] = rule
	}
}

// leastSD keeps a stated sigma of nought from making a weight infinite.
const leastSD = 1e-6
