package dxf

import "brimline/plane"

// blockRecords are the records of the two spaces.
func (p *printer) blockRecords(t handle) {
	for _, b := range p.spaces() {
		p.recordAs(b.record, "BLOCK_RECORD", "AcDbBlockTableRecord", t, b.name)
		p.ref(340, b.layout)
	}
}

// space is the model's or the paper's, each a block with a layout.
type space struct {
	name, title    string
	record, layout handle
	paper          int
}

func (p *printer) spaces() []space {
	return []space{
		{"*Model_Space", "Model", p.fixed.model, p.fixed.modelLayout, 0},
		{"*Paper_Space", "Layout1", p.fixed.paper, p.fixed.paperLayout, 1},
	}
}

// blocks writes the two spaces, both empty: what is drawn stands among the entities.
func (p *printer) blocks() {
	p.section("BLOCKS")
	for _, b := range p.spaces() {
		if !p.modern() {
			break
		}
		p.object("BLOCK", p.next(), b.record)
		p.class("AcDbEntity")
		if b.paper == 1 {
			p.whole(67, 1)
		}
		p.str(8, "0")
		p.class("AcDbBlockBegin")
		p.str(2, b.name)
		p.whole(70, 0)
		p.point(10, plane.Point{})
		p.str(3, b.name)
		p.str(1, "")
		p.object("ENDBLK", p.next(), b.record)
		p.class("AcDbEntity")
		if b.paper == 1 {
			p.whole(67, 1)
		}
		p.str(8, "0")
		p.class("AcDbBlockEnd")
	}
	p.str(0, "ENDSEC")
}

// classes are those of the objects that the format does not build in.
func (p *printer) classes() {
	p.section("CLASSES")
	for _, c := range [][2]string{{"ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault"}, {"ACDBPLACEHOLDER", "AcDbPlaceHolder"}, {"LAYOUT", "AcDbLayout"}} {
		p.str(0, "CLASS")
		p.str(1, c[0])
		p.str(2, c[1])
		p.str(3, "ObjectDBX Classes")
		p.whole(90, 0)
		p.whole(280, 0)
		p.whole(281, 0)
	}
	p.str(0, "ENDSEC")
}
