package fieldbook

// Level is the height of one mark above another, read by any means: {level: BM r1, rise: 12 mm}. A
// negative rise is a fall.
type Level struct{}

// LevelForm is the item as the file writes it.
type LevelForm struct {
	Level Pair   `book:"level" jsonschema:"required"`
	Rise  Length `book:"rise" jsonschema:"required"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Level) Name() string { return "level" }

// Form of the item.
func (Level) Form() ItemForm { return &LevelForm{} }

func (f *LevelForm) build(b *builder) Body {
	ends := b.pair(f.Level)
	r := Reading{Kind: "level", Marks: ends[:], Values: []Value{b.part("rise", f.Rise, anySign)}}
	r.Sigma = b.sigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (Level) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "level" || len(r.Marks) != 2 || len(r.Values) != 1 {
		return false
	}
	w.text("level", r.Marks[0]+" "+r.Marks[1])
	w.value("rise", r.Values[0])
	r.write(w)
	return true
}
