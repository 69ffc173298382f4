package fieldbook

// Tie is a length taped between two marks: {tie: A r1, is: 5.214}.
type Tie struct{}

// TieForm is the item as the file writes it. With slope the tape was not held level: the length is
// that in space, and the heights of both marks matter.
type TieForm struct {
	Tie   Pair   `book:"tie" jsonschema:"required"`
	Is    Length `book:"is" jsonschema:"required"`
	Slope Flag   `book:"slope"`
	Dip   Length `book:"dip"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Tie) Name() string { return "tie" }

// Form of the item.
func (Tie) Form() ItemForm { return &TieForm{} }

func (f *TieForm) build(b *builder) Body {
	ends := b.pair(f.Tie)
	r := Reading{Kind: "tie", Marks: ends[:], Values: []Value{b.taped(f.Is)}}
	r.Sigma = b.sigmas(f.Sigma, 1)
	r.Slope = f.Slope.yes()
	if f.Dip.given() {
		r.Dip = b.length(f.Dip, positive)
		if is := r.Values[0].Metres; is > 0 && r.Dip > is/4 {
			b.fault(f.Dip.at, "too-large", "a dip of more than a quarter of the length", "how far the middle of the tape hangs below its ends")
		}
	}
	return f.fill(b, r)
}

// taped is a length between two marks: more than nothing.
func (b *builder) taped(is Length) Value {
	before := len(b.faults)
	v := b.part("is", is, notNegative)
	if is.given() && v.Metres == 0 && len(b.faults) == before {
		b.fault(is.at, "zero-length", "a tie of length zero", "the length read")
	}
	return v
}

func (Tie) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "tie" || len(r.Marks) != 2 || len(r.Values) != 1 {
		return false
	}
	w.text("tie", r.Marks[0]+" "+r.Marks[1])
	w.value("is", r.Values[0])
	w.flag("slope", r.Slope)
	if r.Dip > 0 {
		w.length("dip", r.Dip)
	}
	r.write(w)
	return true
}
