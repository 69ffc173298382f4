package fieldbook

// Bow is the rise of an edge over a chord, read at mid-chord: {bow: r2 r4, is: 0.300, toward:
// deck}. Toward says which way the edge bulges.
type Bow struct{}

// BowForm is the item as the file writes it.
type BowForm struct {
	Bow    Pair   `book:"bow" jsonschema:"required"`
	Is     Length `book:"is" jsonschema:"required"`
	Toward Choice `book:"toward" jsonschema:"enum=deck,enum=water"`
	Sigma  Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Bow) Name() string { return "bow" }

// Form of the item.
func (Bow) Form() ItemForm { return &BowForm{} }

// build takes a rise of 0: an edge may be straight.
func (f *BowForm) build(b *builder) Body {
	ends := b.pair(f.Bow)
	r := Reading{Kind: "bow", Marks: ends[:], Values: []Value{b.part("is", f.Is, notNegative)}, Toward: f.Toward.text}
	r.Sigma = b.sigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (Bow) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "bow" || len(r.Marks) != 2 || len(r.Values) != 1 {
		return false
	}
	w.text("bow", r.Marks[0]+" "+r.Marks[1])
	w.value("is", r.Values[0])
	w.text("toward", r.Toward)
	r.write(w)
	return true
}
