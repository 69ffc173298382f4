package dxf

import (
	"bytes"
	"fmt"
	"io"

	"brimline/plane"
	"brimline/sheet"
)

// Version is a release of the format.
type Version int

// The releases.
const (
	R2000 Version = iota // AC1015: LWPOLYLINE, every letter by escapes
	R12                  // AC1009: for old machines; POLYLINE, plain letters, layer names in capitals
)

// File is what is written: a model and the release that the reader of the file wants.
type File struct {
	sheet.Model
	Version Version
}

// Write writes the file. An error names a coordinate that is no number, an item on a layer that is
// not listed, a layer listed twice, a shape that has no place in a model, or the writer's own
// trouble; then nothing has been written but what the writer took.
func Write(w io.Writer, f File) error {
	if f.Scale <= 0 {
		f.Scale = 1
	}
	p := &printer{file: f, items: f.Flat(), extent: plane.EmptyBox()}
	p.fix()
	p.layerNames()
	entities := p.part(p.entities) // first: the view and the header tell the extents
	var body bytes.Buffer
	for _, part := range p.parts() {
		body.Write(p.part(part))
	}
	body.Write(entities)
	if p.modern() {
		body.Write(p.part(p.objects))
	}
	head := p.part(p.header) // last: it tells the next handle
	if p.err != nil {
		return fmt.Errorf("dxf of %q: %w", f.Title, p.err)
	}
	p.str(999, comment(f))
	p.out.Write(head)
	p.out.Write(body.Bytes())
	p.str(0, "EOF")
	_, err := w.Write(p.out.Bytes())
	return err
}

// parts are the sections between header and entities.
func (p *printer) parts() []func() {
	if p.modern() {
		return []func(){p.classes, p.tables, p.blocks}
	}
	return []func(){p.tables, p.blocks}
}

// part is what a function writes, taken out of the printer.
func (p *printer) part(write func()) []byte {
	write()
	out := bytes.Clone(p.out.Bytes())
	p.out.Reset()
	return out
}
