package fieldbook

// Offset is a mark beside a base line: {offset: r4, line: A B, at: 3.20, left: 1.15}. `at` runs
// from the first mark of the line towards the second.
type Offset struct{}

// OffsetForm is the item as the file writes it: left or right, never a sign.
type OffsetForm struct {
	Offset Name   `book:"offset" jsonschema:"required"`
	Line   Pair   `book:"line" jsonschema:"required"`
	At     Length `book:"at" jsonschema:"required"`
	Left   Length `book:"left"`
	Right  Length `book:"right"`
	Sigma  Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Offset) Name() string { return "offset" }

// Form of the item.
func (Offset) Form() ItemForm { return &OffsetForm{} }

// build gives the value left; a distance to the right is negative there and keeps its text.
func (f *OffsetForm) build(b *builder) Body {
	line := b.pair(f.Line)
	b.apart(f.Offset, line)
	beside := b.hand(f.Offset.at, "left", f.Left, f.Right, "an offset lies left or right of its line", "one of left, right")
	r := Reading{Kind: "offset", Marks: []string{f.Offset.text, line[0], line[1]}, Values: []Value{b.part("at", f.At, anySign), beside}}
	r.Sigma = b.sigmas(f.Sigma, len(r.Values))
	return f.fill(b, r)
}

// apart answers a mark that is read against a line through itself.
func (b *builder) apart(mark Name, line [2]string) {
	if mark.given() && (mark.text == line[0] || mark.text == line[1]) {
		b.fault(mark.at, "self", quoted(mark.text)+" against a line through itself", "another mark, or another line")
	}
}

// hand is one value of two keys that say which way it goes, exactly one of which must be there; that
// of the second key is negative and keeps its text.
func (b *builder) hand(at place, name string, this, other Length, fault, expected string) Value {
	if this.given() == other.given() {
		b.fault(at, "one-of", fault, expected)
	}
	v := b.part(name, this, notNegative)
	if other.given() {
		v = b.part(name, other, notNegative)
		v.Metres = 0 - v.Metres
	}
	return v
}

// handed writes a value under the key of its sign.
func (w *writer) handed(this, other string, v Value) {
	if v.Metres < 0 {
		v.Metres = -v.Metres
		this = other
	}
	w.value(this, v)
}

func (Offset) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "offset" || len(r.Marks) != 3 || len(r.Values) != 2 {
		return false
	}
	w.text("offset", r.Marks[0])
	w.text("line", r.Marks[1]+" "+r.Marks[2])
	w.value("at", r.Values[0])
	w.handed("left", "right", r.Values[1])
	r.write(w)
	return true
}
