package rules

import (
	"strings"
	"testing"
)

func TestPlantedCodes(t *testing.T) {
	tr := loaded(t)
	p := tr.Plant("adjust", `package adjust

import "brimline/finding"

const far = "far"

func note(n int, code string) finding.Finding { return finding.Finding{Code: code} }

func pass(code string) finding.Finding { return note(1, code) }

func f(any string, list []string) []finding.Finding {
	add := func(code string) finding.Finding { return finding.Finding{Code: code, Marks: list} }
	either := "first"
	if len(list) > 1 {
		either = "second"
	}
	return []finding.Finding{
		{Code: "loose"},
		{Code: far},
		{Code: either},
		{Marks: list},
		add("mirror"),
		note(1, "apart"),
		pass("no-scale"),
		pass("misspelt"),
		{Code: list[0]},
	}
}
`)
	if len(p.Faults) > 0 {
		t.Fatal(p.Faults)
	}
	got := Codes([]string{"loose", "far", "mirror", "apart", "no-scale", "first", "second", "unused"}, []*Package{p})
	want := []string{`code the source does not show`, `"misspelt" is not in`, `"unused" is used nowhere`}
	if len(got) != len(want) {
		t.Fatalf("%q", got)
	}
	for i := range want {
		if !strings.Contains(got[i], want[i]) {
			t.Errorf("%q, want %q", got[i], want[i])
		}
	}
}
