package pdf

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"brimline/plane"
	"brimline/sheet"
)

// page writes the operators of one page in millimetres, y up, under one scaling matrix.
type page struct {
	doc      *fpdf.Fpdf
	height   float64
	pictures map[sheet.Hash][]byte
	err      error
}

func (p *page) draw(s sheet.Sheet) {
	p.doc.AddPageFormat("P", fpdf.SizeType{Wd: s.Size.W, Ht: s.Size.H})
	for _, it := range s.Flat() {
		switch shape := it.Shape.(type) {
		case sheet.Path:
			p.stroke(it, p.path(shape.Path))
		case sheet.Circle:
			p.stroke(it, p.ellipse(sheet.Ellipse{Centre: shape.Centre, A: shape.R, B: shape.R}))
		case sheet.Ellipse:
			p.stroke(it, p.ellipse(shape))
		case sheet.Text:
			p.text(it.Ink, shape)
		case sheet.Picture:
			p.picture(shape)
		default:
			p.fail(fmt.Errorf("shape %T cannot be drawn", it.Shape))
		}
	}
}

func (p *page) fail(err error) {
	if p.err == nil {
		p.err = err
	}
}

// num prints millimetres to a ten-thousandth.
func (p *page) num(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		p.fail(errNumber)
		return "0"
	}
	t := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(x, 'f', 4, 64), "0"), ".")
	if t == "-0" || t == "" {
		return "0"
	}
	return t
}

func (p *page) at(q plane.Point) string { return p.num(q.X) + " " + p.num(q.Y) }

// stroke writes a path with its pen, ink and fill, in a graphics state of its own.
func (p *page) stroke(it sheet.Item, path string) {
	stroke, line := it.Pen.Stroke()
	if path == "" || !line && it.Fill == nil {
		return
	}
	var b strings.Builder
	fmt.Fprintf(&b, "q %.6f 0 0 %.6f 0 0 cm 1 j ", perMM, perMM)
	op := "S"
	if line {
		b.WriteString(colour(it.Ink) + " RG " + p.num(stroke.Width) + " w ")
		b.WriteString(p.dash(stroke.Dash))
	}
	if it.Fill != nil {
		b.WriteString(colour(*it.Fill) + " rg ")
		op = "B"
		if !line {
			op = "f"
		}
	}
	b.WriteString(path + op + " Q")
	p.doc.RawWriteStr(b.String())
}

func (p *page) dash(lengths []float64) string {
	if len(lengths) == 0 {
		return "1 J [] 0 d "
	}
	var parts []string
	for _, l := range lengths {
		parts = append(parts, p.num(l))
	}
	return "0 J [" + strings.Join(parts, " ") + "] 0 d "
}

func colour(k sheet.Ink) string {
	r, g, b := k.RGB()
	return fmt.Sprintf("%.3f %.3f %.3f", float64(r)/255, float64(g)/255, float64(b)/255)
}

// text sets one line: the origin is moved and turned to the left end of the foot line, then the
// library writes there.
func (p *page) text(ink sheet.Ink, t sheet.Text) {
	f := t.Foot()
	sin, cos := math.Sincos(t.Turn)
	style := ""
	if t.Bold {
		style = "B"
	}
	p.doc.SetFont(family, style, sheet.Em(t.Height)*perMM)
	r, g, b := ink.RGB()
	p.doc.SetTextColor(int(r), int(g), int(b))
	p.doc.RawWriteStr(fmt.Sprintf("q %s %s %s %s %s %s cm", p.num(cos), p.num(sin), p.num(-sin), p.num(cos), p.num(f.X*perMM), p.num(f.Y*perMM)))
	p.doc.Text(0, p.height, t.S)
	p.doc.RawWriteStr("Q")
}

func (p *page) picture(s sheet.Picture) {
	data, ok := p.pictures[s.Hash]
	if !ok {
		p.fail(fmt.Errorf("the bytes of picture %x are missing", s.Hash[:4]))
		return
	}
	kind := sheet.PictureKind(data)
	if kind == "" {
		p.fail(fmt.Errorf("picture %x is neither PNG nor JPEG", s.Hash[:4]))
		return
	}
	name := fmt.Sprintf("%x", s.Hash)
	o := fpdf.ImageOptions{ImageType: kind}
	p.doc.RegisterImageOptionsReader(name, o, bytes.NewReader(data))
	p.doc.ImageOptions(name, s.Box.Min.X, p.height-s.Box.Max.Y, s.Box.Max.X-s.Box.Min.X, s.Box.Max.Y-s.Box.Min.Y, false, o, 0, "")
}
