package pdf_test

import (
	"bytes"
	"image"
	"image/draw"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"brimline/plane"
	"brimline/sheet"
	"brimline/write/pdf"
)

// poppler runs one of its programs on the document; without poppler the test is skipped, with
// FULL=1 it fails.
func poppler(t *testing.T, doc []byte, program string, args ...string) (dir string, out []byte) {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		if os.Getenv("FULL") == "1" {
			t.Fatalf("%s is missing", program)
		}
		t.Skipf("%s is missing", program)
	}
	dir = t.TempDir()
	file := filepath.Join(dir, "doc.pdf")
	if err := os.WriteFile(file, doc, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		args[i] = strings.ReplaceAll(strings.ReplaceAll(a, "IN", file), "DIR", dir)
	}
	out, err := exec.Command(program, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", program, err, out)
	}
	return dir, out
}

func document(t *testing.T, sheets ...sheet.Sheet) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, sheets, meta()); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

var pageSize = regexp.MustCompile(`Page +\d+ size: +([0-9.]+) x ([0-9.]+) pts`)

func TestPageSizes(t *testing.T) {
	var sheets []sheet.Sheet
	for _, size := range sheet.Sizes {
		sheets = append(sheets, sheet.Sheet{Size: size, Items: size.Frame()})
	}
	_, out := poppler(t, document(t, sheets...), "pdfinfo", "-f", "1", "-l", "99", "IN")
	found := pageSize.FindAllStringSubmatch(string(out), -1)
	if len(found) != len(sheets) {
		t.Fatalf("%d pages\n%s", len(found), out)
	}
	for i, m := range found {
		w, _ := strconv.ParseFloat(m[1], 64)
		h, _ := strconv.ParseFloat(m[2], 64)
		if s := sheets[i].Size; math.Abs(w/72*25.4-s.W) > 0.01 || math.Abs(h/72*25.4-s.H) > 0.01 {
			t.Errorf("%s is %g × %g mm", s.Name, w/72*25.4, h/72*25.4)
		}
	}
	for _, want := range []string{"Title:           Plan", "Author:          crew 2", "Producer:        brimline", "2026"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
}

func TestTextCanBeSearched(t *testing.T) {
	size, _ := sheet.Paper("A4")
	s := sheet.Sheet{Size: size}
	want := []string{"area 36.73 m² ± 0.12", "17′ 1¹⁵⁄₁₆″", "−3.2 × 4°", "Größe łódź Ωχ Пруд", "<b> & (c) \\"}
	for i, w := range want {
		s.Items = append(s.Items, sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{
			S: w, At: plane.Point{X: 30, Y: 250 - 10*float64(i)}, Height: 3.5, Bold: i%2 == 1}})
	}
	_, out := poppler(t, document(t, s), "pdftotext", "-layout", "IN", "-")
	for _, w := range want {
		if !strings.Contains(string(out), w) {
			t.Errorf("%q is not in %q", w, out)
		}
	}
}

// A line of 150 mm, a circle of 60 mm and an ellipse measure so on the rendered page.
func TestTrueToScale(t *testing.T) {
	size, _ := sheet.Paper("A4")
	for name, c := range map[string]struct {
		shape sheet.Shape
		w, h  float64
	}{
		"line":    {sheet.Line(plane.Point{X: 30, Y: 200}, plane.Point{X: 180, Y: 200}), 150, 0},
		"circle":  {sheet.Circle{Centre: plane.Point{X: 90, Y: 120}, R: 30}, 60, 60},
		"arc":     {sheet.Path{Path: plane.Path{Segs: []plane.Segment{{A: plane.Point{X: 60, Y: 60}, B: plane.Point{X: 140, Y: 60}, Bulge: -1}}}}, 80, 40},
		"ellipse": {sheet.Ellipse{Centre: plane.Point{X: 100, Y: 100}, A: 50, B: 20, Turn: math.Pi / 2}, 40, 100},
	} {
		s := sheet.Sheet{Size: size, Items: []sheet.Item{{Layer: sheet.LayerEdge, Pen: sheet.PenHair, Shape: c.shape}}}
		const dpi = 300
		dir, _ := poppler(t, document(t, s), "pdftoppm", "-r", strconv.Itoa(dpi), "-gray", "-png", "IN", "DIR/page")
		w, h := inked(t, filepath.Join(dir, "page-1.png"))
		mm := 25.4 / dpi
		if math.Abs(w*mm-c.w) > 0.25 || math.Abs(h*mm-c.h) > 0.25 {
			t.Errorf("%s is %.2f × %.2f mm on paper, want %g × %g", name, w*mm, h*mm, c.w, c.h)
		}
	}
}

// inked is the extent of all dark pixels, less the one that a line is wide.
func inked(t *testing.T, file string) (w, h float64) {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	page, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	img := image.NewGray(page.Bounds())
	draw.Draw(img, img.Bounds(), page, page.Bounds().Min, draw.Src)
	box := plane.EmptyBox()
	b := img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if img.GrayAt(x, y).Y < 0x90 {
				box = box.Join(plane.BoundsOf(plane.Point{X: float64(x), Y: float64(y)}))
			}
		}
	}
	if box.Empty() {
		t.Fatal("the page is blank")
	}
	return box.Max.X - box.Min.X, box.Max.Y - box.Min.Y
}

func TestDocumentRefused(t *testing.T) {
	size, _ := sheet.Paper("A4")
	s := []sheet.Sheet{{Size: size}}
	if err := pdf.Write(&bytes.Buffer{}, nil, meta()); err == nil {
		t.Error("a document without a sheet was written")
	}
	m := meta()
	m.Created = pdf.Meta{}.Created
	if err := pdf.Write(&bytes.Buffer{}, s, m); err == nil {
		t.Error("a document without a date was written")
	}
}
