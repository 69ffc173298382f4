package fieldbook

// StepItem is one flight of the list steps.
type StepItem struct {
	located
	Name Text `book:"name" jsonschema:"required"`
	StepForm
}

// StepForm is a flight: {where: bay, opening: [s1, s2], treads: [{runs: [..], below: k1, is: 0.31}]}.
type StepForm struct {
	Where   Choice      `book:"where" jsonschema:"enum=bay,enum=inside"`
	Opening []Name      `book:"opening"`
	Treads  []TreadForm `book:"treads" jsonschema:"required"`
}

// TreadForm is one tread, by its front edge.
type TreadForm struct {
	located
	Runs []RunForm `book:"runs" jsonschema:"required"`
	DownForm
}

func (f *StepForm) build(b *builder, name string) Body {
	s := Step{Name: name, Where: f.Where.text}
	if f.Opening != nil {
		if len(f.Opening) != 2 {
			b.fault(b.here, "count", "an opening has two ends", "opening: [s1, s2]")
		} else {
			b.distinct(f.Opening)
			s.Opening = [2]string(texts(f.Opening))
		}
	}
	if f.Treads != nil && len(f.Treads) == 0 {
		b.fault(b.here, "count", "a flight without treads", "a tread for each level: [{runs: [..]}]")
	}
	for i := range f.Treads {
		t := &f.Treads[i]
		s.Treads = append(s.Treads, Tread{Runs: b.edge(t.at, t.Runs, "a tread of "+quoted(name)), Down: t.down(b, "a tread")})
	}
	return s
}

// edge is the runs of a front edge, each beginning where the one before ends.
func (b *builder) edge(at place, forms []RunForm, what string) []Run {
	var runs []Run
	for i := range forms {
		if r, ok := forms[i].build(b); ok {
			runs = append(runs, r)
		}
	}
	switch {
	case forms != nil && len(forms) == 0:
		b.fault(at, "short-line", what+" has no runs", "at least one run of two marks")
	case len(runs) == len(forms):
		b.chained(forms, runs)
	}
	return runs
}

func (s Step) write(w *writer) {
	w.text("where", s.Where)
	if s.Opening[0] != "" {
		w.list("opening", s.Opening[:])
	}
	w.openList("treads")
	for _, t := range s.Treads {
		w.item()
		w.runs(t.Runs)
		t.Down.write(w)
		w.close()
	}
	w.closeList()
}
