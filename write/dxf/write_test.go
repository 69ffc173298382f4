package dxf_test

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"brimline/plane"
	"brimline/sheet"
	"brimline/write/dxf"
)

var versions = []dxf.Version{dxf.R2000, dxf.R12}

// pool is a ring of straights and arcs both ways.
func pool() plane.Path {
	pts := []plane.Point{{X: 0.5}, {X: 7.25}, {X: 8, Y: 0.75}, {X: 8, Y: 4}, {X: 5, Y: 4}, {X: 3, Y: 4}, {X: 0, Y: 4}, {Y: 0.5}}
	p := plane.Polyline(pts, true)
	for i, b := range []float64{0, math.Tan(math.Pi / 8), 0, 0, -0.37, 0, 1.2, 0.3} {
		p.Segs[i].Bulge = b
	}
	return p
}

// sample has every shape of a model, layers with awkward names, one switched off.
func sample(v dxf.Version, u sheet.ModelUnit) dxf.File {
	m := sheet.Model{Title: "Sample", Unit: u, Scale: 50}
	add := func(name sheet.Layer, pen sheet.Pen, ink sheet.Ink, off bool, shapes ...sheet.Shape) {
		m.Layers = append(m.Layers, sheet.ModelLayer{Name: name, Pen: pen, Ink: ink, Off: off})
		for _, s := range shapes {
			m.Items = append(m.Items, sheet.Item{Layer: name, Pen: pen, Ink: ink, Shape: s})
		}
	}
	add("outline rim", sheet.PenEdge, sheet.Black, false, sheet.Path{Path: pool()})
	add("outline/rim", sheet.PenEdge, sheet.Black, false, sheet.Path{Path: plane.Path{Segs: pool().Segs[2:6]}})
	add("Outline Rim", sheet.PenInferred, sheet.Black, false, sheet.Path{Path: plane.Path{Segs: pool().Segs[4:5]}})
	add("Spaß ±", sheet.PenAxis, sheet.Grey, true, sheet.Line(plane.Point{}, plane.Point{X: 9, Y: -1}))
	add("marks", sheet.PenThin, sheet.Black, false, sheet.Spot{At: plane.Point{X: 1, Y: 2}}, sheet.Circle{Centre: plane.Point{X: 1, Y: 2}, R: 0.05})
	add("findings", sheet.PenThin, sheet.Wrong, false,
		sheet.Text{S: "R 2.40 ± 6 mm; 12.5°, 3²⁄₁₆″, 50 %, ^caret", At: plane.Point{X: 2, Y: 2}, Height: 0.125},
		sheet.Text{S: "back\\slash %%d", At: plane.Point{X: 2, Y: 3}, Height: 0.175, Anchor: sheet.MidCentre, Turn: -0.4})
	add("rim in space", sheet.PenThin, sheet.Black, false, climb(), sheet.Spot{At: plane.Point{X: 2, Y: 2}, Z: -1.25},
		sheet.Course{At: []plane.Point{{X: 1}, {X: 3}}, Z: []float64{-0.5, -1.5}})
	m.Items = append(m.Items,
		sheet.Item{Layer: "marks", Fill: sheet.Filled(sheet.Black), Shape: sheet.Polyline(true, plane.Point{}, plane.Point{X: 1}, plane.Point{Y: 1})},
		sheet.Item{Layer: "marks", Fill: sheet.Filled(sheet.White), Shape: sheet.Circle{R: 4}},
		sheet.Item{Layer: "marks", Pen: sheet.PenThin, Ink: sheet.Good, Shape: sheet.Circle{R: 4}})
	return dxf.File{Model: m, Version: v}
}

// climb is a closed line in space.
func climb() sheet.Course {
	return sheet.Course{At: []plane.Point{{X: 0.5}, {X: 7.25}, {X: 8, Y: 4}}, Z: []float64{0.004, -0.0025, 0.1}, Closed: true}
}

func written(t testing.TB, f dxf.File) string {
	t.Helper()
	var out bytes.Buffer
	if err := dxf.Write(&out, f); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestSameBytes(t *testing.T) {
	for _, v := range versions {
		first, second := written(t, sample(v, sheet.Inches)), written(t, sample(v, sheet.Inches))
		if first != second {
			t.Errorf("version %d: two runs differ", v)
		}
	}
}

func TestRefused(t *testing.T) {
	with := func(layer sheet.Layer, s sheet.Shape) dxf.File {
		f := sample(dxf.R2000, sheet.Millimetres)
		f.Items = append(f.Items, sheet.Item{Layer: layer, Pen: sheet.PenThin, Shape: s})
		return f
	}
	twice := sample(dxf.R2000, sheet.Millimetres)
	twice.Layers = append(twice.Layers, twice.Layers[0])
	for what, f := range map[string]dxf.File{
		"no number":     with("marks", sheet.Line(plane.Point{X: math.NaN()}, plane.Point{X: 1})),
		"infinite":      with("marks", sheet.Circle{R: math.Inf(1)}),
		"no radius":     with("marks", sheet.Circle{}),
		"unlisted":      with("marcs", sheet.Circle{R: 1}),
		"ellipse":       with("marks", sheet.Ellipse{A: 2, B: 1}),
		"listed twice":  twice,
		"no heights":    with("marks", sheet.Course{At: make([]plane.Point, 3), Z: make([]float64, 2)}),
		"one place":     with("marks", sheet.Course{At: make([]plane.Point, 1), Z: make([]float64, 1)}),
		"no height":     with("marks", sheet.Spot{Z: math.NaN()}),
		"text nowhere":  with("marks", sheet.Text{S: "x", Height: 1, At: plane.Point{Y: math.NaN()}}),
		"bulge without": with("marks", sheet.Path{Path: plane.Path{Segs: []plane.Segment{{B: plane.Point{X: 1}, Bulge: math.NaN()}, {A: plane.Point{X: 1}}}}}),
	} {
		for _, v := range versions {
			f.Version = v
			var out bytes.Buffer
			if err := dxf.Write(&out, f); err == nil || out.Len() > 0 {
				t.Errorf("%s: error %v, %d bytes", what, err, out.Len())
			}
		}
	}
	if err := dxf.Write(full{}, sample(dxf.R12, sheet.Millimetres)); err == nil {
		t.Error("a full disk went unseen")
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestEmptyModel(t *testing.T) {
	for _, v := range versions {
		structure(t, written(t, dxf.File{Version: v}), v)
	}
}

// Whatever a text or a layer's name holds, the file stays one of pairs and sound.
func FuzzText(f *testing.F) {
	for _, s := range []string{"", "\x00\x1b", "bad \xff", "漢字 \U0001F3CA", "a\r\nb", "\\U+0041", "%%%", "^J", "<>:?*|=", strings.Repeat("é", 400)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, in string) {
		for _, v := range versions {
			m := sample(v, sheet.Millimetres)
			for _, name := range []sheet.Layer{"n " + sheet.Layer(in), "m " + sheet.Layer(in)} {
				m.Layers = append(m.Layers, sheet.ModelLayer{Name: name})
				m.Items = append(m.Items, sheet.Item{Layer: name, Shape: sheet.Text{S: in, Height: 1}})
			}
			structure(t, written(t, m), v)
		}
	})
}

func ExampleWrite() {
	ring := plane.Polyline([]plane.Point{{}, {X: 4}, {X: 4, Y: 2}, {Y: 2}}, true)
	f := dxf.File{Model: sheet.Model{
		Layers: []sheet.ModelLayer{{Name: "outline rim", Pen: sheet.PenEdge}},
		Items:  []sheet.Item{{Layer: "outline rim", Shape: sheet.Path{Path: ring}}},
	}}
	var out bytes.Buffer
	fmt.Println(dxf.Write(&out, f), strings.Count(out.String(), "LWPOLYLINE"))
	// Output: <nil> 1
}
