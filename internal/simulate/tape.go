package simulate

// Tape takes one more tie between two marks, with the noise that the book states for the tool
// that most ties were taken with, and gives the case with it and its new book. The same pair
// read again has noise of its own; the case given stays as it is.
func (c Case) Tape(a, b string) Case {
	again := 0
	for _, x := range c.Readings {
		if x.Kind == "tie" && (x.Marks[0] == a && x.Marks[1] == b || x.Marks[0] == b && x.Marks[1] == a) {
			again++
		}
	}
	d := c.Truth[a].Dist(c.Truth[b])
	t := c.Tools[0]
	sd := norm(t.Sigma, t.PPM*1e-6*d, c.definition(a), c.definition(b))
	r := stream(c.Seed, streamTape+uint64(again)<<32, c.Shape.Name(), c.Method.Name(), a, b)
	x := Reading{Kind: "tie", Marks: []string{a, b}, Tool: t.Name, True: []float64{d}, SD: []float64{sd}}
	x.Read = []float64{d + sd*r.NormFloat64()}
	text, typed := typedAs(x.Read[0], c.Unit, false)
	x.Text, x.Typed = []string{text}, []float64{typed}
	c.Readings = append(append([]Reading(nil), c.Readings...), x)
	c.numbered()
	c.Book = book(c)
	return c
}

// definition is how sharp a mark or peg is by the book's words.
func (c Case) definition(name string) float64 {
	for i, m := range c.Order {
		if m != name {
			continue
		}
		if c.Rim.Own != nil {
			return c.Rim.Own[i]
		}
		return c.Rim.Definition
	}
	return 0
}
