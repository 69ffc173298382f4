package finding_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"brimline/finding"
)

func TestSentence(t *testing.T) {
	f := finding.Finding{Code: "loose", Marks: []string{"r1"}, Figures: map[string]float64{"move": 0.312}, Words: map[string]string{"direction": "left"}}
	if got, want := f.Text(nil), "r1 can still move by 312 mm (95 %) towards left"; got != want {
		t.Errorf("text %q, want %q", got, want)
	}
	inches := func(v float64) string { return fmt.Sprintf("%.1f in", v/0.0254) }
	if got := f.Text(inches); !strings.Contains(got, "12.3 in") {
		t.Errorf("the reader's unit is not used: %q", got)
	}
	if f.Severity() != finding.Ask {
		t.Errorf("severity %q", f.Severity())
	}
}

func TestForms(t *testing.T) {
	figures := map[string]float64{"readings": 7, "unknowns": 5}
	f := finding.Finding{Code: "no-check", Figures: figures, Readings: []string{"3"}}
	if got := f.Text(nil); !strings.Contains(got, "7 read for 5 unknown") {
		t.Errorf("a figure that is named like a list: %q", got)
	}
	delete(figures, "readings")
	if got := f.Text(nil); !strings.Contains(got, "unknown read") {
		t.Errorf("a missing figure must be said to be unknown: %q", got)
	}
	figures["readings"] = math.NaN()
	if got := f.Text(nil); strings.Contains(got, "NaN") {
		t.Errorf("NaN in a sentence: %q", got)
	}
}

func TestManyNamesAreCounted(t *testing.T) {
	var names []string
	for i := range 12 {
		names = append(names, fmt.Sprint("r", i+1))
	}
	for _, c := range []struct {
		n    int
		want string
	}{{1, "r1:"}, {2, "r1 and r2:"}, {3, "r1, r2 and r3:"}, {12, "r1, r2, r3, r4, r5, r6, r7 and 5 more:"}} {
		got := finding.Finding{Code: "mark-unread", Marks: names[:c.n]}.Text(nil)
		if !strings.HasPrefix(got, c.want) {
			t.Errorf("%d names: %q, want it to begin with %q", c.n, got, c.want)
		}
	}
}

func TestSortKeepsOrderAmongEquals(t *testing.T) {
	fs := []finding.Finding{{Code: "chi-low"}, {Code: "unfixed"}, {Code: "no-scale"}, {Code: "mirror"}, {Code: "clockwise"}}
	finding.Sort(fs)
	var got []string
	for _, f := range fs {
		got = append(got, f.Code)
	}
	if want := "no-scale unfixed mirror chi-low clockwise"; strings.Join(got, " ") != want {
		t.Errorf("order %v, want %s", got, want)
	}
}

// Every template names lists, words, or figures with a known form; every code is there once.
func TestTemplates(t *testing.T) {
	hole := regexp.MustCompile(`\{([a-z]+)(:[a-z]+)?\}`)
	forms := map[string]bool{"": true, ":len": true, ":deg": true, ":pct": true, ":count": true, ":num": true}
	seen := map[string]bool{}
	for _, c := range finding.Codes {
		if seen[c.Code] || c.Severity.Rank() > 3 {
			t.Errorf("%s: twice, or of no known severity", c.Code)
		}
		seen[c.Code] = true
		for _, text := range []string{c.Text, c.Cure} {
			for _, m := range hole.FindAllStringSubmatch(text, -1) {
				if !forms[m[2]] {
					t.Errorf("%s: form %q is not known", c.Code, m[0])
				}
			}
			if rest := hole.ReplaceAllString(text, ""); strings.ContainsAny(rest, "{}`") {
				t.Errorf("%s: stray sign in %q", c.Code, text)
			}
		}
		if c.Severity != finding.Note && c.Cure == "" {
			t.Errorf("%s asks for something and names no cure", c.Code)
		}
	}
}
