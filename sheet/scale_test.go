package sheet_test

import (
	"strconv"
	"strings"
	"testing"

	"brimline/internal/checks"
	"brimline/sheet"
)

// Outside check D-01: the reductions of ISO 5455:1979, 5.1.
func TestScalesOfISO5455(t *testing.T) {
	item := checks.Get(t, "D-01")
	var want []string
	for _, v := range item.Expected.Any("reduction") {
		want = append(want, v.(string))
	}
	var got []string
	for _, s := range sheet.Scales(false)[1:] {
		got = append(got, s.String())
	}
	if g, w := strings.Join(got[:len(want)], " "), strings.Join(want, " "); g != w {
		t.Errorf("scales %s\nwant   %s", g, w)
	}
	if first := sheet.Scales(false)[0]; first.String() != item.Expected.Text("full") {
		t.Errorf("the first scale is %s", first)
	}
}

// 1/4 in to the foot is 1:48, 1/8 in 1:96, 1/2 in 1:24, 1 in 1:12, 1/16 in 1:192.
func TestFeetScales(t *testing.T) {
	have := map[string]bool{}
	for _, s := range sheet.Scales(true) {
		have[s.String()] = true
	}
	for _, n := range []int{12, 24, 48, 96, 192} {
		if !have["1:"+strconv.Itoa(n)] {
			t.Errorf("1:%d is missing", n)
		}
	}
}

func TestRound(t *testing.T) {
	for x, want := range map[float64]float64{1: 1, 1.9: 1, 2: 2, 4.99: 2, 5: 5, 9.9: 5, 10: 10, 0.3: 0.2, 700: 500, 0: 0, -3: 0} {
		if got := sheet.Round(x); got < want*(1-1e-12) || got > want*(1+1e-12) {
			t.Errorf("Round(%g) = %g, want %g", x, got, want)
		}
	}
}
