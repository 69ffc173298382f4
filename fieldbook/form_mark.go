package fieldbook

// MarkForm is one entry of the block marks.
type MarkForm struct {
	Kind       Choice   `book:"kind" jsonschema:"enum=peg,enum=benchmark,enum=rim,enum=deck,enum=floor,enum=feature"`
	At         []Length `book:"at"`
	Lasting    Text     `book:"lasting"`
	Edge       Length   `book:"edge"`
	Definition Length   `book:"definition"`
	Note       Text     `book:"note"`
}

func (f *MarkForm) build(b *builder, name string) Body {
	m := Mark{Name: name, Kind: f.Kind.text, Lasting: f.Lasting.text, Note: f.Note.text}
	before := len(b.faults)
	m.Edge = b.length(f.Edge, notNegative)
	m.Definition = b.length(f.Definition, notNegative)
	if len(b.faults) == before {
		m.NoEdge = f.Edge.given() && m.Edge == 0
		m.NoDefinition = f.Definition.given() && m.Definition == 0
	}
	if n := len(f.At); n > 0 {
		if n != 2 && n != 3 {
			b.fault(f.At[0].at, "count", "wrong number of coordinates", "two or three")
		}
		for _, l := range f.At {
			m.At = append(m.At, b.length(l, anySign))
		}
	}
	return m
}

func (m Mark) write(w *writer) {
	w.text("kind", m.Kind)
	if len(m.At) > 0 {
		w.lengths("at", m.At)
	}
	w.text("lasting", m.Lasting)
	w.said("edge", m.Edge, m.NoEdge)
	w.said("definition", m.Definition, m.NoDefinition)
	w.text("note", m.Note)
}
