package fieldbook

// named are the names of a file by what they name.
type named struct{ surfaces, lines, marks map[string]bool }

func newNamed(settings, items []draft) named {
	n := named{map[string]bool{}, map[string]bool{}, map[string]bool{}}
	mark := func(names ...string) {
		for _, m := range names {
			n.marks[m] = true
		}
	}
	for _, d := range settings {
		switch s := d.entry.Body.(type) {
		case Mark:
			mark(s.Name)
		case Line:
			n.lines[s.Name] = true
			mark(s.MarkNames()...)
		case Corner:
			mark(s.Name)
		}
	}
	for _, d := range items {
		if r, ok := d.entry.Body.(Reading); ok {
			mark(r.Marks...)
			if r.Kind == "water" {
				n.surfaces[r.Water] = true
			}
		}
	}
	return n
}

// levelsNamed checks that what a level is below is one thing only, that a sloping tape began at a
// mark, and what the settings name of lines and of marks along them.
func (b *builder) levelsNamed(settings, items []draft) {
	n := newNamed(settings, items)
	for _, family := range [][]draft{settings, items} {
		for _, d := range family {
			for _, below := range d.below {
				b.oneMeaning(n, below)
			}
		}
	}
	for _, d := range items {
		r, ok := d.entry.Body.(Reading)
		if ok && r.Kind == "depth" && r.Slope && (n.surfaces[r.Below] || n.lines[r.Below]) {
			b.fault(d.below[0].at, "not-here", "a tape that slopes begins at a mark, not at "+quoted(r.Below), "the mark it was held at, or no slope")
		}
	}
}

// oneMeaning asks which of two things of one name is meant.
func (b *builder) oneMeaning(n named, below Name) {
	var is []string
	for _, k := range []struct {
		what string
		of   map[string]bool
	}{{"a water surface", n.surfaces}, {"a line", n.lines}, {"a mark", n.marks}} {
		if k.of[below.text] {
			is = append(is, k.what)
		}
	}
	if len(is) > 1 {
		b.fault(below.at, "ambiguous", quoted(below.text)+" is "+is[0]+" and "+is[1], "another name for one of them")
	}
}

// settingLines checks the lines that floors, raised walls and spills name, and the marks at the ends
// of coves.
func (b *builder) settingLines(n *namedLines, d draft) {
	for _, line := range d.lines {
		if _, ok := n.holds[line.text]; line.given() && !ok {
			b.fault(line.at, "no-such", "no line is called "+quoted(line.text), n.names())
		}
	}
	for _, c := range d.coves {
		root := n.root(c.Line.text)
		for _, m := range []Name{c.From, c.To} {
			if root != "" && m.given() && !among(m.text, n.marks[root]) {
				b.fault(m.at, "not-on-line", quoted(m.text)+" is no mark of line "+quoted(c.Line.text), "a mark of that line")
			}
		}
	}
}

// names puts what the form of a setting names into its draft.
func (d *draft) names(form settings) {
	if f, ok := form.(interface{ lines() []Name }); ok {
		d.lines = f.lines()
	}
	if f, ok := form.(interface{ levels() []Name }); ok {
		d.below = f.levels()
	}
	if f, ok := form.(*FloorForm); ok {
		d.coves = f.Coves
	}
}

func (f *FloorForm) lines() []Name {
	var out []Name
	for i := range f.Coves {
		out = append(out, f.Coves[i].Line)
	}
	return out
}

func (f *DepthForm) levels() []Name { return []Name{f.Below} }

func (f *LedgeForm) levels() []Name { return []Name{f.Below} }

func (f *StepForm) levels() []Name {
	var out []Name
	for i := range f.Treads {
		out = append(out, f.Treads[i].Below)
	}
	return out
}
