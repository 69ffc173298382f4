package survey_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"brimline/survey"
)

// Places that cannot be measured to say why, and what to write or to read.
func TestMisplaced(t *testing.T) {
	text := strings.Replace(exact(), "lines:", "- {tie: A r9, is: 3, tool: tape}\nlines:", 1)
	text = strings.Replace(text, "marks:", "", 1)
	r := rule(t, text+"  wall: {runs: [{straight: [r9, r8]}]}\n")
	for _, c := range []struct{ p, q, code, says string }{
		{"r1", "r33", "unknown-place", "near it: r3"},
		{"r1", "rimm@3", "unknown-place", "near it: rim"},
		{"r1", "rim@x", "unknown-place", "neither a mark nor a length"},
		{"r1", "rim@", "unknown-place", "missing"},
		{"r1", "r3@2", "unknown-place", "which is a mark"},
		{"r1", "rim@14.1", "off-line", "choose 0 to 14.000 m"},
		{"r1", "rim@-1", "off-line", "choose 0"},
		{"r1", "rim@3,2", "decimal-comma", "3.2"},
		{"r1", "r9", "unfixed", "r9"},
		{"r1", "r8", "unfixed", "r8"},
		{"r1", "wall@1", "unfixed", "r8"},
		{"r1", "rim@r9", "unfixed", "r9"},
		{"r1", "r1", "same-place", "both ends"},
		{"rim", "wall", "unfixed", "r8"},
		{"rim", "rim@2", "mark-to-line", "a mark"},
	} {
		_, err := r.Measure(c.p, c.q)
		var e *survey.Misplaced
		if !errors.As(err, &e) || e.Code != c.code || !strings.Contains(e.Error(), c.says) {
			t.Errorf("%s to %s: %v", c.p, c.q, err)
		}
	}
	_, err := survey.Rule(context.Background(), survey.Input{Book: parse(t, small("", "- {turn: A r5, at: k1, is: 42}\n", ""))}, nil)
	var e *survey.Misplaced
	if !errors.As(err, &e) || e.Code != "no-scale" {
		t.Errorf("without a length: %v", err)
	}
}

// A mark's name goes before a length.
func TestMarkCalledLikeALength(t *testing.T) {
	text := strings.NewReplacer(" r3,", " 3,", " r3]", " 3]", "[r3,", "[3,").Replace(exact())
	r := rule(t, text)
	near(t, "at mark 3", across(t, r, "r1", "rim@3").Length, 5, 1e-6)
	near(t, "three metres along", across(t, r, "r1", "rim@3 m").Length, 3, 1e-6)
}
