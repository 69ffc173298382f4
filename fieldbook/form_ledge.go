package fieldbook

// LedgeItem is one of the list ledges.
type LedgeItem struct {
	located
	Name Text `book:"name" jsonschema:"required"`
	LedgeForm
}

// LedgeForm is a bench or a shelf: {kind: bench, runs: [{arc: [b1, b2, b3]}], below: w1, is: 0.45}.
type LedgeForm struct {
	Kind Choice    `book:"kind" jsonschema:"enum=bench,enum=shelf,enum=swim-out,enum=rest,enum=other"`
	Runs []RunForm `book:"runs" jsonschema:"required"`
	DownForm
}

func (f *LedgeForm) build(b *builder, name string) Body {
	return Ledge{Name: name, Kind: f.Kind.text, Runs: b.edge(b.here, f.Runs, "ledge "+quoted(name)), Down: f.down(b, "a ledge")}
}

func (l Ledge) write(w *writer) {
	w.text("kind", l.Kind)
	w.runs(l.Runs)
	l.Down.write(w)
}
