package mistake_test

import (
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/mistake"
)

// Neighbours 0.7 m apart cannot differ by a metre from one peg; nothing but one column is read yet.
func TestNeighboursApart(t *testing.T) {
	const head = "brimline: 1\nlines: {rim: {closed: false, spacing: 0.70, runs: [{curve: [r1, r2, r3, r4]}]}}\nreadings:\n"
	for _, c := range []struct{ name, readings, odd, guess string }{
		{"as read", "- {tie: A r1, is: 5.214}\n- {tie: A r2, is: 5.902}\n- {tie: A r3, is: 6.480}\n", "", ""},
		{"a metre", "- {tie: A r1, is: 5.214}\n- {tie: A r2, is: 6.902}\n- {tie: A r3, is: 6.480}\n", "1 2", "one metre"},
		{"digits", "- {tie: A r1, is: 5.214}\n- {tie: A r2, is: 9.502}\n", "1 2", "swapped"},
		{"another peg", "- {tie: A r1, is: 5.214}\n- {tie: B r2, is: 9.902}\n", "", ""},
		{"no neighbours", "- {tie: A r1, is: 5.214}\n- {tie: A r4, is: 6.902}\n", "", ""},
		{"struck and read again", "- {tie: A r1, is: 5.214}\n- {tie: A r2, is: 6.902, id: x}\n- {strike: x, why: misread}\n- {tie: A r2, is: 5.902}\n", "", ""},
		{"bent round a bush", "- {tie: A r1, is: 5.214}\n- {tie: A r2, is: 6.902, bent: true}\n", "", ""},
	} {
		b, err := fieldbook.Parse(c.name, []byte(head+c.readings))
		if err != nil {
			t.Fatal(err)
		}
		found := mistake.Early(&b)
		if c.odd == "" {
			if len(found) > 0 {
				t.Errorf("%s: %v", c.name, found)
			}
			continue
		}
		if len(found) != 1 || strings.Join(found[0].Readings, " ") != c.odd {
			t.Errorf("%s: %v", c.name, found)
			continue
		}
		if text := found[0].Text(nil); !strings.Contains(text, c.guess) || !strings.Contains(text, "A") {
			t.Errorf("%s: %q", c.name, text)
		}
	}
}
