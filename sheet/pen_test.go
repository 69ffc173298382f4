package sheet_test

import (
	"slices"
	"testing"

	"brimline/internal/checks"
	"brimline/sheet"
)

// Outside check D-03: widths are of the series of ISO 128-20; wide to narrow is 2:1.
func TestWidthsOfISO128(t *testing.T) {
	series := checks.Get(t, "D-03").Expected.List("line_widths_mm")
	for _, s := range sheet.Strokes {
		if !slices.Contains(series, s.Width) {
			t.Errorf("pen %s is %g mm wide", s.Pen, s.Width)
		}
	}
	edge, _ := sheet.PenEdge.Stroke()
	thin, _ := sheet.PenThin.Stroke()
	if edge.Width != 2*thin.Width {
		t.Errorf("edge %g, thin %g: not 2:1", edge.Width, thin.Width)
	}
}

func TestEveryDashComesBack(t *testing.T) {
	for _, s := range sheet.Strokes {
		if len(s.Dash)%2 != 0 {
			t.Errorf("pen %s: strokes and gaps do not pair", s.Pen)
		}
		if got, ok := s.Pen.Stroke(); !ok || got.Width != s.Width {
			t.Errorf("pen %s is not found", s.Pen)
		}
	}
	if _, ok := sheet.PenNone.Stroke(); ok {
		t.Error("no pen draws")
	}
	if _, ok := sheet.Pen("crayon").Stroke(); ok {
		t.Error("an unknown pen draws")
	}
}
