package examples_test

import (
	"slices"
	"testing"

	"brimline/examples"
	"brimline/survey"
)

// The answer names the mistakes that stand beside each example, by code and readings, and no
// others; each reading planted is suspect or in a doubtful group.
func TestExpectedMistakes(t *testing.T) {
	for _, e := range examples.All() {
		r := answerOf(t, e.Name)
		s := truthOf(t, e.Name)
		if len(r.Mistakes) != len(s.Expected) {
			t.Errorf("%s: %d mistakes named, %d expected", e.Name, len(r.Mistakes), len(s.Expected))
		}
		for _, m := range r.Mistakes {
			t.Logf("%s: %s %v: %s", e.Name, m.Code, m.Readings, m.Text)
		}
		for _, want := range s.Expected {
			if !slices.ContainsFunc(r.Mistakes, func(m survey.Mistake) bool {
				return m.Code == want.Code && slices.Equal(m.Readings, want.Readings)
			}) {
				t.Errorf("%s: %s in %v is not named", e.Name, want.Code, want.Readings)
			}
		}
		for _, p := range s.Planted {
			for _, x := range r.Readings {
				if x.N == p.Reading && x.State != "suspect" && x.State != "doubtful" {
					t.Errorf("%s: reading %s (%s typed %s) is %s", e.Name, x.N, p.Read, p.Typed, x.State)
				}
			}
		}
	}
}

// Every mistake planted stands in one that is expected, and every reading expected is planted.
func TestExpectedArePlanted(t *testing.T) {
	count := 0
	for _, e := range examples.All() {
		s := truthOf(t, e.Name)
		kinds := map[string]string{}
		for _, p := range s.Planted {
			kinds[p.Reading] = p.Kind
		}
		n := 0
		for _, x := range s.Expected {
			for _, r := range x.Readings {
				n++
				if kinds[r] != x.Code {
					t.Errorf("%s: %s expected in %s, planted %q", e.Name, x.Code, r, kinds[r])
				}
			}
		}
		if n != len(s.Planted) {
			t.Errorf("%s: %d readings planted, %d expected", e.Name, len(s.Planted), n)
		}
		count += n
	}
	if count == 0 {
		t.Error("no example has a mistake")
	}
}
