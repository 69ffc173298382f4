package fieldbook

// RaisedItem is one of the list raised.
type RaisedItem struct {
	located
	Name Text `book:"name" jsonschema:"required"`
	RaisedForm
}

// RaisedForm is a raised wall: {foot: nfoot, top: ntop, cap: 40 mm, plumb: true}. Its photo belongs to
// a later stage.
type RaisedForm struct {
	_     struct{} `later:"photo"`
	Foot  Name     `book:"foot" jsonschema:"required"`
	Top   Name     `book:"top" jsonschema:"required"`
	Cap   Length   `book:"cap"`
	Plumb Flag     `book:"plumb"`
}

func (f *RaisedForm) build(b *builder, name string) Body {
	if f.Foot.given() && f.Foot.text == f.Top.text {
		b.fault(f.Top.at, "self", "the top of "+quoted(name)+" is its foot", "the line along its top")
	}
	return Raised{Name: name, Foot: f.Foot.text, Top: f.Top.text, Cap: b.length(f.Cap, positive), Plumb: f.Plumb.yes()}
}

func (r Raised) write(w *writer) {
	w.text("foot", r.Foot)
	w.text("top", r.Top)
	w.length("cap", r.Cap)
	w.flag("plumb", r.Plumb)
}

func (f *RaisedForm) lines() []Name { return []Name{f.Foot, f.Top} }
