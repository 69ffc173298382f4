package fieldbook

// Along is a length taped along a line, from one of its marks to another in the line's own
// direction: {along: r1 r9, line: track, is: 8.420}. With round in the place of line the tape went
// once round the whole loop: see Round.
type Along struct{}

// AlongForm is the item as the file writes it.
type AlongForm struct {
	Along Pair   `book:"along" jsonschema:"required"`
	Line  Name   `book:"line"`
	Round Name   `book:"round"`
	Is    Length `book:"is" jsonschema:"required"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Along) Name() string { return "along" }

// Form of the item.
func (Along) Form() ItemForm { return &AlongForm{} }

// build makes a round of it where it says so.
func (f *AlongForm) build(b *builder) Body {
	ends := b.pair(f.Along)
	r := Reading{Kind: "along", Marks: ends[:], Line: f.Line.text, Values: []Value{b.taped(f.Is)}}
	if f.Line.given() == f.Round.given() {
		b.fault(f.Along.at, "one-of", "nothing says along which line, or two keys do", "line, or round for the whole loop")
	}
	if f.Round.given() {
		r.Kind, r.Line = "round", f.Round.text
	}
	r.Sigma = b.sigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (f *AlongForm) ofLine() Name {
	if f.Round.given() {
		return f.Round
	}
	return f.Line
}

func (Along) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "along" || len(r.Marks) != 2 || len(r.Values) != 1 {
		return false
	}
	w.text("along", r.Marks[0]+" "+r.Marks[1])
	w.text("line", r.Line)
	w.value("is", r.Values[0])
	r.write(w)
	return true
}
