package pdf_test

import (
	"bytes"
	"image"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"brimline/plane"
	"brimline/sheet"
	"brimline/write/pdf"
	"brimline/write/svg"
)

// writers is the one list of the writers of drawings: what every one of them owes is tested here.
var writers = []struct {
	name  string
	write func(io.Writer, sheet.Sheet) error
}{
	{"svg", svg.Write},
	{"pdf", func(w io.Writer, s sheet.Sheet) error { return pdf.Write(w, []sheet.Sheet{s}, meta()) }},
}

func meta() pdf.Meta {
	return pdf.Meta{Title: "Plan", Author: "crew 2", Subject: "as measured", Created: time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC)}
}

// sample has every shape.
func sample() sheet.Sheet {
	size, _ := sheet.Paper("A3")
	s := sheet.Sheet{Title: "Sample", Size: size, Items: size.Frame(), Pictures: map[sheet.Hash][]byte{{1}: dot()}}
	arc := plane.Path{Segs: []plane.Segment{
		{A: plane.Point{X: 100, Y: 100}, B: plane.Point{X: 200, Y: 100}},
		{A: plane.Point{X: 200, Y: 100}, B: plane.Point{X: 200, Y: 150}, Bulge: 1},
		{A: plane.Point{X: 200, Y: 150}, B: plane.Point{X: 100, Y: 100}, Bulge: -1.7},
	}, Closed: true}
	add := func(l sheet.Layer, p sheet.Pen, shape sheet.Shape) {
		s.Items = append(s.Items, sheet.Item{Layer: l, Pen: p, Shape: shape})
	}
	for _, stroke := range sheet.Strokes {
		add(sheet.LayerEdge, stroke.Pen, sheet.Path{Path: arc})
	}
	add(sheet.LayerMarks, sheet.PenThin, sheet.Circle{Centre: plane.Point{X: 50, Y: 50}, R: 2})
	add(sheet.LayerEllipses, sheet.PenHair, sheet.Ellipse{Centre: plane.Point{X: 80, Y: 50}, A: 9, B: 3, Turn: 0.4})
	add(sheet.LayerWords, "", sheet.Text{S: "area 36.73 m² ± 0.12", At: plane.Point{X: 60, Y: 200}, Height: 3.5})
	add(sheet.LayerWords, "", sheet.Text{S: "turned R 2.40", At: plane.Point{X: 60, Y: 220}, Height: 3.5, Turn: 1.1, Bold: true, Struck: true})
	add(sheet.LayerDimensions, sheet.PenThin, sheet.Dimension{A: plane.Point{X: 100, Y: 100}, B: plane.Point{X: 200, Y: 100}, Offset: -12, Text: "5.000", Height: 3.5, Share: 0.5})
	add(sheet.LayerAround, sheet.PenHair, sheet.Hatch{Rings: []plane.Path{arc}, Turn: 0.8, Pitch: 3})
	add(sheet.LayerPictures, "", sheet.Picture{Hash: sheet.Hash{1}, Box: plane.Box{Min: plane.Point{X: 300, Y: 200}, Max: plane.Point{X: 320, Y: 215}}})
	add(sheet.LayerTables, "", sheet.Table{At: plane.Point{X: 240, Y: 90}, Height: 2.5, Row: 5,
		Columns: []sheet.Column{{Title: []string{"state"}, Width: 30}}, Rows: [][]sheet.Cell{{{Text: "unfit", Symbol: sheet.BarredSquare, Ink: sheet.Wrong}}}})
	return s
}

// dot is a picture of one red pixel.
func dot() []byte {
	img := image.NewRGBA(image.Rect(0, 0, 1, 1))
	img.Pix[0], img.Pix[3] = 255, 255
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		panic(err)
	}
	return b.Bytes()
}

func TestSameBytesTwice(t *testing.T) {
	for _, w := range writers {
		var a, b bytes.Buffer
		if err := w.write(&a, sample()); err != nil {
			t.Fatalf("%s: %v", w.name, err)
		}
		time.Sleep(1100 * time.Millisecond) // past a second, which a clock in the bytes would show
		if err := w.write(&b, sample()); err != nil {
			t.Fatalf("%s: %v", w.name, err)
		}
		if !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("%s: two runs differ", w.name)
		}
	}
}

func TestWritersRefuse(t *testing.T) {
	with := func(shape sheet.Shape) sheet.Sheet {
		s := sample()
		s.Items = append(s.Items, sheet.Item{Layer: sheet.LayerEdge, Pen: sheet.PenEdge, Shape: shape})
		return s
	}
	for what, s := range map[string]sheet.Sheet{
		"no number":         with(sheet.Line(plane.Point{X: math.NaN()}, plane.Point{X: 1})),
		"infinite":          with(sheet.Circle{Centre: plane.Point{Y: math.Inf(1)}, R: 2}),
		"missing picture":   with(sheet.Picture{Hash: sheet.Hash{9}, Box: plane.Box{Max: plane.Point{X: 1, Y: 1}}}),
		"not a picture":     with(sheet.Picture{Hash: sheet.Hash{2}, Box: plane.Box{Max: plane.Point{X: 1, Y: 1}}}),
		"number in ellipse": with(sheet.Ellipse{A: math.NaN(), B: 1}),
	} {
		s.Pictures = map[sheet.Hash][]byte{{1}: dot(), {2}: []byte("GIF89a")}
		for _, w := range writers {
			var out bytes.Buffer
			if err := w.write(&out, s); err == nil {
				t.Errorf("%s: %s was written", w.name, what)
			} else if out.Len() > 0 {
				t.Errorf("%s: %s left %d bytes", w.name, what, out.Len())
			}
		}
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWritersPassOnErrors(t *testing.T) {
	for _, w := range writers {
		if err := w.write(fullDisk{}, sample()); err == nil {
			t.Errorf("%s: a full disk went unseen", w.name)
		}
	}
}

func TestEmptySheetAndOddText(t *testing.T) {
	size, _ := sheet.Paper("A4")
	for _, text := range []string{"", "<&>\"'", "]]>", "\x00\x07\x1b[31m", "bad \xff\xfe", "漢字 \U0001F3CA", "\u202e\u200b\ufeff", ")(\\", strings.Repeat("x", 5000)} {
		s := sheet.Sheet{Title: text, Size: size, Items: []sheet.Item{{Layer: sheet.LayerWords, Shape: sheet.Text{S: text, Height: 2.5}}}}
		for _, w := range writers {
			var out bytes.Buffer
			if err := w.write(&out, s); err != nil || out.Len() == 0 {
				t.Errorf("%s: text %q: %v, %d bytes", w.name, text, err, out.Len())
			}
		}
	}
}
