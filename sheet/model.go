package sheet

import "brimline/plane"

// Model is a drawing at true size, for those who cut and set out from a file instead of paper.
// Shapes stand in metres, x to the right and y up; so do the heights of its texts. Scale is the
// reduction at which its texts and dashes have their usual size on paper. Files give it in Unit.
type Model struct {
	Title  string
	Unit   ModelUnit
	Scale  Scale
	Layers []ModelLayer
	Items  []Item
}

// ModelLayer is a layer that can be switched on and off, with the line of what stands on it. Every
// layer of an item must be listed.
type ModelLayer struct {
	Name Layer
	Pen  Pen
	Ink  Ink
	Off  bool // as the file is opened
}

// ModelUnit is the unit of length of a file.
type ModelUnit int

// The units.
const (
	Millimetres ModelUnit = iota
	Inches
)

// PerMetre is how many of the unit make a metre; the inch is 25.4 mm exactly.
func (u ModelUnit) PerMetre() float64 {
	if u == Inches {
		return 1 / 0.0254
	}
	return 1000
}

// Name of the unit in words.
func (u ModelUnit) Name() string {
	if u == Inches {
		return "inches"
	}
	return "millimetres"
}

// Spot is a place without size, to be caught by a pointer, at the height Z in metres, upward; 0 for
// one in plan. Only models have them.
type Spot struct {
	At plane.Point
	Z  float64
}

// Course is a line of straights in space: places in plan with a height each, metres, upward. Only models
// have them; arcs are flattened before, since a curve that also climbs is no arc.
type Course struct {
	At     []plane.Point
	Z      []float64
	Closed bool
}

func (Spot) shape()   {}
func (Course) shape() {}

// Flat gives the plain shapes of a model in the order given, texts cleaned. Dimensions and tables
// have sizes of paper: take them apart on a sheet first.
func (m Model) Flat() []Item {
	var out []Item
	for _, it := range m.Items {
		out = append(out, it.flat()...)
	}
	return out
}
