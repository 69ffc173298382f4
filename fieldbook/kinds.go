package fieldbook

import (
	"reflect"
	"strings"
)

// Kind is a member of the family of items that the list `readings` may hold.
type Kind interface {
	// Name is the key that begins the item.
	Name() string
	// Form is a new, empty form of the item: the keys that it may have.
	Form() ItemForm
	// write puts a body of this kind into keys; false where it is another kind's.
	write(*writer, Body) bool
}

// ItemForm is the form of an item as the file writes it.
type ItemForm interface {
	// build gives the body.
	build(*builder) Body
	// signed gives who made the item, when, and what it replaces.
	signed() (Stamp, Swap)
}

// Kinds is the list of measured kinds: what Reading.Kind may be.
var Kinds = []Kind{
	Tie{}, Offset{}, Seen{}, Turn{}, Straight{}, Arc{}, Square{}, Bow{}, Along{}, Round{}, Clear{}, Width{},
	Level{}, Staff{}, Water{}, Depth{}, Wall{}, Plumb{}, Profile{},
}

// Columns is the list of items of `readings` that stand for several readings of a kind of Kinds.
var Columns = []Kind{Column{}}

// Asides is the list of the other items of `readings`: what is said, not measured.
var Asides = []Kind{SideWord{}, StrikeWord{}, CannotWord{}, MovedWord{}, NoteWord{}}

// families is every list of items, in the order in which an item's keys are looked up.
func families() [][]Kind { return [][]Kind{Kinds, Columns, Asides} }

// laterKinds is the list of kinds that the format names and that are not yet built here.
var laterKinds = []string{"pixel"}

func kindNamed(name string) (Kind, bool) {
	for _, k := range Kinds {
		if k.Name() == name {
			return k, true
		}
	}
	return nil, false
}

func kindNames() string {
	var out []string
	for _, k := range Kinds {
		out = append(out, k.Name())
	}
	return strings.Join(out, ", ")
}

// ReadingForm is one item of `readings`: the form of its kind. Form is nil where the kind could
// not be told.
type ReadingForm struct {
	Kind Kind
	Form ItemForm
	at   place
	key  place // of the key that names the kind
}

func (r *ReadingForm) decode(d *decoder, n *node) {
	r.at = n.at
	if n.shape != mapping {
		d.fault(n.at, "wrong-type", shapeName(n)+" where a reading belongs", "keys with values such as {tie: A B, is: 9.150}")
		return
	}
	r.find(n)
	if r.Kind == nil {
		r.unkind(d, n)
		return
	}
	if p, ok := r.second(d, n); ok {
		d.fault(p.at, "two-kinds", "one reading is "+r.Kind.Name()+" and "+p.key, "two readings")
		return
	}
	r.Form = r.Kind.Form()
	d.form(n, reflect.ValueOf(r.Form).Elem())
}

// find looks for the kind by the lists, so that `note` counts last: other kinds may carry one.
func (r *ReadingForm) find(n *node) {
	for _, family := range families() {
		for _, k := range family {
			for _, p := range n.pairs {
				if p.key != k.Name() {
					continue
				}
				if _, isNote := k.(NoteWord); isNote && r.otherwise(n) {
					return
				}
				r.Kind, r.key = k, p.at
				return
			}
		}
	}
}

// otherwise says that another key names a kind to come.
func (r *ReadingForm) otherwise(n *node) bool {
	for _, p := range n.pairs {
		if among(p.key, laterKinds) {
			return true
		}
	}
	return false
}

// second finds another kind's key in the item, which the form of its own kind has not.
func (r *ReadingForm) second(d *decoder, n *node) (pair, bool) {
	own := d.of(reflect.TypeOf(r.Kind.Form()).Elem())
	for _, p := range n.pairs {
		if own.has(p.key) || p.key == "note" {
			continue
		}
		for _, family := range families() {
			for _, k := range family {
				if k.Name() == p.key {
					return p, true
				}
			}
		}
	}
	return pair{}, false
}

// unkind answers an item whose kind is to come, mistyped or missing.
func (r *ReadingForm) unkind(d *decoder, n *node) {
	for _, p := range n.pairs {
		if among(p.key, laterKinds) {
			d.fault(p.at, "later", quoted(p.key)+" is not yet built here", "a book without it")
			return
		}
	}
	var names []string
	for _, family := range families() {
		for _, k := range family {
			names = append(names, k.Name())
		}
	}
	for _, p := range n.pairs {
		if near := nearest(p.key, names); near != "" {
			d.fault(p.at, "unknown-key", quoted(p.key)+" is no kind of reading", near)
			return
		}
	}
	d.fault(n.at, "no-kind", "nothing says what was read", "one of "+strings.Join(names, ", "))
}
