package fieldbook

// Stamp is what every entry may carry: its lasting name, when, by whom.
type Stamp struct {
	ID   Name   `book:"id"`
	Time Moment `book:"time"`
	By   Text   `book:"by"`
}

// Swap says that an item stands in place of an earlier one, and why.
type Swap struct {
	Replaces Name `book:"replaces"`
	Why      Text `book:"why"`
}

// Common is what every measured reading may carry.
type Common struct {
	_ struct{} `later:"check,bent,computed"`
	Stamp
	Swap
	Sigma  Sigma  `book:"sigma"`
	Tool   Name   `book:"tool"`
	Note   Text   `book:"note"`
	Class  Choice `book:"class" jsonschema:"enum=measured,enum=template,enum=drawing,enum=owner"`
	Source Text   `book:"source"`
}

func (c *Common) signed() (Stamp, Swap) { return c.Stamp, c.Swap }

func (c *Common) tool() Name { return c.Tool }

// fill puts the common keys into a reading whose values stand already.
func (c *Common) fill(b *builder, r Reading) Reading {
	r.Sigma = b.sigmas(c.Sigma, len(r.Values))
	r.Tool, r.Note, r.Class, r.Source = c.Tool.text, c.Note.text, c.Class.text, c.Source.text
	return r
}

func (r Reading) write(w *writer) {
	if len(r.Sigma) == 1 {
		w.length("sigma", r.Sigma[0])
	} else if len(r.Sigma) > 1 {
		w.lengths("sigma", r.Sigma)
	}
	w.text("tool", r.Tool)
	w.text("note", r.Note)
	w.text("class", r.Class)
	w.text("source", r.Source)
}
