package dxf_test

import (
	"bytes"
	"strings"
	"testing"

	"brimline/plane"
	"brimline/read/dxf"
	"brimline/sheet"
	writer "brimline/write/dxf"

	"pgregory.net/rapid"
)

func file(t rapid.TB, v writer.Version, u sheet.ModelUnit, paths ...plane.Path) []byte {
	t.Helper()
	m := sheet.Model{Unit: u, Layers: []sheet.ModelLayer{{Name: "outline rim"}}}
	for _, p := range paths {
		m.Items = append(m.Items, sheet.Item{Layer: "outline rim", Shape: sheet.Path{Path: p}})
	}
	m.Items = append(m.Items, sheet.Item{Layer: "outline rim", Shape: sheet.Circle{R: 1}})
	var out bytes.Buffer
	if err := writer.Write(&out, writer.File{Model: m, Version: v}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// What is written is read back: every vertex to a billionth of a metre, every bulge as it was.
func TestBackAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plane.Path{Closed: rapid.Bool().Draw(t, "closed")}
		var pts []plane.Point
		for range rapid.IntRange(3, 8).Draw(t, "vertices") {
			pts = append(pts, plane.Point{X: rapid.Float64Range(-1e4, 1e4).Draw(t, "x"), Y: float64(len(pts)) + rapid.Float64Range(0, 0.9).Draw(t, "y")})
		}
		p.Segs = plane.Polyline(pts, p.Closed).Segs
		for i := range p.Segs {
			p.Segs[i].Bulge = rapid.Float64Range(-3, 3).Draw(t, "bulge")
		}
		v := writer.Version(rapid.IntRange(0, 1).Draw(t, "release"))
		u := sheet.ModelUnit(rapid.IntRange(0, 1).Draw(t, "unit"))
		got, err := dxf.Outlines(file(t, v, u, p, p.Reverse()))
		if err != nil || len(got) != 2 {
			t.Fatalf("%d outlines, %v", len(got), err)
		}
		layer := []string{"outline rim", "OUTLINE_RIM"}[v]
		if got[0].Layer != layer || got[0].Path.Closed != p.Closed || len(got[0].Path.Segs) != len(p.Segs) {
			t.Fatalf("layer %q, closed %v, %d segments", got[0].Layer, got[0].Path.Closed, len(got[0].Path.Segs))
		}
		for i, s := range p.Segs {
			r := got[0].Path.Segs[i]
			if r.A.Dist(s.A) > 1e-9 || r.B.Dist(s.B) > 1e-9 {
				t.Fatalf("segment %d: %v, want %v", i, r, s)
			}
			if r.Bulge != s.Bulge && (s.Bulge > 1e-15 || s.Bulge < -1e-15) {
				t.Fatalf("bulge %v, want %v", r.Bulge, s.Bulge)
			}
		}
	})
}

func TestRefused(t *testing.T) {
	good := string(file(t, writer.R2000, sheet.Millimetres, plane.Polyline([]plane.Point{{}, {X: 1}, {Y: 1}}, true)))
	bare := strings.Replace(strings.Replace(good, "1:1 in millimetres", "", 1), "$INSUNITS", "$OTHER", 1)
	for what, c := range map[string][2]string{
		"odd lines":    {good + "0\r\n", "do not make pairs"},
		"no code":      {strings.Replace(good, "  0\r\nSECTION", "zero\r\nSECTION", 1), "line 3"},
		"no number":    {strings.Replace(good, " 10\r\n1000.0\r\n 20\r\n0.0\r\n 10\r\n0.0", " 10\r\nmuch\r\n 20\r\n0.0\r\n 10\r\n0.0", 1), "is no number"},
		"unknown unit": {strings.Replace(strings.Replace(good, "1:1 in millimetres", "", 1), "$INSUNITS\r\n 70\r\n4", "$INSUNITS\r\n 70\r\n6", 1), "unit code 6"},
		"no unit":      {bare, "does not say its unit"},
		"empty":        {"", "do not make pairs"},
	} {
		if _, err := dxf.Outlines([]byte(c[0])); err == nil || !strings.Contains(err.Error(), c[1]) {
			t.Errorf("%s: %v", what, err)
		}
	}
	plain := strings.ReplaceAll(good, "\r\n", "\n")
	if got, err := dxf.Outlines([]byte(plain)); err != nil || len(got) != 1 {
		t.Errorf("plain line ends: %v, %v", got, err)
	}
}

// Whatever the bytes, an answer or an error, and only paths with numbers.
func FuzzOutlines(f *testing.F) {
	ring := plane.Polyline([]plane.Point{{}, {X: 1}, {Y: 1}}, true)
	for _, v := range []writer.Version{writer.R2000, writer.R12} {
		f.Add(file(f, v, sheet.Inches, ring))
	}
	f.Add([]byte("999\n1:1 in inches\n0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n20\n5\n"))
	f.Fuzz(func(t *testing.T, src []byte) {
		got, err := dxf.Outlines(src)
		if err != nil {
			return
		}
		for _, o := range got {
			for _, s := range o.Path.Segs {
				if !s.A.Finite() || !s.B.Finite() {
					t.Fatalf("%v", s)
				}
			}
		}
	})
}
