package fieldbook

import "reflect"

// LineForm is one entry of the block lines.
type LineForm struct {
	_          struct{}  `later:"from,inward,outward,sigma,corners,slide"`
	Closed     Flag      `book:"closed"`
	Edge       Choice    `book:"edge" jsonschema:"enum=nose,enum=back,enum=track,enum=tile,enum=waterline,enum=wall-foot,enum=deck,enum=other"`
	State      Choice    `book:"state" jsonschema:"enum=found,enum=planned"`
	Runs       []RunForm `book:"runs" jsonschema:"required"`
	Definition Length    `book:"definition"`
	Sharp      Length    `book:"sharp"`
	Spacing    Length    `book:"spacing"`
}

// RunForm is one run of a line: exactly one of its first four keys.
type RunForm struct {
	_        struct{} `later:"walk,soft,from,to,slide,sigma"`
	Straight []Name   `book:"straight"`
	Arc      []Name   `book:"arc"`
	Curve    []Name   `book:"curve"`
	Any      []Name   `book:"any"`
	Joint    Choice   `book:"joint" jsonschema:"enum=tangent,enum=kink"`
	at       place
	skip     bool // what is wrong with it has been said
}

func (f *RunForm) decode(d *decoder, n *node) {
	f.at = n.at
	f.skip = n.shape == single || n.shape == list || n.get("walk") != nil || n.get("soft") != nil
	d.form(n, reflect.ValueOf(f).Elem())
}

func (f *LineForm) build(b *builder, name string) Body {
	l := Line{Name: name, Closed: f.Closed.text == "true", Edge: f.Edge.text, State: f.State.text}
	l.Definition = b.length(f.Definition, notNegative)
	l.Fuzz = b.length(f.Sharp, notNegative)
	l.Spacing = b.length(f.Spacing, positive)
	for i := range f.Runs {
		if r, ok := f.Runs[i].build(b); ok {
			l.Runs = append(l.Runs, r)
		}
	}
	if f.Runs != nil && len(l.Runs) == len(f.Runs) {
		b.joined(f, l)
	}
	return l
}

// build gives the run; false where it is none, which has been answered.
func (f *RunForm) build(b *builder) (Run, bool) {
	var r Run
	given := 0
	for _, k := range []struct {
		kind  string
		marks []Name
	}{{"straight", f.Straight}, {"arc", f.Arc}, {"curve", f.Curve}, {"any", f.Any}} {
		if k.marks != nil {
			given++
			r = Run{Kind: k.kind, Marks: texts(k.marks), Joint: f.Joint.text}
			b.distinct(k.marks)
		}
	}
	switch {
	case f.skip:
		return r, false
	case given != 1:
		b.fault(f.at, "one-of", "a run has one kind", "one of straight, arc, curve, any, each with its marks")
		return r, false
	case len(r.Marks) < 2:
		b.fault(f.at, "short-line", "a run of fewer than two marks", "at least two marks")
		return r, false
	}
	return r, true
}

// distinct answers a mark that follows itself.
func (b *builder) distinct(marks []Name) {
	for i := 1; i < len(marks); i++ {
		if marks[i].text == marks[i-1].text {
			b.fault(marks[i].at, "self", quoted(marks[i].text)+" follows itself", "the next mark")
		}
	}
}

// joined checks that runs share their joints and that a closed line closes.
func (b *builder) joined(f *LineForm, l Line) {
	if len(l.Runs) == 0 {
		b.fault(b.here, "short-line", "line "+l.Name+" has no runs", "at least one run of two marks")
		return
	}
	last := func(r Run) string { return r.Marks[len(r.Marks)-1] }
	for i := 1; i < len(l.Runs); i++ {
		if end := last(l.Runs[i-1]); l.Runs[i].Marks[0] != end {
			b.fault(f.Runs[i].at, "runs-apart", "this run begins at "+l.Runs[i].Marks[0]+", the one before ends at "+end, "a run that begins at "+end)
		}
	}
	if end := len(l.Runs) - 1; l.Closed && last(l.Runs[end]) != l.Runs[0].Marks[0] {
		b.fault(f.Runs[end].at, "runs-apart", "closed line "+l.Name+" ends at "+last(l.Runs[end]), "a last run that ends at "+l.Runs[0].Marks[0])
	}
}

func (l Line) write(w *writer) {
	w.flag("closed", l.Closed)
	w.text("edge", l.Edge)
	w.text("state", l.State)
	w.openList("runs")
	for _, r := range l.Runs {
		w.item()
		w.list(r.Kind, r.Marks)
		w.text("joint", r.Joint)
		w.close()
	}
	w.closeList()
	w.length("definition", l.Definition)
	w.length("sharp", l.Fuzz)
	w.length("spacing", l.Spacing)
}
