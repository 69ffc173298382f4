package fieldbook

import (
	"strconv"
	"strings"
)

// resolve finds what item i strikes or replaces: an id, else a number of the list. A word that is
// the id of one entry and the number of another above is asked about.
func (x *identifier) resolve(i int) ID {
	ref := x.items[i].ref
	id, k := ID(ref.text), x.numbered(ref.text)
	if x.used[id] {
		switch {
		case id == x.items[i].entry.ID:
			x.b.fault(ref.at, "self", "an entry against itself", "the id or number of another")
		case k >= 0 && k < i && x.items[k].entry.ID != id:
			x.twoMeanings(ref, k)
		}
		return id
	}
	if k < 0 {
		x.nothing(ref)
		return ""
	}
	to := &x.items[k]
	switch {
	case k == i:
		x.b.fault(ref.at, "self", "an entry against itself", "the id or number of another")
	case to.entry.ID == "" && k > i && !to.broken:
		x.b.fault(ref.at, "forward", "number "+ref.text+" stands further down", "an entry above, or one with an id")
	}
	return to.entry.ID
}

// index notes what people call the entries by, and what they may call a column by.
func (x *identifier) index() {
	x.number, x.column = map[string]int{}, map[string]bool{}
	for i := range x.items {
		d := &x.items[i]
		x.number[d.number()] = i
		if d.entry.Row == 1 {
			x.column[strconv.Itoa(d.entry.Place)] = true
			if d.id.given() {
				x.column[strings.TrimSuffix(d.id.text, ".1")] = true
			}
		}
	}
}

// numbered is the place in the list of drafts of the entry that people call by a number, "31" or
// "32.2"; −1 none.
func (x *identifier) numbered(text string) int {
	if i, ok := x.number[text]; ok {
		return i
	}
	return -1
}

// number is what people call the entry by.
func (d *draft) number() string {
	n := strconv.Itoa(d.entry.Place)
	if d.entry.Row > 0 {
		n += "." + strconv.Itoa(d.entry.Row)
	}
	return n
}

// twoMeanings asks which of two entries is meant.
func (x *identifier) twoMeanings(ref Name, numbered int) {
	to := &x.items[numbered]
	expected := "the number of the entry of that id"
	if to.id.given() {
		expected += ", or " + to.id.text + " for the other"
	}
	x.b.fault(ref.at, "ambiguous", quoted(ref.text)+" is the id of one entry and the number of another, in line "+strconv.Itoa(to.at.line), expected)
}

// nothing answers a word that names no entry; a column is asked for the row.
func (x *identifier) nothing(ref Name) {
	if x.column[ref.text] {
		x.b.fault(ref.at, "ambiguous", quoted(ref.text)+" is a column", "one of its rows, such as "+ref.text+".1")
		return
	}
	x.b.fault(ref.at, "no-such", "no entry has the id or number "+quoted(ref.text), "an id, or a number of the list of readings")
}
