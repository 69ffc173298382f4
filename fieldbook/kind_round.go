package fieldbook

// Round is the length of a whole closed line, taped along it: {round: track, is: 28.310}. Said with
// along, its marks tell where the tape began and was read; the length is that of the loop.
type Round struct{}

// RoundForm is the item as the file writes it.
type RoundForm struct {
	Round Name   `book:"round" jsonschema:"required"`
	Is    Length `book:"is" jsonschema:"required"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Round) Name() string { return "round" }

// Form of the item.
func (Round) Form() ItemForm { return &RoundForm{} }

func (f *RoundForm) build(b *builder) Body {
	r := Reading{Kind: "round", Line: f.Round.text, Values: []Value{b.taped(f.Is)}}
	r.Sigma = b.sigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (f *RoundForm) ofLine() Name { return f.Round }

func (Round) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "round" || len(r.Values) != 1 {
		return false
	}
	if len(r.Marks) == 2 {
		w.text("along", r.Marks[0]+" "+r.Marks[1])
	}
	w.text("round", r.Line)
	w.value("is", r.Values[0])
	r.write(w)
	return true
}
