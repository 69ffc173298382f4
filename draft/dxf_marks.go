package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// places puts every mark as a place to catch.
func (m *modeller) places() {
	for _, n := range m.marks {
		p, ok := m.place(n)
		if !ok {
			continue
		}
		l := modelMarks
		if k := m.kind(n); k == peg || k == benchmark {
			l = modelPegs
		}
		m.add(l, sheet.Black, sheet.Spot{At: p})
		m.box = m.box.Join(plane.BoundsOf(p))
	}
}

// fromPaper takes what the plan has arranged over at the size of the model.
func (m *modeller) fromPaper(c *canvas) {
	for _, it := range (sheet.Sheet{Items: c.items}).Flat() {
		l, ok := modelLayer(it.Layer)
		if !ok {
			continue
		}
		it.Layer = l
		it.Shape = m.back(it.Shape)
		m.model.Items = append(m.model.Items, it)
	}
}

// modelLayer is the layer of a model that a layer of the plan goes to; the others have their own way.
func modelLayer(l sheet.Layer) (sheet.Layer, bool) {
	switch l {
	case sheet.LayerMarks:
		return modelMarks, true
	case sheet.LayerPegs:
		return modelPegs, true
	case sheet.LayerAxes:
		return modelAxes, true
	case sheet.LayerDimensions:
		return modelDimensions, true
	case sheet.LayerNumbers:
		return modelNames, true
	}
	return "", false
}

// back takes a shape from paper to the model.
func (m *modeller) back(s sheet.Shape) sheet.Shape {
	switch s := s.(type) {
	case sheet.Path:
		out := plane.Path{Closed: s.Closed}
		for _, x := range s.Segs {
			out.Segs = append(out.Segs, plane.Segment{A: m.view.Back(x.A), B: m.view.Back(x.B), Bulge: x.Bulge})
		}
		return sheet.Path{Path: out}
	case sheet.Circle:
		return sheet.Circle{Centre: m.view.Back(s.Centre), R: m.mm(s.R)}
	case sheet.Text:
		s.At, s.Height = m.view.Back(s.At), m.mm(s.Height)
		return s
	}
	return s
}
