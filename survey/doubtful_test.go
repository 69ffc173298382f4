package survey_test

import (
	"slices"
	"strings"
	"testing"

	"brimline/survey"
)

// threeAlone are ties from three pegs and nothing else, two of them wrong by no human size: each
// mark has one reading more than fix it, so that its three ties are equally odd.
func threeAlone(t *testing.T) ([]tape, *survey.Result) {
	t.Helper()
	all := taped("A", "B", "C")
	all[at(t, all, "B", "r5")].is += 0.154
	all[at(t, all, "A", "r2")].is -= 0.163
	return all, run(t, written(all, courtRim))
}

func doubtfulBook(t *testing.T) string {
	t.Helper()
	all, _ := threeAlone(t)
	return written(all, courtRim)
}

// Equal tests are settled by a human size or not at all: then the readings share a group.
func TestDoubtful(t *testing.T) {
	all, r := threeAlone(t)
	if s := states(r, "suspect"); len(s) > 0 {
		t.Fatalf("suspect %v", s)
	}
	var groups []int
	for _, mark := range []string{"r2", "r5"} {
		group, sum := 0, 0.0
		for _, x := range r.Readings {
			if !slices.Contains(x.Marks, mark) || x.State != "doubtful" {
				continue
			}
			if x.Group == nil || group != 0 && *x.Group != group {
				t.Fatalf("reading %s: group %v, the others have %d", x.N, x.Group, group)
			}
			group = *x.Group
			own := 0.0
			for _, l := range x.Likely {
				own += l.Probability
			}
			if own > 0.95 {
				t.Errorf("reading %s is doubtful at %g", x.N, own)
			}
			sum += own
		}
		if group == 0 || sum < 0.9 { // more than one of them may be wrong: the sum may pass 1
			t.Errorf("%s: group %d, probabilities add up to %g", mark, group, sum)
		}
		groups = append(groups, group)
	}
	slices.Sort(groups)
	if !slices.Equal(groups, []int{1, 2}) || len(states(r, "doubtful")) < 4 {
		t.Errorf("groups %v, doubtful %v", groups, states(r, "doubtful"))
	}
	if len(r.Mistakes) != 2 {
		t.Fatalf("mistakes %+v", r.Mistakes)
	}
	for _, m := range r.Mistakes {
		if x := reading(t, r, m.Readings[0]); x.State != "doubtful" || m.Probability >= 0.95 || !strings.Contains(m.Text, "another of its group") {
			t.Errorf("mistake %+v in a %s reading", m, x.State)
		}
	}
	// The most probable of each group is left out.
	if got, want := r.Statistics.Readings, len(all)-2; got != want {
		t.Errorf("%d readings in the solution, want %d", got, want)
	}
}

// A mark that the hypotheses place differently has its other places, and is not controlled.
func TestAlternativesOfADoubtfulMark(t *testing.T) {
	_, r := threeAlone(t)
	for _, name := range []string{"r2", "r5"} {
		m := r.Marks[name]
		p := place(t, r, name)
		if m.Controlled || m.Hidden != nil {
			t.Errorf("%s: controlled %v, hidden %v", name, m.Controlled, m.Hidden)
		}
		near := 0
		for _, a := range m.Alternatives {
			q := court[name]
			q.X, q.Y = a.X, a.Y
			if d := q.Dist(p); d > 0.003 && d < 0.5 {
				near++
			}
		}
		if near == 0 {
			t.Errorf("%s: no other place near: %+v", name, m.Alternatives)
		}
	}
	if m := r.Marks["r4"]; len(m.Alternatives) > 1 { // its image across the base alone
		t.Errorf("r4: %+v", m.Alternatives)
	}
}

// A doubtful group keeps the shape from being used, and what is proposed tells its members apart.
func TestDoubtfulShape(t *testing.T) {
	_, r := threeAlone(t)
	if r.Shape.State != "unfit" || !strings.Contains(strings.Join(r.Shape.Why, "; "), "is wrong") {
		t.Errorf("shape %s: %v", r.Shape.State, r.Shape.Why)
	}
	tells := 0
	for _, n := range r.Next {
		if strings.Contains(n.Why, "tells which of the readings") && (slices.Contains(n.Marks, "r2") || slices.Contains(n.Marks, "r5")) {
			tells++
		}
	}
	if tells == 0 {
		t.Errorf("next %+v", r.Next)
	}
}

// The reading that tells: with it the group is gone, and the reading that was wrong is suspect.
func TestDoubtfulIsToldApart(t *testing.T) {
	all, _ := threeAlone(t)
	for _, m := range [][2]string{{"r2", "r1"}, {"r2", "r4"}, {"r5", "r7"}, {"r5", "r8"}} {
		all = append(all, tape{a: m[0], b: m[1], is: court[m[0]].Dist(court[m[1]]) + 0.001})
	}
	r := run(t, written(all, courtRim))
	want := []string{number(at(t, all, "A", "r2")), number(at(t, all, "B", "r5"))}
	if got := states(r, "suspect"); !slices.Equal(got, want) || len(states(r, "doubtful")) > 0 {
		t.Errorf("suspect %v, doubtful %v; want %v", got, states(r, "doubtful"), want)
	}
	for _, n := range want {
		if l := reading(t, r, n).Likely[0]; l.Code != "unknown" || l.Value != nil {
			t.Errorf("reading %s: %+v", n, l)
		}
	}
}
