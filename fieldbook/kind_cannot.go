package fieldbook

// CannotWord is the item {cannot: A r12, why: hedge}: what lies between two marks keeps a tape
// from being read there, so that it is never proposed again.
type CannotWord struct{}

// CannotForm is the item as the file writes it.
type CannotForm struct {
	Cannot Pair `book:"cannot" jsonschema:"required"`
	Why    Text `book:"why"`
	Stamp
}

// Name of the item's first key.
func (CannotWord) Name() string { return "cannot" }

// Form of the item.
func (CannotWord) Form() ItemForm { return &CannotForm{} }

func (f *CannotForm) signed() (Stamp, Swap) { return f.Stamp, Swap{} }

func (f *CannotForm) build(b *builder) Body { return Cannot{Marks: b.pair(f.Cannot), Why: f.Why.text} }

func (CannotWord) write(w *writer, body Body) bool {
	c, ok := body.(Cannot)
	if !ok {
		return false
	}
	w.text("cannot", c.Marks[0]+" "+c.Marks[1])
	w.text("why", c.Why)
	return true
}
