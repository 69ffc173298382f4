package dxf

import (
	"math"

	"brimline/plane"
	"brimline/sheet"
)

// view shows the whole drawing as the file is opened.
func (p *printer) view(t handle) {
	box := p.extents()
	w, h := box.Max.X-box.Min.X, box.Max.Y-box.Min.Y
	p.record("VPORT", "AcDbViewportTableRecord", t, "*ACTIVE")
	p.whole(70, 0)
	p.flat(10, plane.Point{})
	p.flat(11, plane.Point{X: 1, Y: 1})
	p.flat(12, box.Min.Add(box.Max).Mul(0.5))
	p.flat(13, plane.Point{})
	p.flat(14, plane.Point{X: 10, Y: 10})
	p.flat(15, plane.Point{X: 10, Y: 10})
	p.flat(16, plane.Point{})
	p.num(36, 1)
	p.point(17, plane.Point{})
	p.num(40, 1.05*math.Max(h, w/1.6))
	p.num(41, 1.6)
	p.num(42, 50)
	for _, code := range []int{43, 44, 50, 51} {
		p.num(code, 0)
	}
	for _, c := range [][2]int{{71, 0}, {72, 1000}, {73, 1}, {74, 3}, {75, 0}, {76, 0}, {77, 0}, {78, 0}} {
		p.whole(c[0], c[1])
	}
}

// lineTypes are the strokes with dashes that the layers use, in the order of the list of pens.
func lineTypes(layers []sheet.ModelLayer) []sheet.Stroke {
	var out []sheet.Stroke
	for _, s := range sheet.Strokes {
		for _, l := range layers {
			if l.Pen == s.Pen && len(s.Dash) > 0 {
				out = append(out, s)
				break
			}
		}
	}
	return out
}

func lineName(pen sheet.Pen) string { return "LINE_" + string(pen) }

// lineSays draws a line type with dashes and gaps.
func lineSays(s sheet.Stroke) string {
	if len(s.Dash) > 2 {
		return "____ _ ____ _ ____"
	}
	return "____  ____  ____  ____"
}

// lineType writes one: strokes positive, gaps negative, in millimetres of paper; the header's scale
// of line types makes them sizes of the model.
func (p *printer) lineType(t handle, name, says string, dash []float64) {
	p.record("LTYPE", "AcDbLinetypeTableRecord", t, name)
	p.whole(70, 0)
	p.str(3, says)
	p.whole(72, 65)
	p.whole(73, len(dash))
	sum := 0.0
	for _, d := range dash {
		sum += d
	}
	p.num(40, sum)
	for i, d := range dash {
		if i%2 == 1 {
			d = -d
		}
		p.num(49, d)
		if p.modern() {
			p.whole(74, 0)
		}
	}
}

// layer writes one with its colour (negative: switched off), line type and width.
func (p *printer) layer(t handle, name string, l sheet.ModelLayer) {
	p.record("LAYER", "AcDbLayerTableRecord", t, name)
	p.whole(70, 0)
	c, line := colour(l.Ink), "Continuous"
	if l.Off {
		c = -c
	}
	stroke, _ := l.Pen.Stroke()
	if len(stroke.Dash) > 0 {
		line = lineName(l.Pen)
	}
	p.whole(62, c)
	p.str(6, line)
	if p.modern() {
		p.whole(370, weight(stroke.Width))
		p.ref(390, p.fixed.plotStyle)
	}
}

// style is the one style of lettering.
func (p *printer) style(t handle) {
	font := "txt"
	if p.modern() {
		font = "arial.ttf" // has the letters of names that are not English
	}
	p.record("STYLE", "AcDbTextStyleTableRecord", t, "STANDARD")
	p.whole(70, 0)
	p.num(40, 0)
	p.num(41, 1)
	p.num(50, 0)
	p.whole(71, 0)
	p.num(42, p.size(3.5e-3*float64(p.file.Scale)))
	p.str(3, font)
	p.str(4, "")
}

func (p *printer) dimStyle(t handle) {
	p.record("DIMSTYLE", "AcDbDimStyleTableRecord", t, "STANDARD")
	p.whole(70, 0)
}
