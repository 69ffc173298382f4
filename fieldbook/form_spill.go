package fieldbook

// SpillItem is one of the list spills.
type SpillItem struct {
	located
	Name Text `book:"name" jsonschema:"required"`
	SpillForm
}

// SpillForm is an edge over which water leaves: {kind: vanishing, lip: weir, drop: 1.60, basin: catch}.
type SpillForm struct {
	Kind  Choice `book:"kind" jsonschema:"enum=vanishing,enum=spillway,enum=other"`
	Lip   Name   `book:"lip" jsonschema:"required"`
	Drop  Length `book:"drop"`
	Basin Name   `book:"basin"`
}

func (f *SpillForm) build(b *builder, name string) Body {
	if f.Lip.given() && f.Lip.text == f.Basin.text {
		b.fault(f.Basin.at, "self", "the basin of "+quoted(name)+" is its lip", "the line round the basin")
	}
	return Spill{Name: name, Kind: f.Kind.text, Lip: f.Lip.text, Drop: b.length(f.Drop, positive), Basin: f.Basin.text}
}

func (s Spill) write(w *writer) {
	w.text("kind", s.Kind)
	w.text("lip", s.Lip)
	w.length("drop", s.Drop)
	w.text("basin", s.Basin)
}

func (f *SpillForm) lines() []Name { return []Name{f.Lip, f.Basin} }
