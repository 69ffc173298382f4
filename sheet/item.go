package sheet

import "brimline/plane"

// Sheet is one page.
type Sheet struct {
	Title    string // what it shows, for lists of sheets and for readers by ear
	Size     Size
	Views    []View
	Items    []Item
	Pictures map[Hash][]byte // PNG or JPEG bytes of the Picture shapes
}

// Item is a shape with its meaning. Fill closes an open path.
type Item struct {
	Layer Layer
	Pen   Pen
	Ink   Ink
	Fill  *Ink
	Shape Shape
}

// Shape is one of Path, Circle, Ellipse, Text, Picture (plain) or Dimension, Hatch, Table, which
// Flat turns into plain ones.
type Shape interface{ shape() }

// Path is a run of straights and true arcs.
type Path struct{ plane.Path }

// Circle is a whole circle.
type Circle struct {
	Centre plane.Point
	R      float64
}

// Ellipse has its semi-axes A along Turn and B across it.
type Ellipse struct {
	Centre plane.Point
	A, B   float64
	Turn   float64
}

func (Path) shape()      {}
func (Circle) shape()    {}
func (Ellipse) shape()   {}
func (Text) shape()      {}
func (Picture) shape()   {}
func (Dimension) shape() {}
func (Hatch) shape()     {}
func (Table) shape()     {}

// Line is the straight from a to b.
func Line(a, b plane.Point) Path { return Polyline(false, a, b) }

// Polyline is the path of straights through the points; closed adds the way back.
func Polyline(closed bool, pts ...plane.Point) Path { return Path{plane.Polyline(pts, closed)} }

// Rect is the outline of a box.
func Rect(b plane.Box) Path {
	return Polyline(true, b.Min, plane.Point{X: b.Max.X, Y: b.Min.Y}, b.Max, plane.Point{X: b.Min.X, Y: b.Max.Y})
}

// Filled points at an ink, for Item.Fill.
func Filled(k Ink) *Ink { return &k }

// Flat gives the plain shapes of a sheet, layer by layer in the order of drawing and in the order
// given inside a layer. Texts are cleaned and their strikes drawn.
func (s Sheet) Flat() []Item {
	byLayer := make([][]Item, len(Layers))
	for _, it := range s.Items {
		for _, f := range it.flat() {
			k := layerIndex(f.Layer)
			byLayer[k] = append(byLayer[k], f)
		}
	}
	var out []Item
	for _, items := range byLayer {
		out = append(out, items...)
	}
	return out
}

// layerIndex is the place in Layers; a layer that is not on the list is drawn last.
func layerIndex(l Layer) int {
	for i, x := range Layers {
		if x == l {
			return i
		}
	}
	return len(Layers) - 1
}

func (it Item) flat() []Item {
	switch s := it.Shape.(type) {
	case Text:
		return it.text(s)
	case Dimension:
		return s.flat(it)
	case Hatch:
		return s.flat(it)
	case Table:
		return s.flat(it)
	}
	return []Item{it}
}

// with is the item with another shape.
func (it Item) with(s Shape) Item {
	it.Shape = s
	return it
}
