package fieldbook

import "brimline/unit"

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

// Shared is what every measured item may carry, the column as well. Check, Bent and Temperature are
// there for every kind, so that a kind that cannot have them can say so.
type Shared struct {
	Stamp
	Tool   Name   `book:"tool"`
	Note   Text   `book:"note"`
	Class  Choice `book:"class" jsonschema:"enum=measured,enum=template,enum=drawing,enum=owner"`
	Source Text   `book:"source"`
	Check  Flag   `book:"check"`
	Bent   Flag   `book:"bent"`

	Temperature Figure `book:"at_temperature"`
}

// Common is what every measured reading may carry besides its standard deviation.
type Common struct {
	Shared
	Swap
	Computed Flag `book:"computed"`
}

func (c *Common) signed() (Stamp, Swap) { return c.Stamp, c.Swap }

func (s *Shared) tool() Name { return s.Tool }

// fill puts what is shared into a reading.
func (s *Shared) fill(b *builder, r Reading) Reading {
	r.Tool, r.Note, r.Class, r.Source = s.Tool.text, s.Note.text, s.Class.text, s.Source.text
	r.Check, r.Bent = s.Check.yes(), s.Bent.yes()
	if r.Bent && r.Kind != "tie" {
		b.fault(s.Bent.at, "not-here", "only a tape between two marks goes round something", "a tie, or no bent")
	}
	if r.Check && Asserted(r.Kind) {
		b.fault(s.Check.at, "not-here", "nothing is read in a "+r.Kind+": it checks nothing", "no check")
	}
	return s.warmth(b, r)
}

// fill puts the common keys into a reading whose values stand already.
func (c *Common) fill(b *builder, r Reading) Reading {
	r = c.Shared.fill(b, r)
	if r.Computed = c.Computed.yes(); !r.Computed {
		return r
	}
	switch {
	case Asserted(r.Kind):
		b.fault(c.Computed.at, "not-here", "nothing is read in a "+r.Kind+": nothing in it is computed", "no computed")
	case !c.Replaces.given():
		b.fault(c.Computed.at, "missing-key", "a computed correction, and nothing that it corrects", "replaces")
	}
	return r
}

// write puts the common keys of a reading into an item.
func (r Reading) write(w *writer) {
	spell := metres
	if Angular(r.Kind) {
		spell = unit.Degrees
	}
	var sigma []string
	for _, s := range r.Sigma {
		sigma = append(sigma, spell(s))
	}
	if len(sigma) == 1 {
		w.text("sigma", sigma[0])
	} else if len(sigma) > 1 {
		w.list("sigma", sigma)
	}
	w.text("tool", r.Tool)
	if r.Warmed {
		w.number("at_temperature", r.Celsius)
	}
	w.flag("check", r.Check)
	w.flag("bent", r.Bent)
	w.flag("computed", r.Computed)
	w.text("note", r.Note)
	w.text("class", r.Class)
	w.text("source", r.Source)
}
