package fieldbook

// Tie is a length taped between two marks: {tie: A r1, is: 5.214}.
type Tie struct{}

// TieForm is the item as the file writes it. Sloping and sagging tapes belong to a later stage.
type TieForm struct {
	_   struct{} `later:"slope,dip"`
	Tie Pair     `book:"tie" jsonschema:"required"`
	Is  Length   `book:"is" jsonschema:"required"`
	Common
}

// Name of the kind.
func (Tie) Name() string { return "tie" }

// Form of the item.
func (Tie) Form() ItemForm { return &TieForm{} }

func (f *TieForm) build(b *builder) Body {
	ends := b.pair(f.Tie)
	before := len(b.faults)
	is := b.part("is", f.Is, notNegative)
	if f.Is.given() && is.Metres == 0 && len(b.faults) == before {
		b.fault(f.Is.at, "zero-length", "a tie of length zero", "the length read")
	}
	r := Reading{Kind: "tie", Marks: ends[:], Values: []Value{is}}
	return f.fill(b, r)
}

func (Tie) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "tie" || len(r.Marks) != 2 || len(r.Values) != 1 {
		return false
	}
	w.text("tie", r.Marks[0]+" "+r.Marks[1])
	w.value("is", r.Values[0])
	r.write(w)
	return true
}
