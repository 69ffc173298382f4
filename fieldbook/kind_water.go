package fieldbook

// Water is how far a water surface lies under a mark: {water: w1, under: r1, is: 0.152}. The same
// name is the same surface, which is level.
type Water struct{}

// WaterForm is the item as the file writes it.
type WaterForm struct {
	Water Name   `book:"water" jsonschema:"required"`
	Under Name   `book:"under" jsonschema:"required"`
	Is    Length `book:"is" jsonschema:"required"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Water) Name() string { return "water" }

// Form of the item.
func (Water) Form() ItemForm { return &WaterForm{} }

// build takes a distance of 0: the water may stand at the mark.
func (f *WaterForm) build(b *builder) Body {
	r := Reading{Kind: "water", Marks: []string{f.Under.text}, Water: f.Water.text, Values: []Value{b.part("is", f.Is, notNegative)}}
	if f.Under.given() && f.Under.text == f.Water.text {
		b.fault(f.Under.at, "self", quoted(r.Water)+" under itself", "the mark that the surface lies under")
	}
	r.Sigma = b.sigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (Water) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "water" || len(r.Marks) != 1 || len(r.Values) != 1 {
		return false
	}
	w.text("water", r.Water)
	w.text("under", r.Marks[0])
	w.value("is", r.Values[0])
	r.write(w)
	return true
}
