package checks

import (
	"math"
	"testing"
)

func TestLoad(t *testing.T) {
	items := Load(t)
	if len(items) != 60 {
		t.Errorf("%d items, want 60", len(items))
	}
	known := map[string]int{"found": 29, "inputs-found": 4, "memory": 20, "definition": 7}
	for _, i := range items {
		known[i.Status]--
	}
	for status, left := range known {
		if left != 0 {
			t.Errorf("%d items of status %s more in SOURCE.md than in the file", left, status)
		}
	}
	if got := items["LS-01"].Inputs.Object("fixed_ft")["BMY"]; got != 107.5 {
		t.Errorf("LS-01 BMY: %v", got)
	}
	if got := items["C-01"].Inputs.Rows("points")[5][1]; got != 7 {
		t.Errorf("C-01 last ordinate: %v", got)
	}
}

func TestTolerance(t *testing.T) {
	i := Get(t, "LS-05")
	if got := i.Tolerance("b1"); got != 1e-13 {
		t.Errorf("its own: %v", got)
	}
	if got := Get(t, "C-05").Tolerance("R"); got != 0.0055 {
		t.Errorf("the default: %v", got)
	}
	if got := Get(t, "D-05").Tolerance("codes"); got != 0 {
		t.Errorf("none: %v", got)
	}
}

func TestCompareMisses(t *testing.T) {
	i := Get(t, "C-05")
	if got := i.misses("R", []float64{2864.79 + 0.005}); got != nil {
		t.Errorf("within tolerance: %v", got)
	}
	for name, got := range map[string][]float64{"off": {2864.80}, "NaN": {math.NaN()}, "too many": {2864.79, 0}, "none": nil} {
		if len(i.misses("R", got)) != 1 {
			t.Errorf("%s was not reported", name)
		}
	}
}
