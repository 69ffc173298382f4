package sheet_test

import (
	"math"
	"testing"

	"brimline/internal/checks"
	"brimline/sheet"
)

// Outside check D-02: ISO 216 sizes and the drawing space of ISO 5457:1999.
func TestDrawingSpace(t *testing.T) {
	item := checks.Get(t, "D-02")
	var got []float64
	for _, name := range []string{"A1", "A2", "A3", "A4"} {
		s, ok := sheet.Paper(name)
		if !ok {
			t.Fatalf("no paper %s", name)
		}
		if s.Upright() != (name == "A4") {
			t.Errorf("%s lies the wrong way", name)
		}
		b := s.Space()
		w, h := b.Max.X-b.Min.X, b.Max.Y-b.Min.Y
		got = append(got, math.Min(w, h), math.Max(w, h))
	}
	want := item.Expected.Flat("drawing_space_mm")[2:] // A0 is no sheet of ours
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("space %d: %g mm, want %g", i, got[i], want[i])
		}
	}
}

// ASME Y14.1: 8.5 × 11, 11 × 17, 17 × 22 and 22 × 34 inches.
func TestAnsiSizes(t *testing.T) {
	for name, inches := range map[string][2]float64{"ANSI A": {8.5, 11}, "ANSI B": {17, 11}, "ANSI C": {22, 17}, "ANSI D": {34, 22}} {
		s, ok := sheet.Paper(name)
		if !ok || math.Abs(s.W/25.4-inches[0]) > 1e-12 || math.Abs(s.H/25.4-inches[1]) > 1e-12 {
			t.Errorf("%s is %g × %g mm", name, s.W, s.H)
		}
	}
	if _, ok := sheet.Paper("A9"); ok {
		t.Error("A9 is on the list")
	}
}

func TestTurned(t *testing.T) {
	s, _ := sheet.Paper("A4")
	if l := s.Turned(); l.Upright() || l.W != 297 || l.H != 210 {
		t.Errorf("A4 turned is %v", l)
	}
}
