package svg

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"io"
	"strings"

	"brimline/sheet"
)

// Write writes the sheet. An error names a coordinate that is no number, a picture whose bytes are
// missing or neither PNG nor JPEG, or the writer's own trouble; then nothing has been written but
// what the writer took.
func Write(w io.Writer, s sheet.Sheet) error {
	p := &printer{height: s.Size.H, pictures: s.Pictures}
	items := s.Flat()
	p.head(s, items)
	layer := sheet.Layer("")
	for _, it := range items {
		if it.Layer != layer {
			if layer != "" {
				p.put("</g>\n")
			}
			layer = it.Layer
			p.put(`<g id="%s"><title>%s</title>`+"\n", id(layer), escape(string(layer)))
		}
		p.item(it)
	}
	if layer != "" {
		p.put("</g>\n")
	}
	p.put("</svg>\n")
	if p.err != nil {
		return fmt.Errorf("svg of sheet %q: %w", s.Title, p.err)
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// head opens the drawing: true size, a white ground, the weights of the font that are used.
func (p *printer) head(s sheet.Sheet, items []sheet.Item) {
	w, h := p.num(s.Size.W), p.num(s.Size.H)
	p.put(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	p.put(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" version="1.1" width="%smm" height="%smm" viewBox="0 0 %s %s" xml:space="preserve">`+"\n", w, h, w, h)
	p.put("<title>%s</title>\n", escape(sheet.Clean(s.Title)))
	regular, bold := weights(items)
	if regular || bold {
		p.put("<style>\n")
		if regular {
			p.face(400, sheet.RegularTTF)
		}
		if bold {
			p.face(700, sheet.BoldTTF)
		}
		p.put("</style>\n")
	}
	p.put(`<rect width="%s" height="%s" fill="#ffffff"/>`+"\n", w, h)
}

func (p *printer) face(weight int, ttf []byte) {
	p.put(`@font-face{font-family:"%s";font-weight:%d;src:url(data:font/ttf;base64,%s) format("truetype")}`+"\n",
		sheet.Family, weight, base64.StdEncoding.EncodeToString(ttf))
}

func weights(items []sheet.Item) (regular, bold bool) {
	for _, it := range items {
		if t, ok := it.Shape.(sheet.Text); ok {
			regular, bold = regular || !t.Bold, bold || t.Bold
		}
	}
	return regular, bold
}

// id of a layer's group: its name with dashes.
func id(l sheet.Layer) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, strings.ToLower(string(l)))
}

// escape makes cleaned text fit for XML content and attributes.
func escape(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(s)
}

type printer struct {
	out      bytes.Buffer
	height   float64
	pictures map[sheet.Hash][]byte
	err      error
}

func (p *printer) put(format string, args ...any) { fmt.Fprintf(&p.out, format, args...) }

func (p *printer) fail(err error) {
	if p.err == nil {
		p.err = err
	}
}
