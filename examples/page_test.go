package examples_test

import (
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"
)

var feetInches = regexp.MustCompile(`^(\d+)' (\d+)(?: (\d+)/(\d+))?$`)

// page is a book as YAML reads it.
type page struct {
	Tools map[string]struct {
		Sigma string
		PPM   float64
	}
	Lines    map[string]struct{ Definition, From, Outward string }
	Readings []item
}

// item is an entry of readings.
type item struct {
	Tie, Side, Hand, Offset                 string
	Along, Round, Clear, Width, Line, Until string
	Is                                      any
	At, Left, Right                         float64
	Depth, Below, Water, Under              string
	Sigma                                   any // a text, or a list of them
}

// sigmas are the texts of a sigma.
func sigmas(said any) []string {
	switch x := said.(type) {
	case string:
		return []string{x}
	case []any:
		var out []string
		for _, v := range x {
			out = append(out, v.(string))
		}
		return out
	}
	return nil
}

// tape is the true distance of two marks and the sd of a tape between them by the book's words.
func (b page) tape(t *testing.T, p, q [2]float64, names []string) (d, sd float64) {
	t.Helper()
	d = math.Hypot(p[0]-q[0], p[1]-q[1])
	v := math.Pow(mm(t, b.Tools["tape"].Sigma), 2) + math.Pow(b.Tools["tape"].PPM*1e-6*d, 2)
	for _, name := range names {
		if onRim(name) {
			v += math.Pow(mm(t, b.Lines["rim"].Definition), 2)
		}
	}
	return d, math.Sqrt(v)
}

func mm(t *testing.T, s string) float64 {
	t.Helper()
	var f float64
	if err := json.Unmarshal([]byte(strings.TrimSuffix(s, " mm")), &f); err != nil {
		t.Fatal(err)
	}
	return f / 1000
}

// length reads metres, or feet and inches, apart from the program's own reader.
func length(t *testing.T, is any) float64 {
	t.Helper()
	if f, ok := is.(float64); ok {
		return f
	}
	text, _ := is.(string)
	m := feetInches.FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("cannot read %v", is)
	}
	n := make([]float64, 5)
	for i, part := range m[1:] {
		if part != "" {
			if err := json.Unmarshal([]byte(part), &n[i+1]); err != nil {
				t.Fatal(err)
			}
		}
	}
	inches := 12*n[1] + n[2]
	if n[4] > 0 {
		inches += n[3] / n[4]
	}
	return inches * 0.0254
}
