package simulate_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"brimline/internal/simulate"
	"brimline/plane"
)

// entry is one value of a reading as the text of the book has it, with the sd that follows from
// the book's own words and the value that follows from the truth of the case.
type entry struct {
	reading, part   int
	value, sd, true float64
}

// page is a book as YAML reads it.
type page struct {
	Units struct{ Length string }
	Tools map[string]struct {
		Sigma string
		PPM   float64
	}
	Marks    map[string]struct{ Definition string }
	Setups   map[string]struct{ Sigma string }
	Readings []map[string]any
	Lines    map[string]struct {
		Closed     bool
		Definition string
		Runs       []map[string]any
	}
}

func parsed(t *testing.T, book []byte) page {
	t.Helper()
	var p page
	if err := yaml.Unmarshal(book, &p); err != nil {
		t.Fatalf("the book is not YAML: %v\n%s", err, book)
	}
	return p
}

// readBack works out every value of the book again, from its text and the truth, by formulas of
// this test alone.
func readBack(t *testing.T, c simulate.Case) []entry {
	t.Helper()
	return parsed(t, c.Book).against(t, c)
}

func (p page) against(t *testing.T, c simulate.Case) []entry {
	t.Helper()
	var out []entry
	for i, r := range p.Readings {
		add := func(part int, value, sigma, truth float64, marks ...string) {
			v := sigma * sigma
			for _, m := range marks {
				d := p.definition(t, m)
				v += d * d
			}
			out = append(out, entry{i, part, value, math.Sqrt(v), truth})
		}
		switch {
		case r["tie"] != nil:
			m := strings.Fields(r["tie"].(string))
			d := distance(c.Truth[m[0]], c.Truth[m[1]])
			tool := p.Tools[r["tool"].(string)]
			add(0, p.length(r["is"]), math.Hypot(millimetres(t, tool.Sigma), tool.PPM/1e6*d), d, m...)
		case r["offset"] != nil:
			m := r["offset"].(string)
			line := strings.Fields(r["line"].(string))
			at, left := fromLine(c.Truth[m], c.Truth[line[0]], c.Truth[line[1]])
			sigma := own(t, r, math.Hypot(0.005, 0.010*left), 0.005)
			read := p.length(r["left"])
			if r["right"] != nil {
				read = -p.length(r["right"])
			}
			add(0, p.length(r["at"]), sigma[0], at, m)
			add(1, read, sigma[1], left, m)
		case r["seen"] != nil:
			m, setup := r["seen"].(string), r["setup"].(string)
			sigma := 0.004
			if s, ok := p.Setups[setup]; ok {
				sigma = millimetres(t, s.Sigma)
			}
			s := own(t, r, sigma, sigma)
			x, y := inFrame(t, c, setup, c.Truth[m], r["flip"] == true)
			at := r["at"].([]any)
			add(0, p.length(at[0]), s[0], x, m)
			add(1, p.length(at[1]), s[1], y, m)
		}
	}
	return out
}

func (p page) definition(t *testing.T, mark string) float64 {
	if m := p.Marks[mark]; m.Definition != "" {
		return millimetres(t, m.Definition)
	}
	if d := p.Lines["rim"].Definition; d != "" && strings.HasPrefix(mark, "r") {
		return millimetres(t, d)
	}
	return 0
}

func (p page) length(v any) float64 {
	var f float64
	switch x := v.(type) {
	case float64:
		f = x
	case uint64:
		f = float64(x)
	case int64:
		f = float64(x)
	case string:
		return inches(x) * 0.0254
	default:
		return math.NaN()
	}
	if p.Units.Length == "mm" {
		f /= 1000
	}
	return f
}

// inches reads feet and inches apart from the package's own reader.
func inches(text string) float64 {
	var feet, whole, top, bottom float64
	if n, _ := fmt.Sscanf(text, "%f' %f %f/%f", &feet, &whole, &top, &bottom); n < 4 {
		top, bottom = 0, 1
	}
	return 12*feet + whole + top/bottom
}

func own(t *testing.T, r map[string]any, first, second float64) []float64 {
	switch s := r["sigma"].(type) {
	case string:
		return []float64{millimetres(t, s), millimetres(t, s)}
	case []any:
		return []float64{millimetres(t, s[0].(string)), millimetres(t, s[1].(string))}
	}
	return []float64{first, second}
}

func millimetres(t *testing.T, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(strings.TrimSuffix(s, " mm"), 64)
	if err != nil || !strings.HasSuffix(s, " mm") {
		t.Fatalf("%q is not in millimetres", s)
	}
	return f / 1000
}

func distance(p, q plane.Point) float64 {
	return math.Sqrt((p.X-q.X)*(p.X-q.X) + (p.Y-q.Y)*(p.Y-q.Y))
}

// fromLine is the place along the line pq and the distance to its left, by the angle between.
func fromLine(m, p, q plane.Point) (at, left float64) {
	angle := math.Atan2(m.Y-p.Y, m.X-p.X) - math.Atan2(q.Y-p.Y, q.X-p.X)
	d := distance(m, p)
	return d * math.Cos(angle), d * math.Sin(angle)
}

// inFrame is a point as the set-up sees it: x along its own axis, y to the left of that, or to
// the right where it gives y downward.
func inFrame(t *testing.T, c simulate.Case, setup string, m plane.Point, flip bool) (x, y float64) {
	for _, s := range c.Setups {
		if s.Name == setup {
			if s.Flip != flip {
				t.Fatalf("set-up %s: flip is %v in the book", setup, flip)
			}
			axis := plane.Point{X: s.Pose.T.X + s.Pose.C, Y: s.Pose.T.Y + s.Pose.S}
			x, y = fromLine(m, s.Pose.T, axis)
			if flip {
				y = -y
			}
			return x, y
		}
	}
	t.Fatalf("the book names set-up %s", setup)
	return 0, 0
}
