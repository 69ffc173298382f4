package advise_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/advise"
	"brimline/mistake"
)

func names() advise.Names {
	return advise.Names{
		Mark:    func(m int) string { return fmt.Sprintf("r%d", m) },
		Reading: func(i int) string { return fmt.Sprint(i + 1) },
		Length:  func(v float64) string { return fmt.Sprintf("%.0f mm", 1000*v) },
	}
}

// No listed mistake is said by its code.
func TestMistakesInWords(t *testing.T) {
	for _, p := range mistake.Priors {
		text := advise.Reason{Code: "unseen", Obs: []int{16}, Mistake: p.Code}.Text(names())
		if !strings.HasPrefix(text, "a mistake ("+p.Cause+") in reading 17 ") {
			t.Errorf("%s: %q", p.Code, text)
		}
	}
}

// Every code has words of its own, which say what the reason speaks of.
func TestEveryReasonHasWords(t *testing.T) {
	seen := map[string]string{}
	for _, code := range advise.Reasons {
		r := advise.Reason{Code: code, At: "r7", Marks: []int{9, 17}, Obs: []int{16, 30}, Mistake: "foot", From: 0.031, To: 0.0125, Sum: 0.04}
		text := r.Text(names())
		if was, ok := seen[text]; ok || text == code || text == "" {
			t.Errorf("%s: %q, as %s", code, text, was)
		}
		seen[text] = code
		if !strings.Contains(text, "r7") && !strings.Contains(text, "r9 and r17") && !strings.Contains(text, "17 and 31") {
			t.Errorf("%s: %q names nothing", code, text)
		}
	}
}

func TestWords(t *testing.T) {
	for _, c := range []struct {
		r    advise.Reason
		want string
	}{
		{advise.Reason{Code: "control", Marks: []int{9, 17}}, "would control r9 and r17"},
		{advise.Reason{Code: "tells", Obs: []int{16, 30}}, "tells which of the readings 17 and 31 is wrong"},
		{advise.Reason{Code: "fixes", Marks: []int{9}}, "fixes r9"},
		{advise.Reason{Code: "side", Marks: []int{7}}, "settles the side of r7"},
		{advise.Reason{Code: "wide", At: "r7", From: math.Inf(1), To: 0.0125}, "r7 is not held by anything; ±12 mm is asked"},
		{advise.Reason{Code: "wide", At: "r7", From: 0.018, To: 0.0125}, "r7 is known to ±18 mm only; ±12 mm is asked"},
		{advise.Reason{Code: "suspect", At: "r7", Obs: []int{16}, From: 0.031}, "reading 17 is suspect; with it the edge at r7 would move by 31 mm"},
		{advise.Reason{Code: "suspect", At: "r7", Obs: []int{16}, From: 0.031, Again: true}, "reading 17 is suspect and was read again: strike it; with it the edge at r7 would move by 31 mm"},
		{advise.Reason{Code: "suspect", At: "r7", Obs: []int{16}, From: math.Inf(1)}, "reading 17 is suspect; nothing else holds the edge at r7"},
		{advise.Reason{Code: "doubtful", At: "r7", Obs: []int{16, 30}, From: math.Inf(1)}, "one of the readings 17 and 31 is wrong, and the edge at r7 hangs on it"},
		{advise.Reason{Code: "unseen", At: "r7", Obs: []int{16}, Mistake: "tenth"}, "a mistake (100 mm misread) in reading 17 could pass unseen and would move r7"},
		{advise.Reason{Code: "unseen", Obs: []int{16, 30}, Mistake: "columns", Sum: 0.04}, "a mistake (two columns swapped) in the readings 17 and 31 could pass unseen; with all the others the odds are 4 %"},
		{advise.Reason{Code: "repeat", Obs: []int{16}}, "would check reading 17"},
	} {
		if got := c.r.Text(names()); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
