package fieldbook

// Plumb is where the wall is, seen from a plumb line hung at a mark: {plumb: r5, down: 0.30, outward:
// 4 mm}. Outward is away from the water, behind plumb; inward in front of it.
type Plumb struct{}

// PlumbForm is the item as the file writes it: outward or inward, never a sign.
type PlumbForm struct {
	Plumb   Name   `book:"plumb" jsonschema:"required"`
	Down    Length `book:"down" jsonschema:"required"`
	Outward Length `book:"outward"`
	Inward  Length `book:"inward"`
	Sigma   Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Plumb) Name() string { return "plumb" }

// Form of the item.
func (Plumb) Form() ItemForm { return &PlumbForm{} }

func (f *PlumbForm) build(b *builder) Body {
	r := Reading{Kind: "plumb", Marks: []string{f.Plumb.text}, Values: []Value{
		b.part("down", f.Down, positive),
		b.hand(f.Plumb.at, "outward", f.Outward, f.Inward, "a wall lies outward or inward of plumb", "one of outward, inward; outward: 0 for plumb"),
	}}
	r.Sigma = b.sigmas(f.Sigma, len(r.Values))
	return f.fill(b, r)
}

func (Plumb) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "plumb" || len(r.Marks) != 1 || len(r.Values) != 2 {
		return false
	}
	w.text("plumb", r.Marks[0])
	w.value("down", r.Values[0])
	w.handed("outward", "inward", r.Values[1])
	r.write(w)
	return true
}
