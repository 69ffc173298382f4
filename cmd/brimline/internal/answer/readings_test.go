package answer_test

import (
	"strings"
	"testing"

	"brimline/cmd/brimline/internal/answer"
	"brimline/survey"
	"brimline/unit"
)

// A reading along, round or to a line stands with its line, free deck with what ends it, wherever a
// reading is named.
func TestReadingsOfLines(t *testing.T) {
	for _, c := range []struct {
		reading survey.Reading
		want    string
	}{
		{survey.Reading{Kind: "along", Marks: []string{"r1", "r4"}, Line: "track"}, "along track, r1 r4"},
		{survey.Reading{Kind: "round", Line: "track"}, "round track"},
		{survey.Reading{Kind: "round", Marks: []string{"r1", "r4"}, Line: "track"}, "round track, from r1"},
		{survey.Reading{Kind: "clear", Marks: []string{"h1"}, Line: "rim"}, "clear h1 to rim"},
		{survey.Reading{Kind: "clear", Marks: []string{"r7"}, Until: "hedge"}, "clear r7 until hedge"},
		{survey.Reading{Kind: "width", Marks: []string{"s1", "s2"}}, "width s1 s2"},
	} {
		r := triangle()
		x := c.reading
		x.N, x.Value, x.Text, x.State, x.Check = "9", 8.42, "8.420", "disagrees", true
		x.Adjusted, x.Residual, x.W = at(8.39), at(-0.03), at(-4.1)
		r.Readings = append(r.Readings, x)
		got := answer.Text(r, unit.M, "larch.yaml")
		row := false
		for _, l := range strings.Split(got, "\n") {
			row = row || strings.HasPrefix(strings.TrimLeft(l, " "), "9  "+c.want+"  ") && strings.HasSuffix(l, "⊠ disagrees")
		}
		if !row || !strings.Contains(got, "  9  "+c.want+"  8.420  disagrees: ") {
			t.Errorf("want %q twice in\n%s", c.want, got)
		}
	}
}
