package fieldbook_test

import (
	"slices"
	"testing"

	"brimline/fieldbook"
)

// What was moved is gone, as often as it was moved; a move that is struck moved nothing.
func TestPointsThatPegsLeft(t *testing.T) {
	for _, c := range []struct {
		items string
		want  []string
	}{
		{"", nil},
		{"- {moved: B}\n", []string{"B"}},
		{"- {moved: B}\n- {tie: A B, is: 6}\n- {moved: B}\n", []string{"B", "B (2)"}},
		{"- {moved: B, id: m}\n- {strike: m, why: it was not}\n", nil},
	} {
		b, err := fieldbook.Parse("b.yaml", []byte("brimline: 1\nreadings:\n- {tie: A B, is: 6}\n"+c.items))
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(b.Gone, c.want) {
			t.Errorf("%q: gone %v, want %v", c.items, b.Gone, c.want)
		}
	}
}

// A mark that only says what cannot be read is a finding; one that a line or a side names is none.
func TestStrayCannots(t *testing.T) {
	b, err := fieldbook.Parse("b.yaml", []byte(`brimline: 1
readings:
- {tie: A B, is: 6}
- {cannot: B r99, why: hedge}
- {cannot: A r1, why: wall}
- {cannot: A r5, why: wall}
- {side: r5, of: A B, hand: left}
- {moved: B}
- {cannot: A B, why: dog}
lines:
  rim: {closed: false, runs: [{straight: [r1, r2]}]}
`))
	if err != nil {
		t.Fatal(err)
	}
	var marks []string
	for _, f := range b.Findings {
		if f.Code == "cannot-stray" {
			marks = append(marks, f.Marks...)
		}
	}
	if !slices.Equal(marks, []string{"r99"}) {
		t.Errorf("stray: %v", marks)
	}
}
