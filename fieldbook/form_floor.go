package fieldbook

import "strconv"

// FloorForm is the block floor.
type FloorForm struct {
	located
	Breaks [][]Name   `book:"breaks"`
	Pad    []Name     `book:"pad"`
	Toe    []Name     `book:"toe"`
	Coves  []CoveForm `book:"coves"`
}

// CoveForm is one of its coves: {from: r1, to: r9, line: rim, shape: round, size: 150 mm}. Without
// from and to it goes all along the line.
type CoveForm struct {
	From  Name   `book:"from"`
	To    Name   `book:"to"`
	Line  Name   `book:"line" jsonschema:"required"`
	Shape Choice `book:"shape" jsonschema:"enum=round,enum=bevel"`
	Size  Length `book:"size" jsonschema:"required"`
}

func (f *FloorForm) build(b *builder, _ string) Body {
	var out Floor
	for _, br := range f.Breaks {
		out.Breaks = append(out.Breaks, b.chain(br, 2, "a break"))
	}
	if f.Pad != nil {
		out.Pad = b.chain(f.Pad, 3, "a pad")
	}
	if f.Toe != nil {
		out.Toe = b.chain(f.Toe, 2, "a toe")
	}
	for i := range f.Coves {
		out.Coves = append(out.Coves, f.Coves[i].cove(b))
	}
	return out
}

// chain is marks in a row, at least least of them, each once.
func (b *builder) chain(marks []Name, least int, what string) []string {
	at := b.here
	if len(marks) > 0 {
		at = marks[0].at
	}
	if len(marks) < least {
		b.fault(at, "count", what+" of too few marks: "+strconv.Itoa(len(marks)), "at least "+strconv.Itoa(least))
	}
	out := texts(marks)
	for i := range out {
		if among(out[i], out[:i]) {
			b.fault(marks[i].at, "self", quoted(out[i])+" stands here twice", "each mark once")
		}
	}
	return out
}

func (f *CoveForm) cove(b *builder) Cove {
	c := Cove{Line: f.Line.text, From: f.From.text, To: f.To.text, Shape: f.Shape.text, Size: b.length(f.Size, positive)}
	if c.Shape == "" {
		c.Shape = "round"
	}
	switch {
	case f.From.given() != f.To.given():
		b.fault(f.Line.at, "missing-key", "a cove with one end", "from and to, or neither where it goes all along the line")
	case f.From.given() && c.From == c.To:
		b.fault(f.To.at, "self", "a cove from "+quoted(c.From)+" to itself", "neither from nor to where it goes all along the line")
	}
	return c
}

func (f Floor) write(w *writer) {
	if len(f.Breaks) > 0 {
		w.openList("breaks")
		for _, br := range f.Breaks {
			w.items(br)
		}
		w.closeList()
	}
	w.names("pad", f.Pad)
	w.names("toe", f.Toe)
	if len(f.Coves) == 0 {
		return
	}
	w.openList("coves")
	for _, c := range f.Coves {
		w.item()
		w.text("from", c.From)
		w.text("to", c.To)
		w.text("line", c.Line)
		w.text("shape", c.Shape)
		w.length("size", c.Size)
		w.close()
	}
	w.closeList()
}
