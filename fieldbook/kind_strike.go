package fieldbook

// StrikeWord is the item {strike: base, why: wrong peg}: it takes an entry out of force, and
// does not erase it.
type StrikeWord struct{}

// StrikeForm is the item as the file writes it. It names an id, or a number of the readings.
type StrikeForm struct {
	Strike Name `book:"strike" jsonschema:"required"`
	Why    Text `book:"why"`
	Stamp
}

// Name of the item's first key.
func (StrikeWord) Name() string { return "strike" }

// Form of the item.
func (StrikeWord) Form() ItemForm { return &StrikeForm{} }

func (f *StrikeForm) signed() (Stamp, Swap) { return f.Stamp, Swap{} }

// build leaves the id as typed: what it names is told when all entries are there.
func (f *StrikeForm) build(*builder) Body {
	return Strike{Of: ID(f.Strike.text), Reason: f.Why.text}
}

func (StrikeWord) write(w *writer, body Body) bool {
	s, ok := body.(Strike)
	if !ok {
		return false
	}
	w.text("strike", string(s.Of))
	w.text("why", s.Reason)
	return true
}
