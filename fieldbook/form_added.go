package fieldbook

import (
	"reflect"
	"strings"
)

// AddedForm is one item of the list `added`: {set: lines.rim, to: {...}}. Of units it changes
// only what is shown: a bare number in the file keeps the meaning it was typed with.
type AddedForm struct {
	Set Text `book:"set" jsonschema:"required"`
	To  Raw  `book:"to" jsonschema:"required"`
	Stamp
	at   place
	what settings // the form of the block that is set, nil where it cannot be told
	name string   // of the entry in that block
}

// Raw is a part of the file whose form another key decides.
type Raw struct{ node *node }

func (r *Raw) decode(_ *decoder, n *node) { r.node = n }

func (f *AddedForm) decode(d *decoder, n *node) {
	f.at = n.at
	d.form(n, reflect.ValueOf(f).Elem())
	if !f.Set.given() || f.To.node == nil {
		return
	}
	key, name, dotted := strings.Cut(f.Set.text, ".")
	for _, bl := range blocks {
		if bl.key == key && (bl.names != alone) == dotted && (name != "" || !dotted) && (bl.names == byName || !strings.ContainsFunc(name, blank)) {
			f.what, f.name = bl.form(), name
			d.value(f.To.node, reflect.ValueOf(f.what).Elem(), nil)
			return
		}
	}
	if among(key, laterBlocks(d)) {
		d.fault(f.Set.at, "later", quoted(key)+" is not yet built here", "a book without it")
		return
	}
	d.fault(f.Set.at, "bad-set", quoted(f.Set.text)+" names no block", "job, private, units, place, rules, floor, or tools, setups, marks, lines, unreached, steps, ledges, raised, spills with a name: lines.rim")
}

// laterBlocks is the list of blocks that are to come.
func laterBlocks(d *decoder) []string { return d.of(reflect.TypeFor[Form]()).later }
