package dxf_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/internal/oracle"
	"brimline/plane"
	"brimline/sheet"
	"brimline/write/dxf"
)

type auditAnswer struct {
	Version       string
	Units         int
	Errors, Fixes []string
	Layers        map[string]bool
	Texts         []string
	Rings         []struct {
		Layer  string
		Closed bool
		Points [][3]float64
	}
	Courses []struct {
		Layer  string
		Closed bool
		Points [][3]float64
	}
	Spots [][3]float64
	Count int
}

// ezdxf reads both releases in both units, its audit finds nothing to mend, and the ring that it reads
// is the ring that was written.
func TestAuditByEzdxf(t *testing.T) {
	var ask []string
	var files []dxf.File
	for _, v := range versions {
		for _, u := range []sheet.ModelUnit{sheet.Millimetres, sheet.Inches} {
			files = append(files, sample(v, u), dxf.File{Version: v, Model: sheet.Model{Unit: u}})
		}
	}
	for _, f := range files {
		ask = append(ask, written(t, f))
	}
	var answers []auditAnswer
	oracle.Ask(t, "testdata/audit.py", []string{"ezdxf"}, ask, &answers)
	for i, a := range answers {
		f := files[i]
		if len(a.Errors) > 0 || len(a.Fixes) > 0 {
			t.Errorf("file %d: errors %q, fixes %q", i, a.Errors, a.Fixes)
		}
		want := map[sheet.ModelUnit]int{sheet.Millimetres: 4, sheet.Inches: 1}[f.Unit] // item D-05
		if f.Version == dxf.R12 {
			want = 0 // the release has no word for it
		}
		if a.Units != want {
			t.Errorf("file %d: units %d, want %d", i, a.Units, want)
		}
		if len(f.Items) == 0 {
			continue
		}
		compare(t, f, a)
	}
}

func compare(t *testing.T, f dxf.File, a auditAnswer) {
	t.Helper()
	outline, off, text := "outline rim", "Spa_ _", "R 2.40 ± 6 mm; 12.5°, 3²⁄₁₆″, 50 %, ^caret"
	if f.Version == dxf.R12 {
		outline, off, text = "OUTLINE_RIM", "SPA___", `R 2.40 %%p 6 mm; 12.5%%d, 3 2/16", 50 %, ^caret`
	}
	if on, ok := a.Layers[off]; on || !ok {
		t.Errorf("layer %q of %v should be switched off", off, a.Layers)
	}
	if !a.Layers[outline] {
		t.Errorf("layer %q of %v should be on", outline, a.Layers)
	}
	if !slices.ContainsFunc(a.Texts, func(s string) bool { return strings.ReplaceAll(s, "^ ", "^") == text }) {
		t.Errorf("texts %q", a.Texts)
	}
	if len(f.Items)-1 != a.Count {
		t.Errorf("%d entities of %d items, one of which only clears a ground", a.Count, len(f.Items))
	}
	r := a.Rings[0]
	if r.Layer != outline || !r.Closed {
		t.Errorf("first ring on %q, closed %v", r.Layer, r.Closed)
	}
	p := plane.Path{Closed: true}
	for i, v := range r.Points {
		w := r.Points[(i+1)%len(r.Points)]
		p.Segs = append(p.Segs, plane.Segment{A: plane.Point{X: v[0], Y: v[1]}, B: plane.Point{X: w[0], Y: w[1]}, Bulge: v[2]})
	}
	k := f.Unit.PerMetre()
	heights(t, a, k)
	if d := math.Abs(p.Area()/k/k - pool().Area()); d > 1e-9 {
		t.Errorf("area off by %g", d)
	}
}

// heights are read back as they were written.
func heights(t *testing.T, a auditAnswer, k float64) {
	t.Helper()
	c := climb()
	if len(a.Courses) != 2 || !a.Courses[0].Closed || a.Courses[1].Closed || len(a.Courses[0].Points) != len(c.At) {
		t.Fatalf("lines in space: %v", a.Courses)
	}
	for i, p := range a.Courses[0].Points {
		want := [3]float64{c.At[i].X * k, c.At[i].Y * k, c.Z[i] * k}
		for j := range p {
			if math.Abs(p[j]-want[j]) > 1e-9*k {
				t.Errorf("place %d is read as %v, written as %v", i, p, want)
			}
		}
	}
	if n := len(a.Spots); n != 2 || math.Abs(a.Spots[1][2]+1.25*k) > 1e-9*k || a.Spots[0][2] != 0 {
		t.Errorf("spots: %v", a.Spots)
	}
}
