package fieldbook

import (
	"reflect"
	"slices"
	"strings"
)

// decoder puts nodes into forms. A field's key stands in its `book` tag; its `jsonschema` tag,
// which the printed schema is made from too, says whether it must be there and which words it
// may be. The blank field's `later` tag lists the keys that are not yet built here.
type decoder struct {
	faults Faults
	forms  map[reflect.Type]*formFields
}

// formFields is what the tags of one form say.
type formFields struct {
	fields []field
	later  []string
}

type field struct {
	key      string
	index    []int
	required bool
	choices  []string
}

func newDecoder() *decoder { return &decoder{forms: map[reflect.Type]*formFields{}} }

func (d *decoder) fault(at place, code, text, expected string) {
	d.faults = append(d.faults, Fault{Line: at.line, Column: at.column, Code: code, Text: text, Expected: expected})
}

func (d *decoder) of(t reflect.Type) *formFields {
	f, ok := d.forms[t]
	if !ok {
		f = &formFields{}
		f.read(t, nil)
		d.forms[t] = f
	}
	return f
}

// has says that the form has a field for a key.
func (f *formFields) has(key string) bool {
	return slices.ContainsFunc(f.fields, func(one field) bool { return one.key == key })
}

func (f *formFields) read(t reflect.Type, index []int) {
	for i := range t.NumField() {
		sf := t.Field(i)
		at := append(append([]int(nil), index...), i)
		if later, ok := sf.Tag.Lookup("later"); ok {
			f.later = append(f.later, strings.Split(later, ",")...)
		}
		if sf.Anonymous && sf.Type.Kind() == reflect.Struct {
			f.read(sf.Type, at)
			continue
		}
		key := sf.Tag.Get("book")
		if key == "" {
			continue
		}
		one := field{key: key, index: at}
		for word := range strings.SplitSeq(sf.Tag.Get("jsonschema"), ",") {
			if word == "required" {
				one.required = true
			}
			if c, ok := strings.CutPrefix(word, "enum="); ok {
				one.choices = append(one.choices, c)
			}
		}
		f.fields = append(f.fields, one)
	}
}

// custom is a form that reads its node itself.
type custom interface{ decode(*decoder, *node) }

func (d *decoder) value(n *node, v reflect.Value, choices []string) {
	switch to := v.Addr().Interface().(type) {
	case custom:
		to.decode(d, n)
		return
	case scalar:
		d.scalar(n, to, choices)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.value(n, v.Elem(), nil)
	case reflect.Slice:
		if _, ok := reflect.Zero(v.Type().Elem()).Interface().(interface{ named() }); ok {
			d.table(n, v)
			return
		}
		d.sequence(n, v)
	default:
		d.form(n, v)
	}
}

func (d *decoder) scalar(n *node, to scalar, choices []string) {
	_, words := to.(*Text)
	if n.shape != single && !(n.shape == nothing && (n.text != "" || words)) {
		d.fault(n.at, "wrong-type", shapeName(n)+" where a single value belongs", to.expects())
		return
	}
	switch to.(type) {
	case *Name:
		if n.text == "" || strings.ContainsFunc(n.text, blank) {
			d.fault(n.at, "bad-name", quoted(n.text)+" is no name", to.expects())
		}
	case *Flag:
		if !n.plain || n.text != "true" && n.text != "false" {
			d.fault(n.at, "wrong-type", quoted(n.text)+" is neither true nor false", to.expects())
		}
	case *Choice:
		if !among(n.text, choices) {
			d.fault(n.at, "bad-choice", quoted(n.text)+" cannot stand here", "one of "+strings.Join(choices, ", "))
		}
	}
	to.set(n)
}

func (d *decoder) sequence(n *node, v reflect.Value) {
	if n.shape == nothing {
		return
	}
	if n.shape != list {
		d.fault(n.at, "wrong-type", shapeName(n)+" where a list belongs", "a list")
		return
	}
	if len(n.items) > mostEntries {
		d.fault(n.items[mostEntries].at, "too-many", "more items than a field book has", "at most 20000")
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.items), len(n.items)))
	for i, it := range n.items {
		d.value(it, v.Index(i), nil)
	}
}

// table reads a block whose keys are names, in the order of the file.
func (d *decoder) table(n *node, v reflect.Value) {
	if !d.isMapping(n) {
		return
	}
	d.duplicates(n)
	v.Set(reflect.MakeSlice(v.Type(), len(n.pairs), len(n.pairs)))
	for i, p := range n.pairs {
		d.scalar(&node{at: p.at, text: p.key}, v.Index(i).Field(0).Addr().Interface().(*Name), nil)
		d.value(p.value, v.Index(i).Field(1), nil)
	}
}

func (d *decoder) isMapping(n *node) bool {
	if n.shape == single || n.shape == list {
		d.fault(n.at, "wrong-type", shapeName(n)+" where keys belong", "keys with values")
		return false
	}
	return true
}

// form reads a mapping with known keys.
func (d *decoder) form(n *node, v reflect.Value) {
	if !d.isMapping(n) {
		return
	}
	d.duplicates(n)
	if l, ok := v.Addr().Interface().(interface{ locate(place) }); ok {
		l.locate(n.at)
	}
	known := d.of(v.Type())
	have := make([]bool, len(known.fields))
	for i, p := range n.pairs {
		at := -1
		for k, f := range known.fields {
			if f.key == p.key {
				at = k
			}
		}
		if at < 0 {
			d.unknown(n, i, known)
			continue
		}
		have[at] = p.value.shape != nothing || p.value.text != ""
		d.value(p.value, v.FieldByIndex(known.fields[at].index), known.fields[at].choices)
	}
	for k, f := range known.fields {
		if f.required && !have[k] {
			d.fault(n.at, "missing-key", "the key "+f.key+" is not there", f.key)
		}
	}
}

func (d *decoder) duplicates(n *node) {
	seen := make(map[string]bool, len(n.pairs))
	for _, p := range n.pairs {
		if seen[p.key] {
			d.fault(p.at, "duplicate-key", quoted(p.key)+" stands here twice", "one of them")
		}
		seen[p.key] = true
	}
}

// unknown answers a key without a field: one that is to come, the tail of a decimal comma, or
// none of the format.
func (d *decoder) unknown(n *node, i int, known *formFields) {
	p := n.pairs[i]
	if among(p.key, known.later) {
		d.fault(p.at, "later", quoted(p.key)+" is not yet built here", "a book without it")
		return
	}
	if i > 0 && n.flow && p.value.shape == nothing && p.value.text == "" && digits(p.key) {
		if was := n.pairs[i-1].value; was.shape == single && was.plain && digits(was.text) {
			d.fault(was.at, "decimal-comma", was.text+","+p.key+" has a decimal comma", was.text+"."+p.key)
			return
		}
	}
	var keys []string
	for _, f := range known.fields {
		keys = append(keys, f.key)
	}
	if near := nearest(p.key, append(keys, known.later...)); near != "" {
		d.fault(p.at, "unknown-key", quoted(p.key)+" is no key here", near)
		return
	}
	d.fault(p.at, "unknown-key", quoted(p.key)+" is no key here", "one of "+strings.Join(keys, ", "))
}

func shapeName(n *node) string {
	switch n.shape {
	case nothing:
		return "nothing written"
	case list:
		return "a list"
	case mapping:
		return "keys with values"
	}
	return "a single value"
}
