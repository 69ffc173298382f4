package fieldbook

import "brimline/unit"

// PlaceForm is the block place: left and right are said standing shallow, facing deep.
type PlaceForm struct {
	Shallow Name       `book:"shallow"`
	Deep    Name       `book:"deep"`
	House   []Name     `book:"house"`
	North   *NorthForm `book:"north"`
}

// NorthForm is a compass bearing along two marks.
type NorthForm struct {
	Line    Pair  `book:"line" jsonschema:"required"`
	Bearing Angle `book:"bearing" jsonschema:"required"`
}

func (f *PlaceForm) build(b *builder, _ string) Body {
	p := Place{Shallow: f.Shallow.text, Deep: f.Deep.text, House: texts(f.House)}
	if f.North != nil {
		p.NorthLine = b.pair(f.North.Line)
		p.NorthBearing = b.angle(f.North.Bearing, anySign)
	}
	return p
}

func (p Place) write(w *writer) {
	w.text("shallow", p.Shallow)
	w.text("deep", p.Deep)
	if len(p.House) > 0 {
		w.list("house", p.House)
	}
	if p.NorthLine[0] != "" {
		w.open("north")
		w.text("line", p.NorthLine[0]+" "+p.NorthLine[1])
		w.raw("bearing", w.scalar(unit.Degrees(p.NorthBearing)))
		w.close()
	}
}

// marks lists the marks that a place names.
func (p Place) marks() []string {
	out := append([]string{p.Shallow, p.Deep}, p.House...)
	return append(out, p.NorthLine[:]...)
}
