package svg

import (
	"encoding/base64"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"brimline/plane"
	"brimline/sheet"
)

var errNumber = errors.New("a coordinate is no number")

// num prints millimetres to a thousandth without trailing zeros.
func (p *printer) num(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		p.fail(errNumber)
		return "0"
	}
	t := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(x, 'f', 3, 64), "0"), ".")
	if t == "-0" || t == "" {
		return "0"
	}
	return t
}

// at prints a place: x to the right, y downward as SVG has it.
func (p *printer) at(q plane.Point) string { return p.num(q.X) + " " + p.num(p.height-q.Y) }

func (p *printer) item(it sheet.Item) {
	switch s := it.Shape.(type) {
	case sheet.Path:
		p.put(`<path d="%s"%s/>`+"\n", p.path(s.Path), p.style(it))
	case sheet.Circle:
		p.put(`<circle cx="%s" cy="%s" r="%s"%s/>`+"\n", p.num(s.Centre.X), p.num(p.height-s.Centre.Y), p.num(s.R), p.style(it))
	case sheet.Ellipse:
		c := p.at(s.Centre)
		p.put(`<ellipse rx="%s" ry="%s" transform="translate(%s) rotate(%s)"%s/>`+"\n",
			p.num(s.A), p.num(s.B), c, p.num(-s.Turn*180/math.Pi), p.style(it))
	case sheet.Text:
		p.text(it.Ink, s)
	case sheet.Picture:
		p.picture(s)
	default:
		p.fail(fmt.Errorf("shape %T cannot be drawn", it.Shape))
	}
}

// mostSweep of one A command. End points and radius are rounded, and a half circle would move by far
// more than their rounding; a third of a circle does not.
const mostSweep = 2 * math.Pi / 3

// path is the d attribute: arcs as A commands, counter-clockwise ones with sweep flag 0.
func (p *printer) path(q plane.Path) string {
	var b strings.Builder
	for i, s := range q.Segs {
		if i == 0 {
			b.WriteString("M" + p.at(s.A))
		}
		if s.Straight() {
			b.WriteString("L" + p.at(s.B))
			continue
		}
		sweep := 0
		if s.Bulge < 0 {
			sweep = 1
		}
		r := p.num(math.Abs(s.Radius()))
		n := math.Ceil(math.Abs(s.Sweep()) / mostSweep)
		for k := 1.0; k < n; k++ {
			fmt.Fprintf(&b, "A%s %s 0 0 %d %s", r, r, sweep, p.at(s.At(k/n)))
		}
		fmt.Fprintf(&b, "A%s %s 0 0 %d %s", r, r, sweep, p.at(s.B))
	}
	if q.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

// style is the pen, the ink and the fill as attributes.
func (p *printer) style(it sheet.Item) string {
	out := ` fill="none"`
	if it.Fill != nil {
		out = ` fill="` + hex(*it.Fill) + `"`
	}
	stroke, ok := it.Pen.Stroke()
	if !ok {
		return out
	}
	out += fmt.Sprintf(` stroke="%s" stroke-width="%s" stroke-linejoin="round"`, hex(it.Ink), p.num(stroke.Width))
	if len(stroke.Dash) == 0 {
		return out + ` stroke-linecap="round"`
	}
	var dash []string
	for _, d := range stroke.Dash {
		dash = append(dash, p.num(d))
	}
	return out + ` stroke-dasharray="` + strings.Join(dash, " ") + `"`
}

func hex(k sheet.Ink) string {
	r, g, b := k.RGB()
	return fmt.Sprintf("#%02x%02x%02x", r, g, b)
}

// text sets one line from the left end of its foot line.
func (p *printer) text(ink sheet.Ink, t sheet.Text) {
	f := t.Foot()
	p.put(`<text x="%s" y="%s" font-family="%s" font-size="%s"`, p.num(f.X), p.num(p.height-f.Y), sheet.Family, p.num(sheet.Em(t.Height)))
	if t.Bold {
		p.put(` font-weight="700"`)
	}
	if ink != sheet.Black {
		p.put(` fill="%s"`, hex(ink))
	}
	if t.Turn != 0 {
		p.put(` transform="rotate(%s %s)"`, p.num(-t.Turn*180/math.Pi), p.at(f))
	}
	p.put(">%s</text>\n", escape(t.S))
}

func (p *printer) picture(s sheet.Picture) {
	bytes, ok := p.pictures[s.Hash]
	if !ok {
		p.fail(fmt.Errorf("the bytes of picture %x are missing", s.Hash[:4]))
		return
	}
	kind := sheet.PictureKind(bytes)
	if kind == "" {
		p.fail(fmt.Errorf("picture %x is neither PNG nor JPEG", s.Hash[:4]))
		return
	}
	p.put(`<image x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" xlink:href="data:image/%s;base64,%s"/>`+"\n",
		p.num(s.Box.Min.X), p.num(p.height-s.Box.Max.Y), p.num(s.Box.Max.X-s.Box.Min.X), p.num(s.Box.Max.Y-s.Box.Min.Y),
		kind, base64.StdEncoding.EncodeToString(bytes))
}
