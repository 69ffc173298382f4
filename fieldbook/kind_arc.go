package fieldbook

// Arc is marks that are said to stand on one circle: {arc: r2 r3 r4 r5, sigma: 5 mm}. Sigma is that of each mark's
// distance from it.
type Arc struct{}

// ArcForm is the item as the file writes it.
type ArcForm struct {
	Arc   Row   `book:"arc" jsonschema:"required"`
	Sigma Sigma `book:"sigma"`
	Common
}

// Name of the kind.
func (Arc) Name() string { return "arc" }

// Form of the item.
func (Arc) Form() ItemForm { return &ArcForm{} }

func (f *ArcForm) build(b *builder) Body {
	r := Reading{Kind: "arc", Marks: b.row(f.Arc, 4, "four marks or more: three are always on a circle")}
	r.Sigma = b.sigmas(f.Sigma, len(r.Marks))
	return f.fill(b, r)
}

func (Arc) write(w *writer, body Body) bool { return w.asserted("arc", 4, body) }
