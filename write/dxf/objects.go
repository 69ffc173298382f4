package dxf

import "brimline/plane"

// objects writes the dictionaries and the layouts of the two spaces.
func (p *printer) objects() {
	f := p.fixed
	p.section("OBJECTS")
	p.dictionary(f.root, 0, []entry{{"ACAD_GROUP", f.groups}, {"ACAD_LAYOUT", f.layouts}, {"ACAD_PLOTSTYLENAME", f.plotStyles}})
	p.dictionary(f.groups, f.root, nil)
	var layouts []entry
	for _, s := range p.spaces() {
		layouts = append(layouts, entry{s.title, s.layout})
	}
	p.dictionary(f.layouts, f.root, layouts)
	p.plotStyles()
	for i, s := range p.spaces() {
		p.layout(s, i)
	}
	p.str(0, "ENDSEC")
}

// entry is a name in a dictionary.
type entry struct {
	name string
	to   handle
}

func (p *printer) dictionary(h, owner handle, list []entry) {
	p.object("DICTIONARY", h, owner)
	p.class("AcDbDictionary")
	p.whole(281, 1)
	for _, e := range list {
		p.str(3, e.name)
		p.ref(350, e.to)
	}
}

// plotStyles is the dictionary with the one style of plotting that layers point at.
func (p *printer) plotStyles() {
	f := p.fixed
	p.object("ACDBDICTIONARYWDFLT", f.plotStyles, f.root)
	p.class("AcDbDictionary")
	p.whole(281, 1)
	p.str(3, "Normal")
	p.ref(350, f.plotStyle)
	p.class("AcDbDictionaryWithDefault")
	p.ref(340, f.plotStyle)
	p.object("ACDBPLACEHOLDER", f.plotStyle, f.plotStyles)
}

// layout of a space: no printer, no margins, the whole of what is drawn.
func (p *printer) layout(s space, order int) {
	p.object("LAYOUT", s.layout, p.fixed.layouts)
	p.class("AcDbPlotSettings")
	p.str(1, "")
	p.str(2, "none_device")
	p.str(4, "")
	p.str(6, "")
	for code := 40; code <= 49; code++ {
		p.num(code, 0)
	}
	for _, code := range []int{140, 141} {
		p.num(code, 0)
	}
	p.num(142, 1)
	p.num(143, 1)
	plotFlags := 688
	if s.paper == 0 {
		plotFlags = 1712
	}
	for _, c := range [][2]int{{70, plotFlags}, {72, 0}, {73, 0}, {74, 5}} {
		p.whole(c[0], c[1])
	}
	p.str(7, "")
	p.whole(75, 16)
	p.num(147, 1)
	p.num(148, 0)
	p.num(149, 0)
	p.class("AcDbLayout")
	p.str(1, s.title)
	p.whole(70, 1)
	p.whole(71, order)
	box := plane.Box{}
	if s.paper == 0 {
		box = p.extents()
	}
	p.flat(10, box.Min)
	p.flat(11, box.Max)
	p.point(12, plane.Point{})
	p.point(14, box.Min)
	p.point(15, box.Max)
	p.num(146, 0)
	p.point(13, plane.Point{})
	p.point(16, plane.Point{X: 1})
	p.point(17, plane.Point{Y: 1})
	p.whole(76, 0)
	p.ref(330, s.record)
}
