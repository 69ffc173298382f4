package fieldbook

// Seen is a mark's coordinates in an instrument's own level frame:
// {seen: r9, setup: T1, at: [3.112, 8.904]}.
type Seen struct{}

// SeenForm is the item as the file writes it: two or three coordinates.
type SeenForm struct {
	Seen  Name     `book:"seen" jsonschema:"required"`
	Setup Name     `book:"setup" jsonschema:"required"`
	At    []Length `book:"at" jsonschema:"required"`
	Flip  Flag     `book:"flip"`
	Sigma Sigma    `book:"sigma"`
	Common
}

// Name of the kind.
func (Seen) Name() string { return "seen" }

// Form of the item.
func (Seen) Form() ItemForm { return &SeenForm{} }

func (f *SeenForm) build(b *builder) Body {
	r := Reading{Kind: "seen", Marks: []string{f.Seen.text}, Setup: f.Setup.text, Flip: f.Flip.yes()}
	if n := len(f.At); f.At != nil && n != 2 && n != 3 {
		at := f.Seen.at
		if n > 0 {
			at = f.At[0].at
		}
		b.fault(at, "count", "wrong number of coordinates", "two or three")
		return r
	}
	for i, l := range f.At {
		r.Values = append(r.Values, b.part([]string{"x", "y", "z"}[i], l, anySign))
	}
	r.Sigma = b.sigmas(f.Sigma, len(r.Values))
	return f.fill(b, r)
}

func (Seen) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "seen" || len(r.Marks) != 1 || len(r.Values) < 2 {
		return false
	}
	w.text("seen", r.Marks[0])
	w.text("setup", r.Setup)
	w.values("at", r.Values)
	w.flag("flip", r.Flip)
	r.write(w)
	return true
}
