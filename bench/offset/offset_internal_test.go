package main

import (
	"math"
	"strings"
	"testing"

	"brimline/internal/parallels"
)

func TestMedianLine(t *testing.T) {
	if got := median([]line{{T: 3, Area: 3}, {T: 1, Area: 1}, {T: 2, Area: 2}}); got.T != 2 || got.Area != 2 {
		t.Errorf("%+v", got)
	}
	if got := median(nil); !math.IsNaN(got.T) || !math.IsNaN(got.Area) {
		t.Errorf("of nothing: %+v", got)
	}
}

func TestWrongAreaIsTold(t *testing.T) {
	good := row{kind: "smooth", n: 200, d: 0.3, ours: line{Area: 50}, exact: 50.000009}
	if err := wrong([]row{good}); err != nil {
		t.Error(err)
	}
	for _, exact := range []float64{50.00002, math.NaN()} {
		bad := good
		bad.exact = exact
		if err := wrong([]row{good, bad}); err == nil || !strings.Contains(err.Error(), "smooth 200 0.3") {
			t.Errorf("exactly %v: %v", exact, err)
		}
	}
}

func TestNamesComeBack(t *testing.T) {
	for _, kind := range parallels.Kinds {
		p, d, err := named(name(kind, 24, -0.3))
		if err != nil || d != -0.3 || p.Area() != parallels.Ring(kind, 24).Area() {
			t.Errorf("%s: %v, %v", kind, d, err)
		}
	}
	if _, _, err := named("smooth"); err == nil {
		t.Error("half a name was taken")
	}
}
