package survey_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"brimline/survey"
)

// courtTie is a tape of the court, read with the error of its turn.
func courtTie(a, b string, n int) tape {
	return tape{a: a, b: b, is: court[a].Dist(court[b]) + scatter[n%len(scatter)]}
}

// Two pegs and a line: the order of the line says where its marks lie, and no tie is spent on that.
// Following what is proposed makes the shape ready with about one tape for two marks.
func TestFollowingNextFromTwoPegs(t *testing.T) {
	all := taped("A", "B")
	for taken := 0; ; taken++ {
		r := run(t, strings.Replace(written(all, courtRim), "sigma: 4 mm", "sigma: 2.5 mm", 1))
		if r.Shape.State == "ready" {
			if taken < 4 {
				t.Errorf("eight marks with %d tapes: some tape is checked by nothing", taken)
			}
			return
		}
		if len(r.Next) == 0 || taken == 8 {
			t.Fatalf("after %d: %s %v, next %v", taken, r.Shape.State, r.Shape.Why, r.Next)
		}
		n := r.Next[0]
		if strings.Contains(n.Why, "side") {
			t.Errorf("%s: %s", n.Text, n.Why)
		}
		all = append(all, courtTie(n.Marks[0], n.Marks[1], taken))
	}
}

// A mark on no line that two tapes leave on either side: one tie settles it, after what the shape
// needs.
func TestNextSettlesASide(t *testing.T) {
	feature := "- {tie: A f1, is: 5.000, tool: tape}\n- {tie: B f1, is: 5.200, tool: tape}\n"
	r := run(t, strings.Replace(strings.Replace(written(crossed(taped("A", "B")), courtRim), "sigma: 4 mm", "sigma: 9 mm", 1), "- {side", feature+"- {side", 1))
	if r.Shape.State == "ready" {
		t.Fatal("ready: nothing is needed")
	}
	last := len(r.Next) - 1
	for i, x := range r.Next {
		if side := strings.Contains(x.Why, "side"); side != (i == last) || side && (x.Why != "settles the side of f1" || !slices.Contains(x.Marks, "f1")) {
			t.Errorf("%d of %d: %+v", i+1, last+1, x)
		}
	}
}

// Suspect readings are read again, in the words of their kind.
func TestAgainInWords(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	all[at(t, all, "A", "r4")].is += 0.3
	r := run(t, written(all, courtRim))
	if len(r.Next) == 0 || !strings.HasPrefix(r.Next[0].Text, "tape A to r4 again, about 7.2") {
		t.Errorf("%+v", r.Next)
	}
	wrong := strings.Replace(written(crossed(taped("A", "B")), courtRim), "- {side", "- {offset: r4, line: A B, at: 4.600, left: 6.001, tool: tape}\n- {side", 1)
	r = run(t, wrong)
	if s := states(r, "suspect"); len(s) != 1 {
		t.Fatalf("suspect %v", s)
	}
	if len(r.Next) == 0 || r.Next[0].Kind != "offset" || r.Next[0].Text != "read the offset of r4 from A–B again" {
		t.Errorf("%+v", r.Next)
	}
}

// The weakest sentence sends nobody to a tie that was read as to a new one.
func TestExposeInWords(t *testing.T) {
	all := taped("A", "B")
	var cannot strings.Builder
	for i := 1; i <= 8; i++ {
		for k := 1; k < i; k++ {
			fmt.Fprintf(&cannot, "- {cannot: r%d r%d, why: hedge}\n", k, i)
		}
	}
	open := run(t, written(all, courtRim))
	closed := run(t, strings.Replace(written(all, courtRim), "- {side", cannot.String()+"- {side", 1))
	for _, x := range []struct {
		r     *survey.Result
		again bool
	}{{open, false}, {closed, true}} {
		if len(x.r.Shape.Weakest) == 0 {
			t.Fatal("no weakest place")
		}
		for _, w := range x.r.Shape.Weakest {
			want := "; tape " + w.Expose[0] + " to " + w.Expose[1] + " to expose it."
			if x.again {
				want = "; tape " + w.Expose[0] + " to " + w.Expose[1] + " again to expose it."
			}
			if !strings.HasSuffix(w.Text, want) {
				t.Errorf("%q, want the end %q", w.Text, want)
			}
		}
	}
}
