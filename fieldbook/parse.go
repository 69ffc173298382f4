package fieldbook

import (
	"bytes"
	"crypto/sha256"
	"path"
	"reflect"
	"strings"
)

// parsed is a file as far as Append needs it.
type parsed struct {
	source *source
	root   *node
	form   *Form
	log    Log
}

// Parse reads a field book. name is the file's name for messages and, without its folder and
// ending, the book's name where the job has none. The error is a Faults with everything that is
// wrong, sorted by place; then the Book is empty.
func Parse(name string, src []byte) (Book, error) {
	p, fs := parse(src)
	if len(fs) > 0 {
		return Book{}, fs.sorted(name)
	}
	b, _ := p.log.Book()
	b.Hash = sha256.Sum256(src)
	b.Name = b.Job.Name
	if b.Name == "" {
		base := path.Base(strings.ReplaceAll(name, `\`, "/"))
		b.Name = strings.TrimSuffix(base, path.Ext(base))
	}
	return b, nil
}

func parse(src []byte) (*parsed, Faults) {
	src = bytes.TrimPrefix(src, byteOrderMark)
	if fs := scan(src); len(fs) > 0 {
		return nil, fs
	}
	p := &parsed{source: newSource(src), form: &Form{}}
	var fs Faults
	if p.root, fs = p.source.tree(); len(fs) > 0 {
		return nil, fs
	}
	if p.root == nil || p.root.shape != mapping {
		at := place{1, 1}
		if p.root != nil {
			at = p.root.at
		}
		return nil, Faults{{Line: at.line, Column: at.column, Code: "not-a-book", Text: "this is no field book", Expected: "keys, the first of them brimline: 1"}}
	}
	d := newDecoder()
	d.form(p.root, reflect.ValueOf(p.form).Elem())
	b := &builder{faults: d.faults, unit: p.form.Units.length()}
	if v := p.form.Brimline; v.given() && v.text != "1" {
		b.fault(v.at, "version", "this is version "+quoted(v.text)+" of the format", "1")
	}
	p.log = b.entries(p.form)
	return p, b.faults
}

// entries turns the forms of a file into entries.
func (b *builder) entries(f *Form) Log {
	settings := b.described(f)
	items := b.said(f)
	b.identify(settings, items)
	b.references(settings, items)
	b.linesNamed(settings, items)
	b.levelsNamed(settings, items)
	if len(b.faults) > 0 {
		return nil
	}
	var log Log
	for _, family := range [][]draft{settings, items} {
		for _, d := range family {
			log = append(log, d.entry)
		}
	}
	return log
}

// described builds the blocks, then what was added to them.
func (b *builder) described(f *Form) []draft {
	var out []draft
	seen := map[string]bool{}
	for _, s := range f.settings() {
		b.here = s.at
		b.title(s, seen)
		d := draft{entry: Entry{Place: len(out) + 1, Body: s.form.build(b, s.name)}, at: s.at}
		d.names(s.form)
		out = append(out, d)
	}
	for i := range f.Added {
		a := &f.Added[i]
		b.here = a.at
		d := draft{at: a.at, id: a.ID, broken: a.what == nil, entry: Entry{Place: len(out) + 1, Time: b.moment(a.Time), By: a.By.text}}
		if !d.broken {
			d.entry.Body = a.what.build(b, a.name)
			d.names(a.what)
		}
		out = append(out, d)
	}
	return out
}

// title checks the name of an item of a list that has names.
func (b *builder) title(s setting, seen map[string]bool) {
	switch key := s.list + "." + s.name; {
	case !s.title.given():
	case strings.TrimSpace(s.name) == "":
		b.fault(s.title.at, "empty", "an item of "+s.list+" without a name", s.title.expects())
	case seen[key]:
		b.fault(s.title.at, "duplicate-key", "two of "+s.list+" are called "+quoted(s.name), "a name of its own")
	default:
		seen[key] = true
	}
}

// said builds the list of readings.
func (b *builder) said(f *Form) []draft {
	var out []draft
	for i := range f.Readings {
		r := &f.Readings[i]
		if r.Form == nil {
			out = append(out, draft{at: r.at, broken: true, entry: Entry{Place: i + 1}})
			continue
		}
		b.here = r.at
		out = append(out, b.item(r, i+1)...)
	}
	return out
}

// item gives the entries of one item: a column's rows, else one.
func (b *builder) item(r *ReadingForm, place int) []draft {
	stamp, swap := r.Form.signed()
	d := draft{at: r.at, id: stamp.ID, ref: swap.Replaces}
	d.entry = Entry{Place: place, Time: b.moment(stamp.Time), By: stamp.By.text, Why: swap.Why.text}
	if swap.Why.given() && !swap.Replaces.given() {
		b.fault(swap.Why.at, "missing-key", "a reason, and nothing that is replaced", "replaces")
	}
	switch form := r.Form.(type) {
	case *StrikeForm:
		d.ref = form.Strike
	case interface{ tool() Name }:
		d.tool = form.tool()
	case interface{ about() Name }:
		d.about = form.about()
	}
	if l, ok := r.Form.(interface{ ofLine() Name }); ok {
		d.line = l.ofLine()
	}
	if l, ok := r.Form.(interface{ levels() []Name }); ok {
		d.below = l.levels()
	}
	if c, ok := r.Form.(*ColumnForm); ok {
		if rows := c.drafts(b, d); len(rows) > 0 {
			return rows
		}
		d.broken = true
		return []draft{d}
	}
	d.entry.Body = r.Form.build(b)
	return []draft{d}
}
