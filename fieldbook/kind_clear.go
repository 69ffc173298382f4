package fieldbook

// Clear is the shortest level distance from a mark to a line, {clear: h1, line: rim, is: 0.42}, or
// the free deck square to the rim from a mark on to something, {clear: r7, until: hedge, is: 0.85},
// which places nothing.
type Clear struct{}

// ClearForm is the item as the file writes it.
type ClearForm struct {
	Clear Name   `book:"clear" jsonschema:"required"`
	Line  Name   `book:"line"`
	Until Text   `book:"until"`
	Is    Length `book:"is" jsonschema:"required"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Clear) Name() string { return "clear" }

// Form of the item.
func (Clear) Form() ItemForm { return &ClearForm{} }

// build takes a distance of 0: something may stand on the line or at the rim.
func (f *ClearForm) build(b *builder) Body {
	r := Reading{Kind: "clear", Marks: []string{f.Clear.text}, Line: f.Line.text, Until: f.Until.text, Values: []Value{b.part("is", f.Is, notNegative)}}
	if f.Line.given() == f.Until.given() {
		b.fault(f.Clear.at, "one-of", "nothing says clear of what, or two keys do", "line with a line's name, or until with what stands there")
	}
	if f.Until.given() && r.Until == "" {
		b.fault(f.Until.at, "empty", "nothing stands at the end of the free deck", "what stands there, such as hedge")
	}
	r.Sigma = b.sigmas(f.Sigma, 1)
	r = f.fill(b, r)
	if r.Check && f.Until.given() {
		b.fault(f.Check.at, "not-here", "free deck places nothing: it checks nothing", "no check")
	}
	return r
}

func (f *ClearForm) ofLine() Name { return f.Line }

func (Clear) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "clear" || len(r.Marks) != 1 || len(r.Values) != 1 {
		return false
	}
	w.text("clear", r.Marks[0])
	w.text("line", r.Line)
	w.text("until", r.Until)
	w.value("is", r.Values[0])
	r.write(w)
	return true
}
