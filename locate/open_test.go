package locate_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"brimline/network"
)

// placed says which marks have a place.
func (r *result) placed() []string {
	out := []string{}
	for i, m := range r.n.Marks {
		if r.n.Placed(r.X, network.Unknown(i)) {
			out = append(out, m)
		}
	}
	return out
}

// What the readings do not fix is said, with the tape that would, and has no place.
func TestUnfixed(t *testing.T) {
	braced := func() *scene { return scenery(square).ties("A B, A C, B C, A r1, B r1, C r1") }
	for _, c := range []struct {
		name    string
		s       *scene
		unfixed []string
		cure    []string // names that the cure must hold
	}{
		{"tied to one peg only", braced().ties("A r2"), []string{"r2"}, []string{"r2"}},
		{"two marks tied to each other only", braced().ties("r3 r4"), []string{"r3", "r4"}, []string{"r3"}},
		{"a chain that hangs at one end", braced().ties("C r2, r2 r3"), []string{"r2", "r3"}, []string{"r2"}},
		{"a set-up that sees one known mark", braced().seen("T", posed(1, 1, 1), false, "r1", "r2"), []string{"r2"}, []string{"r2"}},
	} {
		r := c.s.find(t)
		f := r.finding("unfixed")
		if !reflect.DeepEqual(f.Marks, c.unfixed) {
			t.Errorf("%s: unfixed %v, want %v", c.name, f.Marks, c.unfixed)
		}
		for _, name := range c.cure {
			if !strings.Contains(f.Words["cure"], name) {
				t.Errorf("%s: cure %q does not name %s", c.name, f.Words["cure"], name)
			}
		}
		if d := r.right("A", "B", "C", "r1"); d > near {
			t.Errorf("%s: the rest is off by %.3f m", c.name, d)
		}
		for _, m := range c.unfixed {
			if i := r.n.ByName[m]; !math.IsNaN(r.X[2*i]) || len(r.Other[i]) != 0 {
				t.Errorf("%s: %s has a place", c.name, m)
			}
		}
	}
}

// The cure of a mark with one tie names a peg that it has none to; taking it fixes the mark.
func TestCureCures(t *testing.T) {
	s := scenery(square).ties("A B, A C, B C, A r1, B r1, C r1, A r2")
	cure := s.find(t).finding("unfixed").Words["cure"]
	if strings.Contains(cure, "to A") {
		t.Errorf("cure %q names the peg that is tied already", cure)
	}
	var peg string
	for _, w := range strings.Fields(cure) {
		if _, ok := s.at[w]; ok && w != "r2" {
			peg = w
		}
	}
	if peg == "" {
		t.Fatalf("cure %q names no mark", cure)
	}
	r := s.ties(peg + " r2").find(t)
	for _, f := range r.Findings {
		if f.Code == "unfixed" {
			t.Errorf("after %q: %v", cure, f)
		}
	}
	if !r.n.Placed(r.X, network.Unknown(r.n.ByName["r2"])) {
		t.Error("r2 has no place")
	}
}

// A set-up that sees nothing placed is said.
func TestSetupOpen(t *testing.T) {
	r := scenery(square).ties("A B, A C, B C").seen("T", posed(1, 1, 1), false, "r2").find(t)
	if f := r.finding("setup-open"); f.Words["setup"] != "T" {
		t.Errorf("%+v", f)
	}
	if !math.IsNaN(r.X[r.n.Offset[r.n.SetupBlock(0)]]) {
		t.Error("the set-up has a place")
	}
}

// Books with next to nothing in them.
func TestAlmostEmpty(t *testing.T) {
	for _, c := range []struct {
		name   string
		s      *scene
		placed []string
		codes  []string
	}{
		{"empty", &scene{}, []string{}, []string{"no-datum"}},
		{"one tie", scenery("A 0 0, B 8 0").ties("A B"), []string{"A", "B"}, []string{}},
		{"one tie twice", scenery("A 0 0, B 8 0").ties("A B, B A"), []string{"A", "B"}, []string{}},
		{"a straight line", scenery("A 0 0, B 8 0, C 3 0").ties("A B, A C, C B"), []string{"A", "B", "C"}, []string{}},
		{"one sight", scenery("r 1 2").seen("T", posed(0, 0, 0), false, "r"), []string{}, []string{"no-datum"}},
		{"an offset from a line without length", scenery("A 0 0, B 8 0, r 1 2").offsets("A", "B", "r"), []string{}, []string{"no-datum"}},
		{"two sights", scenery("r 1 2, s 3 4").seen("T", posed(0, 0, 0), false, "r", "s"), []string{"r", "s"}, []string{}},
	} {
		r := c.s.find(t)
		if got := r.placed(); !reflect.DeepEqual(got, c.placed) {
			t.Errorf("%s: placed %v, want %v", c.name, got, c.placed)
		}
		if got := r.codes(); !reflect.DeepEqual(got, c.codes) {
			t.Errorf("%s: findings %v, want %v", c.name, got, c.codes)
		}
		if len(r.Other) != len(r.n.Marks) {
			t.Errorf("%s: %d entries of other places for %d marks", c.name, len(r.Other), len(r.n.Marks))
		}
		if len(c.placed) > 1 {
			if d := r.right(c.placed...); d > near {
				t.Errorf("%s: off by %.3f m", c.name, d)
			}
		}
	}
}

// Struck readings and an owner's words place nothing; a drawing's help to locate.
func TestWhatLocateListensTo(t *testing.T) {
	tie := func(class string) *scene {
		return scenery("A 0 0, B 8 0, r 3 4").ties("A B, A r").say("{tie: B r, is: 6.4031, id: t" + class + "}")
	}
	for _, c := range []struct {
		name string
		s    *scene
		want bool
	}{
		{"as read", tie(""), true},
		{"struck", tie("").say("{strike: t, why: slack}"), false},
		{"an owner's word", tie(", class: owner"), false},
		{"from a drawing", tie(", class: drawing"), true},
	} {
		r := c.s.find(t)
		if got := len(r.placed()) == 3; got != c.want {
			t.Errorf("%s: placed %v", c.name, r.placed())
		}
	}
}
