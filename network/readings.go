package network

import (
	"math"

	"brimline/fieldbook"
	"brimline/finding"
)

func (g *builder) readings() {
	def := g.definition()
	var owner, sketch, zeroed []string
	for i := range g.book.Readings {
		r := &g.book.Readings[i]
		k, ok := KindNamed(r.Kind)
		if !ok {
			continue
		}
		if _, sizes := k.(Local); sizes {
			continue
		}
		o, ok := g.obs(i, r, k, def)
		if !ok {
			continue
		}
		use, sketched := r.Class != "owner" && r.Class != "drawing" && !r.Struck, r.Class == "drawing" && !r.Struck
		o.Use, o.Sketch = use, sketched
		switch {
		case r.Struck:
		case r.Class == "owner":
			owner = append(owner, r.N)
		case r.Class == "drawing":
			sketch = append(sketch, r.N)
		}
		if t, ok := g.book.Tool(r.Tool); ok && !lengthKind(r.Kind) && r.Kind != "width" && gauged(t) {
			zeroed = append(zeroed, r.N)
		}
		g.n.Obs = append(g.n.Obs, o)
		if half, ok := g.half(i, r, def); ok {
			half.Use, half.Sketch = use && o.Use, sketched
			g.n.Obs = append(g.n.Obs, half)
		}
	}
	if len(g.level) > 0 {
		g.found = append(g.found, finding.Finding{Code: "slope-level", Readings: g.level})
	}
	if len(zeroed) > 0 {
		g.found = append(g.found, finding.Finding{Code: "zero-ties-only", Readings: zeroed})
	}
	if len(owner) > 0 {
		g.found = append(g.found, finding.Finding{Code: "owner-word", Readings: owner})
	}
	if len(sketch) > 0 {
		g.found = append(g.found, finding.Finding{Code: "sketch", Readings: sketch})
	}
}

// gauged says that a tool reads lengths with a zero or a scale.
func gauged(t fieldbook.Tool) bool {
	return t.Zero != 0 || t.Scale != 0 && t.Scale != 1 || t.SolveZero || t.SolveScale
}

// bentBy is the further standard deviation of a tie taped round something, for as long as it is
// longer than predicted, metres: common practice, no source.
const bentBy = 0.05

// dipByEye is how well a dip is seen, as a share of the correction that it makes: common practice, no
// source.
const dipByEye = 0.25

// sag is by how much a tape of a length, its middle dip below its ends, is longer than the straight
// line: 8f²/(3L), the parabola's (C. Ghilani and P. Wolf, Elementary Surveying, 14th edition, on
// taping, from memory).
func sag(dip, length float64) float64 { return 8 * dip * dip / (3 * length) }

// obs numbers one reading; false where its line is not far enough for it to say anything.
func (g *builder) obs(i int, r *fieldbook.Taken, k Kind, def []float64) (Obs, bool) {
	o := Obs{Kind: k, Reading: i, Setup: -1, Free: -1, Flip: r.Flip, Scale: 1, Use: true, Check: r.Check, Computed: r.Computed}
	if g.upright(&o, r); o.Upright && len(o.Extra) < 2 {
		return o, false
	}
	if !o.Upright {
		for _, m := range r.Marks {
			o.Marks = append(o.Marks, g.n.ByName[m])
		}
	}
	if r.Setup != "" && !o.Upright {
		s := g.n.SetupAt[r.Setup]
		o.Setup = int(g.n.SetupBlock(s))
		o.Solve = g.n.Dim(g.n.SetupBlock(s)) == 4
	}
	if r.Bent {
		o.Long = bentBy
	}
	soft, ok := g.tracked(&o, r)
	if !ok {
		return o, false
	}
	g.extra(&o, r)
	parts := len(k.Parts(&o))
	for p := range parts {
		if a, ok := k.(Asserted); ok {
			o.Values = append(o.Values, a.Says())
		} else {
			o.Values = append(o.Values, r.Values[p].Metres)
		}
	}
	o.SD = make([]float64, parts)
	g.sigma(&o, r, def)
	o.SD[0] = math.Hypot(o.SD[0], soft)
	if r.Dip > 0 {
		o.Sag = sag(r.Dip, r.Values[0].Metres)
		o.SD[0] = math.Hypot(o.SD[0], dipByEye*o.Sag)
	}
	g.touch(&o)
	return o, true
}

// touch lays the blocks of a reading out in the state.
func (g *builder) touch(o *Obs) {
	o.Blocks = o.Kind.Touches(o)
	for _, b := range o.Blocks {
		o.At = append(o.At, g.n.Offset[b])
		o.Size += g.n.Dim(b)
	}
	g.n.MostParts, g.n.MostSize = max(g.n.MostParts, len(o.Values)), max(g.n.MostSize, o.Size)
}
