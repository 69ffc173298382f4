package dxf

import "brimline/sheet"

// fixed are the objects that others point at.
type fixed struct {
	model, paper             handle // block records
	modelLayout, paperLayout handle
	root, layouts, groups    handle
	plotStyles, plotStyle    handle
}

func (p *printer) fix() {
	p.fixed = fixed{p.next(), p.next(), p.next(), p.next(), p.next(), p.next(), p.next(), p.next(), p.next()}
}

func (p *printer) section(name string) {
	p.str(0, "SECTION")
	p.str(2, name)
}

// tables writes the tables, each with what the release asks for and what the drawing uses.
func (p *printer) tables() {
	p.section("TABLES")
	p.table("VPORT", 1, func(t handle) { p.view(t) })
	lines := lineTypes(p.file.Layers)
	n := len(lines) + 1
	if p.modern() {
		n += 2
	}
	p.table("LTYPE", n, func(t handle) {
		if p.modern() {
			p.lineType(t, "ByBlock", "", nil)
			p.lineType(t, "ByLayer", "", nil)
		}
		p.lineType(t, "Continuous", "Solid line", nil)
		for _, s := range lines {
			p.lineType(t, lineName(s.Pen), lineSays(s), s.Dash)
		}
	})
	p.table("LAYER", len(p.file.Layers)+1, func(t handle) {
		p.layer(t, "0", sheet.ModelLayer{Pen: sheet.PenThin})
		for _, l := range p.file.Layers {
			p.layer(t, p.names[l.Name], l)
		}
	})
	p.table("STYLE", 1, func(t handle) { p.style(t) })
	p.table("VIEW", 0, nil)
	p.table("UCS", 0, nil)
	p.table("APPID", 1, func(t handle) {
		p.record("APPID", "AcDbRegAppTableRecord", t, "ACAD")
		p.whole(70, 0)
	})
	if p.modern() {
		p.table("DIMSTYLE", 1, func(t handle) { p.dimStyle(t) })
		p.table("BLOCK_RECORD", 2, func(t handle) { p.blockRecords(t) })
	}
	p.str(0, "ENDSEC")
}

func (p *printer) table(name string, n int, rows func(t handle)) {
	p.str(0, "TABLE")
	p.str(2, name)
	t := p.next()
	if p.modern() {
		p.ref(5, t)
		p.ref(330, 0)
		p.class("AcDbSymbolTable")
	}
	p.whole(70, n)
	if name == "DIMSTYLE" {
		p.class("AcDbDimStyleTable")
		p.whole(71, n)
	}
	if rows != nil {
		rows(t)
	}
	p.str(0, "ENDTAB")
}

// record begins a row of a table with its name.
func (p *printer) record(kind, class string, table handle, name string) handle {
	h := p.next()
	p.recordAs(h, kind, class, table, name)
	return h
}

func (p *printer) recordAs(h handle, kind, class string, table handle, name string) {
	p.str(0, kind)
	if p.modern() {
		code := 5
		if kind == "DIMSTYLE" {
			code = 105
		}
		p.ref(code, h)
		p.ref(330, table)
		p.class("AcDbSymbolTableRecord")
		p.class(class)
	}
	p.str(2, name)
}
