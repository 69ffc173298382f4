package fieldbook

// references checks what readings and notes name: tools that are declared, and for a note
// something that the book knows of.
func (b *builder) references(settings, items []draft) {
	known := knownNames{}
	grows := map[string]bool{} // tools, and whether they say how they grow when warm
	for _, d := range settings {
		known.setting(d.entry)
		if t, ok := d.entry.Body.(Tool); ok {
			grows[t.Name] = grows[t.Name] || t.Expansion > 0
		}
	}
	for _, d := range items {
		known.item(d.entry)
	}
	for _, d := range items {
		if d.tool.given() {
			b.toolNamed(d, grows)
		}
		if d.about.given() && !known[d.about.text] {
			b.fault(d.about.at, "no-such", "nothing is called "+quoted(d.about.text), "a mark, a line, a tool, a set-up or an id")
		}
	}
}

// toolNamed checks the tool of one reading.
func (b *builder) toolNamed(d draft, grows map[string]bool) {
	name := d.tool
	if known, there := grows[name.text]; !there {
		b.fault(name.at, "no-such", "no tool is called "+quoted(name.text), "a tool of the block tools")
	} else if r, ok := d.entry.Body.(Reading); ok && r.Warmed && !known {
		b.fault(name.at, "missing-key", "a temperature, and tool "+quoted(name.text)+" says nothing of how it grows", "expansion for that tool, such as 11.5e-6 of steel")
	}
}

// knownNames are the names that a note may be of.
type knownNames map[string]bool

func (k knownNames) marks(names []string) {
	for _, n := range names {
		k[n] = true
	}
}

func (k knownNames) setting(e Entry) {
	k[string(e.ID)] = true
	switch s := e.Body.(type) {
	case Tool:
		k[s.Name] = true
	case Setup:
		k[s.Name] = true
	case Mark:
		k[s.Name] = true
	case Line:
		k.marks(append(s.MarkNames(), s.Name))
	case Corner:
		k[s.Name] = true
	case Floor:
		k.marks(s.MarkNames())
	case Step:
		k.marks(append(s.MarkNames(), s.Name))
	case Ledge:
		k.marks(append(MarksOf(s.Runs), s.Name))
	case Raised:
		k[s.Name] = true
	case Spill:
		k[s.Name] = true
	}
}

func (k knownNames) item(e Entry) {
	k[string(e.ID)] = true
	switch r := e.Body.(type) {
	case Reading:
		k.marks(r.Marks)
		k.marks([]string{r.Setup, r.Water, r.Below})
	case Side:
		k.marks([]string{r.Mark, r.Line[0], r.Line[1]})
	case Cannot:
		k.marks(r.Marks[:])
	case Moved:
		k[r.Mark] = true
	}
}
