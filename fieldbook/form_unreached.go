package fieldbook

import "slices"

// UnreachedForm is one entry of the block unreached: {meet: [[r11, r12], [r13, r1]], round: 150 mm}.
type UnreachedForm struct {
	Meet  [][]Name `book:"meet" jsonschema:"required"`
	Round Length   `book:"round"`
	Like  []Name   `book:"like"`
	Sigma Length   `book:"sigma"`
}

func (f *UnreachedForm) build(b *builder, name string) Body {
	c := Corner{Name: name, Like: texts(f.Like)}
	c.Round = b.length(f.Round, notNegative)
	c.Sigma = b.length(f.Sigma, positive)
	if f.Round.given() && len(f.Like) > 0 {
		b.fault(f.Round.at, "one-of", "the rounding of "+quoted(name)+" is said twice", "round or like")
	}
	for _, l := range f.Like {
		if l.text == name {
			b.fault(l.at, "self", quoted(name)+" like itself", "another corner")
		}
	}
	if f.Meet == nil {
		return c
	}
	if len(f.Meet) != 2 {
		b.fault(b.here, "count", "not two straights that meet at "+quoted(name), "meet: [[r11, r12], [r13, r1]]")
		return c
	}
	for i, pair := range f.Meet {
		if len(pair) != 2 {
			b.fault(b.here, "count", "a straight that meets at "+quoted(name)+" has not two marks", "meet: [[r11, r12], [r13, r1]]")
			return c
		}
		b.distinct(pair)
		c.Meet[i] = [2]string(texts(pair))
		if slices.Contains(c.Meet[i][:], name) {
			b.fault(pair[0].at, "self", quoted(name)+" is found from itself", "marks that were read")
		}
	}
	return c
}

func (c Corner) write(w *writer) {
	w.openList("meet")
	for _, m := range c.Meet {
		w.items(m[:])
	}
	w.closeList()
	w.length("round", c.Round)
	if len(c.Like) > 0 {
		w.list("like", c.Like)
	}
	w.length("sigma", c.Sigma)
}
