package fieldbook

// references checks what readings and notes name: tools that are declared, and for a note
// something that the book knows of.
func (b *builder) references(settings, items []draft) {
	known := map[string]bool{}
	tools := map[string]bool{}
	for _, d := range settings {
		known[string(d.entry.ID)] = true
		switch s := d.entry.Body.(type) {
		case Tool:
			tools[s.Name], known[s.Name] = true, true
		case Setup:
			known[s.Name] = true
		case Mark:
			known[s.Name] = true
		case Line:
			known[s.Name] = true
			for _, m := range s.MarkNames() {
				known[m] = true
			}
		case Corner:
			known[s.Name] = true
		}
	}
	for _, d := range items {
		known[string(d.entry.ID)] = true
		switch r := d.entry.Body.(type) {
		case Reading:
			for _, m := range append(r.Marks, r.Setup) {
				known[m] = true
			}
		case Side:
			known[r.Mark], known[r.Line[0]], known[r.Line[1]] = true, true, true
		case Cannot:
			known[r.Marks[0]], known[r.Marks[1]] = true, true
		case Moved:
			known[r.Mark] = true
		}
	}
	for _, d := range items {
		if d.tool.given() && !tools[d.tool.text] {
			b.fault(d.tool.at, "no-such", "no tool is called "+quoted(d.tool.text), "a tool of the block tools")
		}
		if d.about.given() && !known[d.about.text] {
			b.fault(d.about.at, "no-such", "nothing is called "+quoted(d.about.text), "a mark, a line, a tool, a set-up or an id")
		}
	}
}
