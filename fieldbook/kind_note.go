package fieldbook

// NoteWord is the item {note: owner keeps the rail, of: r7}.
type NoteWord struct{}

// NoteForm is the item as the file writes it.
type NoteForm struct {
	Note Text `book:"note" jsonschema:"required"`
	Of   Name `book:"of"`
	Stamp
	Swap
}

// Name of the item's first key.
func (NoteWord) Name() string { return "note" }

// Form of the item.
func (NoteWord) Form() ItemForm { return &NoteForm{} }

func (f *NoteForm) signed() (Stamp, Swap) { return f.Stamp, f.Swap }

func (f *NoteForm) about() Name { return f.Of }

func (f *NoteForm) build(b *builder) Body {
	if f.Note.given() && f.Note.text == "" {
		b.fault(f.Note.at, "empty", "a note without words", f.Note.expects())
	}
	return Remark{Text: f.Note.text, Of: f.Of.text}
}

func (NoteWord) write(w *writer, body Body) bool {
	r, ok := body.(Remark)
	if !ok {
		return false
	}
	w.text("note", r.Text)
	w.text("of", r.Of)
	return true
}
