package fieldbook

// Width is a rule held across an opening: {width: s1 s2, is: 2.438}. It is a tie with a small
// standard deviation of its own; the zero of a tool, which is that of its hook, is not in it.
type Width struct{}

// WidthForm is the item as the file writes it.
type WidthForm struct {
	Width Pair   `book:"width" jsonschema:"required"`
	Is    Length `book:"is" jsonschema:"required"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Width) Name() string { return "width" }

// Form of the item.
func (Width) Form() ItemForm { return &WidthForm{} }

func (f *WidthForm) build(b *builder) Body {
	ends := b.pair(f.Width)
	r := Reading{Kind: "width", Marks: ends[:], Values: []Value{b.taped(f.Is)}}
	r.Sigma = b.sigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (Width) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "width" || len(r.Marks) != 2 || len(r.Values) != 1 {
		return false
	}
	w.text("width", r.Marks[0]+" "+r.Marks[1])
	w.value("is", r.Values[0])
	r.write(w)
	return true
}
