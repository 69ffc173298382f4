package survey_test

import (
	"slices"
	"strings"
	"testing"
)

// A mark written on the other side of its line is named, and accepted it stands on the right one.
func TestMirroredOffset(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	for _, c := range []struct{ was, now string }{{"left: 2.003", "right: 2.003"}, {"right: 2.003", "left: 2.003"}} {
		line := "A B"
		if strings.HasPrefix(c.was, "right") {
			line = "B A"
		}
		right := "- {offset: r1, line: A B, at: 0.503, left: 1.997}\n- {offset: r8, line: A B, at: 4.998, left: 2.001}\n" // so that the hand of the figure is read
		at := map[string]string{"A B": "8.497", "B A": "-0.497"}[line]                                                    // r7 lies beyond B
		src := strings.Replace(written(all, courtRim), "- {side", right+"- {offset: r7, line: "+line+", at: "+at+", "+c.now+"}\n- {side", 1)
		r := run(t, src)
		x := r.Readings[len(all)+2]
		if x.State != "suspect" || len(r.Mistakes) != 1 || x.Likely[0].Code != "mirrored" {
			t.Errorf("%s for %s: %s, %+v, mistakes %+v", c.now, c.was, x.State, x.Likely, r.Mistakes)
			continue
		}
		e := r.Mistakes[0].Edit
		if len(e) != 1 || e[0].Part != "left" || e[0].N != x.N {
			t.Errorf("edits %+v", e)
		}
		text := accept(t, src, r)
		if n := strings.Count(text, c.was); n != 1 {
			t.Errorf("%q stands %d times in the corrected book", c.was, n)
		}
		now := run(t, text)
		if len(now.Mistakes) > 0 || !slices.Equal(states(now, "suspect"), nil) {
			t.Errorf("afterwards %+v", now.Mistakes)
		}
		unmoved(t, now, 0.010)
	}
}
