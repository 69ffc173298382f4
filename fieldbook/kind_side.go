package fieldbook

// SideWord is the item {side: d7, of: A B, hand: right}: seen, not measured.
type SideWord struct{}

// SideForm is the item as the file writes it.
type SideForm struct {
	Side Name   `book:"side" jsonschema:"required"`
	Of   Pair   `book:"of" jsonschema:"required"`
	Hand Choice `book:"hand" jsonschema:"required,enum=left,enum=right"`
	Note Text   `book:"note"`
	Stamp
	Swap
}

// Name of the item's first key.
func (SideWord) Name() string { return "side" }

// Form of the item.
func (SideWord) Form() ItemForm { return &SideForm{} }

func (f *SideForm) signed() (Stamp, Swap) { return f.Stamp, f.Swap }

func (f *SideForm) build(b *builder) Body {
	line := b.pair(f.Of)
	b.apart(f.Side, line)
	return Side{Mark: f.Side.text, Line: line, Left: f.Hand.text == "left", Note: f.Note.text}
}

func (SideWord) write(w *writer, body Body) bool {
	s, ok := body.(Side)
	if !ok {
		return false
	}
	w.text("side", s.Mark)
	w.text("of", s.Line[0]+" "+s.Line[1])
	hand := "right"
	if s.Left {
		hand = "left"
	}
	w.text("hand", hand)
	w.text("note", s.Note)
	return true
}
