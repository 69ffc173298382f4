package dxf

import (
	"fmt"

	"brimline/plane"
	"brimline/sheet"
)

// insUnits are the codes of $INSUNITS: 4 millimetres, 1 inches (item D-05 of testdata/checks).
func insUnits(u sheet.ModelUnit) int {
	if u == sheet.Inches {
		return 1
	}
	return 4
}

// extents is the box of what is drawn; with nothing drawn, a unit about the origin.
func (p *printer) extents() plane.Box {
	if p.extent.Empty() {
		return plane.Box{Max: plane.Point{X: 1, Y: 1}}
	}
	return p.extent
}

// header writes the variables. The scale of line types and the sizes of letters are those of the
// paper's millimetres at the model's scale.
func (p *printer) header() {
	box := p.extents()
	paper := float64(p.file.Scale)
	if p.file.Unit == sheet.Inches {
		paper /= 25.4
	}
	p.section("HEADER")
	p.variable("$ACADVER", func() { p.str(1, map[Version]string{R2000: "AC1015", R12: "AC1009"}[p.file.Version]) })
	if p.modern() {
		p.variable("$DWGCODEPAGE", func() { p.str(3, "ANSI_1252") })
	}
	p.variable("$INSBASE", func() { p.point(10, plane.Point{}) })
	p.variable("$EXTMIN", func() { p.point(10, box.Min) })
	p.variable("$EXTMAX", func() { p.point(10, box.Max) })
	p.variable("$LIMMIN", func() { p.flat(10, box.Min) })
	p.variable("$LIMMAX", func() { p.flat(10, box.Max) })
	p.variable("$LTSCALE", func() { p.num(40, paper) })
	p.variable("$TEXTSIZE", func() { p.num(40, 3.5*paper) })
	p.variable("$TEXTSTYLE", func() { p.str(7, "STANDARD") })
	p.variable("$CLAYER", func() { p.str(8, "0") })
	p.variable("$LUNITS", func() { p.whole(70, 2) })
	p.variable("$LUPREC", func() { p.whole(70, 3) })
	p.variable("$AUNITS", func() { p.whole(70, 0) })
	p.variable("$PDMODE", func() { p.whole(70, 0) })
	if p.modern() {
		p.variable("$MEASUREMENT", func() { p.whole(70, flag(p.file.Unit == sheet.Millimetres)) })
		p.variable("$INSUNITS", func() { p.whole(70, insUnits(p.file.Unit)) })
		p.variable("$TILEMODE", func() { p.whole(70, 1) })
	} else {
		p.variable("$HANDLING", func() { p.whole(70, 1) })
	}
	p.variable("$HANDSEED", func() { p.ref(5, p.last+1) })
	p.str(0, "ENDSEC")
}

func (p *printer) variable(name string, value func()) {
	p.str(9, name)
	value()
}

// comment is the first line of a file, for people and for R12, which has no word for its unit.
func comment(f File) string { return fmt.Sprintf("brimline, 1:1 in %s", f.Unit.Name()) }
