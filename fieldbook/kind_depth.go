package fieldbook

// Depth is how far a mark lies below a water surface, a line or another mark: {depth: f3, below: w1,
// is: 1.42}. Measured from a string between two marks as well, it places its mark: line: r1 r9, at:
// 3.66, left: 0.
type Depth struct{}

// DepthForm is the item as the file writes it. With slope the tape ran aslant from the mark below
// which it was read; it was not held plumb.
type DepthForm struct {
	Depth Name   `book:"depth" jsonschema:"required"`
	Below Name   `book:"below" jsonschema:"required"`
	Is    Length `book:"is" jsonschema:"required"`
	Slope Flag   `book:"slope"`
	Line  Pair   `book:"line"`
	At    Length `book:"at"`
	Left  Length `book:"left"`
	Right Length `book:"right"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Depth) Name() string { return "depth" }

// Form of the item.
func (Depth) Form() ItemForm { return &DepthForm{} }

// build takes a depth of 0: a floor may run out at the water's edge.
func (f *DepthForm) build(b *builder) Body {
	r := Reading{Kind: "depth", Marks: []string{f.Depth.text}, Below: f.Below.text, Values: []Value{b.part("is", f.Is, notNegative)}}
	if f.Below.given() && f.Below.text == f.Depth.text {
		b.fault(f.Below.at, "self", quoted(r.Below)+" below itself", "a water surface, a line or another mark")
	}
	r.Slope = f.Slope.yes()
	f.place(b, &r)
	r.Sigma = b.sigmas(f.Sigma, len(r.Values))
	return f.fill(b, r)
}

// place adds the string's ends and the two values that place the mark.
func (f *DepthForm) place(b *builder, r *Reading) {
	if !f.Line.given() {
		for _, l := range []Length{f.At, f.Left, f.Right} {
			if l.given() {
				b.fault(l.at, "missing-key", "a place along a string, and nothing says which string", "line with the two marks that it joins")
				return
			}
		}
		return
	}
	line := b.pair(f.Line)
	b.apart(f.Depth, line)
	if !f.At.given() {
		b.fault(f.Line.at, "missing-key", "a string, and nothing says where along it", "at, from its first mark")
	}
	r.Marks = append(r.Marks, line[:]...)
	r.Values = append(r.Values, b.part("at", f.At, anySign), b.hand(f.Line.at, "left", f.Left, f.Right, "a sounding lies left or right of its string", "one of left, right; left: 0 under it"))
}

// Only the body of an entry is written: in a Book the mark read below stands in Marks too.
func (Depth) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "depth" || len(r.Marks) != len(r.Values) || len(r.Values) != 1 && len(r.Values) != 3 {
		return false
	}
	w.text("depth", r.Marks[0])
	w.text("below", r.Below)
	w.value("is", r.Values[0])
	w.flag("slope", r.Slope)
	if len(r.Values) == 3 {
		w.text("line", r.Marks[1]+" "+r.Marks[2])
		w.value("at", r.Values[1])
		w.handed("left", "right", r.Values[2])
	}
	r.write(w)
	return true
}
