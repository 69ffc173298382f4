package survey

import (
	"testing"

	"brimline/fieldbook"
)

// A reading of a line is named with it, in the words of the book.
func TestNamed(t *testing.T) {
	for _, c := range []struct {
		reading fieldbook.Reading
		want    string
	}{
		{fieldbook.Reading{Kind: "tie", Marks: []string{"B", "r17"}}, "tie B–r17"},
		{fieldbook.Reading{Kind: "width", Marks: []string{"s1", "s2"}}, "width s1–s2"},
		{fieldbook.Reading{Kind: "along", Marks: []string{"r1", "r4"}, Line: "track"}, "along track, r1–r4"},
		{fieldbook.Reading{Kind: "round", Line: "track"}, "round track"},
		{fieldbook.Reading{Kind: "round", Marks: []string{"r1", "r4"}, Line: "track"}, "round track"},
		{fieldbook.Reading{Kind: "clear", Marks: []string{"h1"}, Line: "rim"}, "clear h1 to rim"},
		{fieldbook.Reading{Kind: "clear", Marks: []string{"r7"}, Until: "hedge"}, "clear r7 until hedge"},
	} {
		if got := named(c.reading, "–"); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
