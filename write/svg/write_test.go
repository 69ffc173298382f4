package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"brimline/plane"
	"brimline/sheet"
	"brimline/write/svg"
)

// element is what a drawing is checked by.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

func elements(t testing.TB, s sheet.Sheet) []element {
	t.Helper()
	var out bytes.Buffer
	if err := svg.Write(&out, s); err != nil {
		t.Fatal(err)
	}
	d := xml.NewDecoder(&out)
	var list []element
	var open []int
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return list
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		switch x := tok.(type) {
		case xml.StartElement:
			e := element{name: x.Name.Local, attrs: map[string]string{}}
			for _, a := range x.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			open = append(open, len(list))
			list = append(list, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if n := len(open); n > 0 {
				list[open[n-1]].text += string(x)
			}
		}
	}
}

func named(list []element, name string) []element {
	var out []element
	for _, e := range list {
		if e.name == name {
			out = append(out, e)
		}
	}
	return out
}

func one(shape sheet.Shape) sheet.Sheet {
	size, _ := sheet.Paper("A4")
	return sheet.Sheet{Title: "One", Size: size, Items: []sheet.Item{{Layer: sheet.LayerInferred, Pen: sheet.PenInferred, Shape: shape}}}
}

func TestMillimetres(t *testing.T) {
	root := elements(t, one(sheet.Circle{R: 1}))[0]
	for key, want := range map[string]string{"width": "210mm", "height": "297mm", "viewBox": "0 0 210 297"} {
		if root.attrs[key] != want {
			t.Errorf("%s = %q, want %q", key, root.attrs[key], want)
		}
	}
}

func TestLayersAreGroups(t *testing.T) {
	list := elements(t, one(sheet.Circle{R: 1}))
	g := named(list, "g")
	if len(g) != 1 || g[0].attrs["id"] != "edge-inferred" {
		t.Errorf("groups %v", g)
	}
	c := named(list, "circle")[0]
	if c.attrs["stroke-width"] != "0.5" || c.attrs["stroke-dasharray"] != "4 2" || c.attrs["fill"] != "none" {
		t.Errorf("pen %v", c.attrs)
	}
}

// Arcs are A commands; read as the standard says, they run where the arc runs and end where it ends.
func TestArcsStayArcs(t *testing.T) {
	for _, bulge := range []float64{0.3, -0.3, 1.8, -1.8, 0.9999, -0.9999, 1, 6} {
		seg := plane.Segment{A: plane.Point{X: 40, Y: 60}, B: plane.Point{X: 90, Y: 75}, Bulge: bulge}
		d := named(elements(t, one(sheet.Path{Path: plane.Path{Segs: []plane.Segment{seg}}})), "path")[0].attrs["d"]
		commands := strings.Split(d, "A")
		at := numbers(t, strings.TrimPrefix(commands[0], "M"))
		from, length := plane.Point{X: at[0], Y: 297 - at[1]}, 0.0
		for _, c := range commands[1:] {
			v := numbers(t, c)
			piece := arcOf(from, plane.Point{X: v[5], Y: 297 - v[6]}, v[0], v[3] == 1, v[4] == 1)
			if q, _ := seg.Nearest(piece.At(0.5)); q.Dist(piece.At(0.5)) > 0.005 {
				t.Errorf("bulge %g: a piece runs through %v, off the arc", bulge, piece.At(0.5))
			}
			length += piece.Length()
			from = piece.B
		}
		if from.Dist(seg.B) > 0.001 || length < seg.Length()-0.01 || length > seg.Length()+0.01 {
			t.Errorf("bulge %g: ends at %v after %g mm, want %v after %g", bulge, from, length, seg.B, seg.Length())
		}
	}
}

func numbers(t *testing.T, s string) []float64 {
	t.Helper()
	var out []float64
	for _, f := range strings.Fields(s) {
		x, err := strconv.ParseFloat(f, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, x)
	}
	return out
}

// arcOf reads an A command as SVG 1.1, 8.3.8 says it, in y up: the sweep flag means clockwise.
func arcOf(a, b plane.Point, r float64, large, sweep bool) plane.Segment {
	half := math.Min(1, a.Dist(b)/2/r)
	angle := 2 * math.Asin(half)
	if large {
		angle = 2*math.Pi - angle
	}
	if sweep {
		angle = -angle
	}
	return plane.Segment{A: a, B: b, Bulge: math.Tan(angle / 4)}
}

func TestTextAsText(t *testing.T) {
	s := one(sheet.Text{S: "R 2.40 < 3 & \"more\"", At: plane.Point{X: 10, Y: 20}, Height: 3.5, Turn: math.Pi / 2, Bold: true})
	list := elements(t, s)
	e := named(list, "text")[0]
	if e.text != "R 2.40 < 3 & \"more\"" {
		t.Errorf("text %q", e.text)
	}
	if e.attrs["transform"] != "rotate(-90 10 277)" || e.attrs["x"] != "10" || e.attrs["y"] != "277" || e.attrs["font-weight"] != "700" {
		t.Errorf("attributes %v", e.attrs)
	}
	style := named(list, "style")[0].text
	if !strings.Contains(style, "font-weight:700") || strings.Contains(style, "font-weight:400") {
		t.Error("the weights embedded are not those used")
	}
}

// Whatever a text holds, the drawing stays XML and holds the cleaned text.
func FuzzText(f *testing.F) {
	for _, s := range []string{"", "<&>\"'", "]]>", "\x00\x1b", "bad \xff", "漢", "\u202e\ufffe\uffff", "&#0;", "<!--", "<?x?>", "a  b "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, in string) {
		s := one(sheet.Text{S: in, Height: 2.5})
		s.Title = in
		texts := named(elements(t, s), "text")
		want := sheet.Clean(in)
		if want == "" {
			if len(texts) != 0 {
				t.Errorf("%q drew %q", in, texts[0].text)
			}
			return
		}
		if got := texts[0].text; got != want {
			t.Errorf("%q became %q, want %q", in, got, want)
		}
	})
}
