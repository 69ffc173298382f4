package fieldbook_test

import (
	"math"
	"testing"

	"brimline/fieldbook"
)

// The figures are common practice, no source.
func TestDefaultSigma(t *testing.T) {
	for _, c := range []struct {
		kind, part, class string
		distance, want    float64
	}{
		{"tie", "is", "", 0, 0.005}, {"tie", "is", "template", 0, 0.005}, {"tie", "is", "drawing", 0, 0.150},
		{"offset", "left", "measured", 3, 0.005}, {"offset", "at", "", 3, math.Hypot(0.005, 0.030)}, {"offset", "at", "drawing", 3, 0.150},
		{"seen", "x", "", 0, 0.004}, {"seen", "y", "drawing", 0, 0.300}, {"bow", "is", "", 0, 0.005}, {"turn", "is", "", 0, 0.02 * deg}, {"square", "is", "drawing", 0, deg}, {"straight", "across", "", 0, 0.005}, {"level", "is", "", 0, 0},
		{"level", "rise", "", 0, 0.002}, {"staff", "is", "", 0, 0.001}, {"water", "is", "", 0, 0.0015}, {"depth", "is", "", 0, 0.008}, {"depth", "left", "", 0, 0.050}, {"plumb", "outward", "drawing", 0, 0.050},
	} {
		if got := fieldbook.DefaultSigma(c.kind, c.part, c.class, 10, c.distance); math.Abs(got-c.want) > 1e-15 {
			t.Errorf("%s %s %s at %v m: %v; want %v", c.kind, c.part, c.class, c.distance, got, c.want)
		}
	}
}

// Every measured kind has its row, and every row has a source and a kind.
func TestDefaultsCoverKinds(t *testing.T) {
	rows := map[string]bool{}
	for _, d := range fieldbook.Defaults {
		rows[d.Kind] = true
		if d.Source == "" || !(d.Sigma > 0) {
			t.Errorf("row %+v", d)
		}
	}
	for _, k := range fieldbook.Kinds {
		if !rows[k.Name()] {
			t.Errorf("no default for %s", k.Name())
		}
	}
	if len(rows) != len(fieldbook.Kinds) {
		t.Errorf("rows for %v", rows)
	}
}
