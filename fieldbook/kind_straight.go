package fieldbook

// Straight is marks that are said to stand in one line: {straight: r1 r2 r3, sigma: 5 mm}. Sigma is that of each mark's
// distance from it.
type Straight struct{}

// StraightForm is the item as the file writes it.
type StraightForm struct {
	Straight Row   `book:"straight" jsonschema:"required"`
	Sigma    Sigma `book:"sigma"`
	Common
}

// Name of the kind.
func (Straight) Name() string { return "straight" }

// Form of the item.
func (Straight) Form() ItemForm { return &StraightForm{} }

func (f *StraightForm) build(b *builder) Body {
	r := Reading{Kind: "straight", Marks: b.row(f.Straight, 3, "three marks or more: two are always in line")}
	r.Sigma = b.sigmas(f.Sigma, len(r.Marks))
	return f.fill(b, r)
}

func (Straight) write(w *writer, body Body) bool { return w.asserted("straight", 3, body) }
