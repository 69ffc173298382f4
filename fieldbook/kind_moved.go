package fieldbook

// MovedWord is the item {moved: B, time: "2026-05-14T10:42:00+02:00", why: dog line}: from then on
// the peg is another point.
type MovedWord struct{}

// MovedForm is the item as the file writes it.
type MovedForm struct {
	Moved Name `book:"moved" jsonschema:"required"`
	Why   Text `book:"why"`
	Stamp
}

// Name of the item's first key.
func (MovedWord) Name() string { return "moved" }

// Form of the item.
func (MovedWord) Form() ItemForm { return &MovedForm{} }

func (f *MovedForm) signed() (Stamp, Swap) { return f.Stamp, Swap{} }

func (f *MovedForm) build(*builder) Body { return Moved{Mark: f.Moved.text, Why: f.Why.text} }

func (MovedWord) write(w *writer, body Body) bool {
	m, ok := body.(Moved)
	if !ok {
		return false
	}
	w.text("moved", m.Mark)
	w.text("why", m.Why)
	return true
}
