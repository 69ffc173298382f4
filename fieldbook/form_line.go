package fieldbook

import "reflect"

// LineForm is one entry of the block lines: a line with runs of its own, or one derived from another.
type LineForm struct {
	Own     *RunsForm
	Derived *DerivedForm
}

func (f *LineForm) decode(d *decoder, n *node) {
	if n.get("from") != nil || n.get("outward") != nil || n.get("inward") != nil {
		f.Derived = &DerivedForm{}
		d.form(n, reflect.ValueOf(f.Derived).Elem())
		return
	}
	f.Own = &RunsForm{}
	d.form(n, reflect.ValueOf(f.Own).Elem())
}

func (f *LineForm) build(b *builder, name string) Body {
	if f.Derived != nil {
		return f.Derived.build(b, name)
	}
	return f.Own.build(b, name)
}

// RunsForm is a line with runs.
type RunsForm struct {
	Closed     Flag      `book:"closed"`
	Edge       Choice    `book:"edge" jsonschema:"enum=nose,enum=back,enum=track,enum=tile,enum=waterline,enum=wall-foot,enum=deck,enum=other"`
	State      Choice    `book:"state" jsonschema:"enum=found,enum=planned"`
	Runs       []RunForm `book:"runs" jsonschema:"required"`
	Definition Length    `book:"definition"`
	Sharp      Length    `book:"sharp"`
	Spacing    Length    `book:"spacing"`
}

func (f *RunsForm) build(b *builder, name string) Body {
	l := Line{Name: name, Closed: f.Closed.yes(), Edge: f.Edge.text, State: f.State.text}
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

// joined checks that runs share their joints and that a closed line closes.
func (b *builder) joined(f *RunsForm, l Line) {
	if len(l.Runs) == 0 {
		b.fault(b.here, "short-line", "line "+l.Name+" has no runs", "at least one run of two marks")
		return
	}
	b.chained(f.Runs, l.Runs)
	if end := len(l.Runs) - 1; l.Closed && l.Runs[end].end() != l.Runs[0].Marks[0] {
		b.fault(f.Runs[end].at, "runs-apart", "closed line "+l.Name+" ends at "+l.Runs[end].end(), "a last run that ends at "+l.Runs[0].Marks[0])
	}
}

// chained checks that each run begins where the one before ends.
func (b *builder) chained(forms []RunForm, runs []Run) {
	for i := 1; i < len(runs); i++ {
		if end := runs[i-1].end(); runs[i].Marks[0] != end {
			b.fault(forms[i].at, "runs-apart", "this run begins at "+runs[i].Marks[0]+", the one before ends at "+end, "a run that begins at "+end)
		}
	}
}

// end is the last mark of a run.
func (r Run) end() string { return r.Marks[len(r.Marks)-1] }

func (l Line) write(w *writer) {
	if l.From != "" {
		l.writeDerived(w)
		return
	}
	w.flag("closed", l.Closed)
	w.text("edge", l.Edge)
	w.text("state", l.State)
	w.runs(l.Runs)
	w.length("definition", l.Definition)
	w.length("sharp", l.Fuzz)
	w.length("spacing", l.Spacing)
}

func (w *writer) runs(runs []Run) {
	w.openList("runs")
	for _, r := range runs {
		r.write(w)
	}
	w.closeList()
}
