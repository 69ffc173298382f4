package fieldbook

import "strconv"

// draft is an entry of a file whose id, and whose reference to another, are still as typed.
type draft struct {
	entry   Entry
	at      place
	id, ref Name
	tool    Name       // of a reading
	about   Name       // of a note
	line    Name       // of a reading along or to a line
	lines   []Name     // of a setting: the lines that it names
	coves   []CoveForm // of the floor
	below   []Name     // what levels are below
	broken  bool       // its form is at fault: it holds its place in the list and nothing else
}

// identifier gives every draft its id and turns numbers into ids.
type identifier struct {
	b     *builder
	items []draft      // the list `readings`
	given map[ID]place // ids that stand in the file
	used  map[ID]bool  // those, and the ones made so far
	equal map[string]int

	number map[string]int  // by what people call an entry: its place in items
	column map[string]bool // what people may call a column
}

// identify runs through the settings, then through the list of readings in its order.
func (b *builder) identify(settings, items []draft) {
	x := identifier{b: b, items: items, given: map[ID]place{}, used: map[ID]bool{}, equal: map[string]int{}}
	for _, family := range [][]draft{settings, items} {
		for i := range family {
			x.claim(&family[i])
		}
	}
	x.index()
	for i := range settings {
		x.name(&settings[i])
	}
	for i := range items {
		d := &items[i]
		if d.ref.given() && !d.broken {
			to := x.resolve(i)
			if s, ok := d.entry.Body.(Strike); ok {
				s.Of = to
				d.entry.Body = s
			} else {
				d.entry.Replaces = to
			}
		}
		x.name(d)
		x.inColumn(i)
	}
}

// claim takes an id that is given, and answers a second one.
func (x *identifier) claim(d *draft) {
	if !d.id.given() || d.id.text == "" {
		return
	}
	id := ID(d.id.text)
	if first, taken := x.given[id]; taken {
		x.b.fault(d.id.at, "duplicate-id", "the id "+quoted(d.id.text)+" stands in line "+strconv.Itoa(first.line)+" already", "an id of its own")
		return
	}
	x.given[id], x.used[id] = d.id.at, true
	d.entry.ID = id
}

// name gives the hash to an entry without an id. Should a file have given that very id to
// something else, the next count is taken.
func (x *identifier) name(d *draft) {
	if d.broken {
		return
	}
	norm := normal(d.entry)
	n := x.equal[norm]
	x.equal[norm]++
	for d.entry.ID == "" {
		if id := hashID(norm, n); !x.used[id] {
			d.entry.ID, x.used[id] = id, true
		}
		n++
	}
}

// inColumn gives a row the id of the first of its column.
func (x *identifier) inColumn(i int) {
	if e := &x.items[i].entry; e.Row > 0 {
		e.Column = x.items[i-e.Row+1].entry.ID
	}
}
