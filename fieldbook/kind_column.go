package fieldbook

import (
	"reflect"
	"strconv"
)

// Column is ties from one mark in the order in which they were read: {from: A, tool: tape, to:
// [[r1, 5.214], [r2, 5.902]]}. Each row becomes an entry of its own, a tie with the common keys of
// the column.
type Column struct{}

// ColumnForm is the item as the file writes it.
type ColumnForm struct {
	From  Name      `book:"from" jsonschema:"required"`
	To    []RowForm `book:"to" jsonschema:"required"`
	Sigma Sigma     `book:"sigma"`
	Shared
}

// RowForm is one row: the mark and the length.
type RowForm struct {
	Mark Name
	Is   Length
}

// Name of the item's first key.
func (Column) Name() string { return "from" }

// Form of the item.
func (Column) Form() ItemForm { return &ColumnForm{} }

func (c *ColumnForm) signed() (Stamp, Swap) { return c.Stamp, Swap{} }

// decode reads a list of two.
func (r *RowForm) decode(d *decoder, n *node) {
	switch {
	case n.shape == list && len(n.items) == 2:
		d.value(n.items[0], reflect.ValueOf(&r.Mark).Elem(), nil)
		d.value(n.items[1], reflect.ValueOf(&r.Is).Elem(), nil)
	case n.commaLength():
		a, b := n.items[1], n.items[2]
		d.fault(a.at, "decimal-comma", a.text+","+b.text+" has a decimal comma", a.text+"."+b.text)
	default:
		d.fault(n.at, "bad-row", shapeName(n)+" that is no mark with its length", "a row such as [r1, 5.214]")
	}
}

// commaLength says that a row is a mark and a length with a decimal comma: [r1, 5,214].
func (n *node) commaLength() bool {
	if n.shape != list || len(n.items) != 3 {
		return false
	}
	for _, it := range n.items[1:] {
		if it.shape != single || !it.plain || !digits(it.text) {
			return false
		}
	}
	return true
}

// build gives the first row; a column without one is answered.
func (c *ColumnForm) build(b *builder) Body {
	rows := c.rows(b)
	if len(rows) == 0 {
		return nil
	}
	return rows[0]
}

// rows gives a tie a row.
func (c *ColumnForm) rows(b *builder) []Reading {
	if c.To != nil && len(c.To) == 0 {
		b.fault(c.From.at, "no-rows", "a column without rows", "rows such as to: [[r1, 5.214], [r2, 5.902]]")
	}
	proto := c.fill(b, Reading{Kind: "tie"})
	proto.Sigma = b.sigmas(c.Sigma, 1)
	var out []Reading
	for i := range c.To {
		row := &c.To[i]
		if row.Mark.given() && row.Mark.text == c.From.text {
			b.fault(row.Mark.at, "self", quoted(row.Mark.text)+" to itself", "two different marks")
		}
		r := proto
		r.Marks = []string{c.From.text, row.Mark.text}
		r.Values = []Value{b.taped(row.Is)}
		out = append(out, r)
	}
	return out
}

// write never writes a column: an entry that is added stands by itself.
func (Column) write(*writer, Body) bool { return false }

// drafts gives an entry a row. The rows of a column with an id have its id with their number.
func (c *ColumnForm) drafts(b *builder, first draft) []draft {
	var out []draft
	for i, r := range c.rows(b) {
		d := first
		d.entry.Body, d.entry.Row = r, i+1
		if d.id.given() && d.id.text != "" {
			d.id.text += "." + strconv.Itoa(i+1)
		}
		if i > 0 {
			d.tool = Name{} // answered once
		}
		out = append(out, d)
	}
	return out
}
