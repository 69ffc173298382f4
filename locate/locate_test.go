package locate_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"brimline/plane"
)

const near = 0.02 // metres: start coordinates of clean readings

func posed(x, y, turn float64) plane.Rigid { return plane.Turned(turn, plane.Point{X: x, Y: y}) }

const square = "A 0 0, B 8 0, C 8 6, D 0 6, r1 2 1.5, r2 6 1.5, r3 6 4.5, r4 2 4.5"

// ring are twelve marks about a pool whose pegs stand at its two ends, and two more pegs.
const ring = "A 0 0, B 10 0, C 9 6, D 1 -6, r1 1.6 1, r2 3 2.5, r3 5 3, r4 7 2.5, r5 8.4 1, r6 8.6 -0.8, r7 7.2 -2.5, r8 5 -3.2, r9 2.7 -2.6, r10 1.2 -0.9"

func ringMarks() []string {
	return []string{"r1", "r2", "r3", "r4", "r5", "r6", "r7", "r8", "r9", "r10"}
}

func fromPegs(pegs string, marks ...string) string {
	var out []string
	for _, m := range marks {
		for _, p := range strings.Fields(pegs) {
			out = append(out, p+" "+m)
		}
	}
	return strings.Join(out, ", ")
}

// strip is a ladder of twelve marks, every bay with both diagonals: it could fold at every rung.
func strip() *scene {
	s := scenery("m1 0 0, m2 0.1 3, m3 2 -0.2, m4 2.2 3.1, m5 4.1 0, m6 4 2.8, m7 6.2 0.3, m8 6 3.2, m9 8.1 0, m10 8 3, m11 10.3 0.1, m12 10 3.3")
	return s.ties("m1 m2, m1 m3, m2 m4, m1 m4, m2 m3, m3 m4, m3 m5, m4 m6, m3 m6, m4 m5, m5 m6, m5 m7, m6 m8, m5 m8, m6 m7, m7 m8, " +
		"m7 m9, m8 m10, m7 m10, m8 m9, m9 m10, m9 m11, m10 m12, m9 m12, m10 m11, m11 m12")
}

// stiff adds a tie over every two bays of a strip, which then cannot fold.
func stiff(s *scene) *scene {
	return s.ties("m1 m5, m3 m7, m5 m9, m7 m11")
}

// Clean readings put every mark in its place, on its hand; the codes say what stays open.
func TestPlaces(t *testing.T) {
	upside := func(s *scene) *scene { // the same readings of the figure mirrored about A–B
		for m, p := range s.at {
			s.at[m] = plane.Point{X: p.X, Y: -p.Y}
		}
		return s
	}
	for _, c := range []struct {
		name  string
		s     *scene
		codes []string
	}{
		{"three ties: left by custom", scenery("A 0 0, B 8 0, C 3 5").ties("A B, A C, B C"), []string{"mirror-all"}},
		{"three ties in any order", scenery("A 0 0, B 8 0, C 3 5").ties("C B, C A, B A"), []string{"mirror-all"}},
		{"a mark seen on the right", scenery("A 0 0, B 8 0, r 3 -5").ties("A B, A r, B r").say("{side: r, of: A B, hand: right}"), []string{"mirror-said"}},
		{"right of B A is left of A B", scenery("A 0 0, B 8 0, r 3 5").ties("A B, A r, B r").say("{side: r, of: B A, hand: right}"), []string{"mirror-said"}},
		{"four pegs", scenery(square).ties("A B, A C, A D, B C, B D, C D, " + fromPegs("A B C", "r1", "r2", "r3", "r4")), []string{"mirror-all"}},
		{"four pegs, the figure on the right", upside(scenery(square)).ties("A B, A C, A D, B C, B D, C D, " + fromPegs("A B C", "r1", "r2", "r3", "r4")).say("{side: r3, of: A B, hand: right}"), []string{"mirror-said"}},
		{"no pegs: a strip braced over two bays", stiff(upside(strip())), []string{"mirror-all"}},
		{"one set-up and nothing else", scenery(square).seen("T", posed(4, -3, 0.8), false, "A", "B", "r1", "r2", "r3", "r4"), nil},
		{"one set-up, y downward", scenery(square).seen("T", posed(4, -3, 0.8), true, "A", "B", "r1", "r2", "r3", "r4"), nil},
		{"two set-ups that share two marks", scenery(square).seen("T", posed(4, -3, 0.8), false, "A", "r1", "r2", "B").seen("U", posed(9, 7, -2), false, "r2", "B", "r3", "r4", "C"), nil},
		{"two set-ups, one with y downward", scenery(square).seen("T", posed(4, -3, 0.8), true, "A", "r1", "r2", "B").seen("U", posed(9, 7, -2), false, "r2", "B", "r3", "r4", "C"), nil},
		{"a set-up settles the hand of ties", upside(scenery(square)).ties("A B, A D, B D, "+fromPegs("A B D", "r1", "r2", "r3", "r4")).seen("T", posed(4, 3, 0.8), false, "A", "r1", "r2"), nil},
		{"a set-up that sees two marks knows no hand", scenery(square).ties("A B, A D, B D, "+fromPegs("A B D", "r1", "r2", "r3", "r4")).seen("T", posed(4, 3, 0.8), false, "A", "r1"), []string{"mirror-all"}},
		{"nor one that sees marks in line", scenery(square).ties("A B, A D, B D, "+fromPegs("A B D", "r1", "r2", "r3", "r4")).seen("T", posed(4, 3, 0.8), false, "A", "r1", "r3"), []string{"mirror-all"}},
		{"two marks of a set-up, the figure said on the right", upside(scenery(square)).ties("A B, A D, B D, "+fromPegs("A B D", "r1", "r2", "r3", "r4")).seen("T", posed(4, 3, 0.8), false, "A", "r1").say("{side: r2, of: A B, hand: right}"), []string{"mirror-said"}},
		{"offsets on both hands", scenery(ring).ties("A B").offsets("A", "B", ringMarks()...), nil},
		{"offsets of B A", scenery(ring).ties("A B").offsets("B", "A", ringMarks()...), nil},
		{"one offset settles the hand of the rest", upside(scenery(square)).ties("A B, "+fromPegs("A B D", "r1", "r2", "r3", "r4")+", A D, B D").offsets("A", "B", "r2"), nil},
		{"two pegs, no line: all on one side", scenery(square).ties("A B, " + fromPegs("A B", "r1", "r2", "r3", "r4")), []string{"mirror", "mirror-all"}},
		{"base not taped", scenery(square).ties(fromPegs("A B C D", "r1", "r2", "r3", "r4") + ", r1 r3, r2 r4, r1 r2"), []string{"mirror-all"}},
		{"one tape that starts at 100 mm", scenery("A 0 0, B 8 0, C 3 5").ties("A B +0.1, A C +0.1, B C +0.1").withZero(), []string{"mirror-all"}},
	} {
		r := c.s.find(t)
		if d := r.right(); d > near {
			t.Errorf("%s: off by %.3f m", c.name, d)
		}
		if got := r.codes(); !reflect.DeepEqual(got, append([]string{}, c.codes...)) {
			t.Errorf("%s: findings %v, want %v", c.name, got, c.codes)
		}
	}
}

// withZero reads all ties with a tape that adds 100 mm.
func (s *scene) withZero() *scene {
	s.tail += "tools:\n  reel: {sigma: 5 mm, zero: 100 mm}\n"
	for i := range s.read {
		s.read[i] = strings.TrimSuffix(s.read[i], "}") + ", tool: reel}"
	}
	return s
}

// Pegs at the two ends of a pool leave every mark of the rim two places; the order of the rim
// settles them among each other, and custom or a side the whole.
func TestOrderOfRimSettlesSides(t *testing.T) {
	build := func() *scene {
		return scenery(ring).ties("A B, " + fromPegs("A B", ringMarks()...)).rim(ringMarks()...)
	}
	for name, s := range map[string]*scene{
		"by custom":             build(),
		"said of a far mark":    build().say("{side: r8, of: A B, hand: right}"),
		"said of the first one": build().say("{side: r1, of: A B, hand: left}"),
		"one brace across":      build().ties("r2 r9"),
	} {
		r := s.find(t)
		if d := r.right(); d > near {
			t.Errorf("%s: off by %.3f m\n%v", name, d, r.Findings)
		}
		if f := r.finding("mirror"); len(f.Marks) == 0 || f.Words["cure"] == "" {
			t.Errorf("%s: %+v", name, f)
		}
		open := 0
		for _, m := range ringMarks() {
			p, other := r.point(m), r.Other[r.n.ByName[m]]
			if len(other) == 0 {
				continue
			}
			open++
			base := r.point("B").Sub(r.point("A")).Unit()
			v := p.Sub(r.point("A"))
			mirrored := r.point("A").Add(base.Mul(2 * base.Dot(v))).Sub(v)
			if d := other[0].Dist(mirrored); d > near {
				t.Errorf("%s: the other place of %s is %.3f m from its mirror image", name, m, d)
			}
		}
		if open == 0 {
			t.Errorf("%s: no mark has another place", name)
		}
	}
	// the order of the strip's edge unfolds it
	fold := strip().say("{side: m3, of: m1 m2, hand: right}").rim("m1", "m3", "m5", "m7", "m9", "m11", "m12", "m10", "m8", "m6", "m4", "m2").find(t)
	if d := fold.right(); d > near {
		t.Errorf("strip: off by %.3f m, %v", d, fold.Findings)
	}
	// read the other way up: r1 on the right
	up := build().say("{side: r1, of: A B, hand: right}")
	r := up.find(t)
	for m, p := range up.at {
		up.at[m] = plane.Point{X: p.X, Y: -p.Y}
	}
	if d := r.right(); d > near {
		t.Errorf("r1 on the right: off by %.3f m", d)
	}
}

// With three pegs every reading decides and nothing but the whole figure is open.
func TestThirdPegSettlesSides(t *testing.T) {
	r := scenery(ring).ties("A B, A C, B C, " + fromPegs("A B C", ringMarks()...)).find(t)
	if d := r.right(); d > near {
		t.Errorf("off by %.3f m", d)
	}
	if got := r.codes(); !reflect.DeepEqual(got, []string{"mirror-all"}) {
		t.Errorf("findings %v", got)
	}
}

// A side that the readings contradict is said, and does not bend the figure.
func TestSideAgainstReadings(t *testing.T) {
	r := scenery(square).ties("A B").offsets("A", "B", "r1", "r2", "r3").say("{side: r2, of: A B, hand: right}").find(t)
	if d := r.right(); d > near {
		t.Errorf("off by %.3f m", d)
	}
	if f := r.finding("side-against"); !reflect.DeepEqual(f.Marks, []string{"r2"}) {
		t.Errorf("%+v", f)
	}
}

// The alternative of a figure that nothing turns the right way up is its mirror image about the
// base.
func TestOtherIsTheMirrorImage(t *testing.T) {
	r := scenery("A 0 0, B 8 0, C 3 5, r 6 2").ties("A B, A C, B C, A r, B r, C r").find(t)
	for _, m := range []string{"A", "B"} {
		if o := r.Other[r.n.ByName[m]]; len(o) != 0 {
			t.Errorf("%s has another place %v", m, o)
		}
	}
	var from, to []plane.Point
	for _, m := range []string{"A", "B"} {
		from, to = append(from, r.point(m)), append(to, r.at[m])
	}
	for _, m := range []string{"C", "r"} {
		o := r.Other[r.n.ByName[m]]
		if len(o) != 1 {
			t.Fatalf("%s has %d other places", m, len(o))
		}
		from, to = append(from, o[0]), append(to, plane.Point{X: r.at[m].X, Y: -r.at[m].Y})
	}
	if d := off(from, to); d > near {
		t.Errorf("the other places are %.3f m from the mirror image", d)
	}
	f := r.finding("mirror-all")
	if f.Words["base"] != "A–B" || !reflect.DeepEqual(f.Marks, []string{"C"}) {
		t.Errorf("%+v", f)
	}
}

// A scale that is solved comes out of marks placed by ties.
func TestSetupWithScale(t *testing.T) {
	s := scenery(square).ties("A B, A C, B C, A r1, B r1, C r1")
	at, k := posed(4, -3, 0.8), 1.25
	for m, p := range s.at {
		s.at[m] = p.Mul(k)
	}
	big := &scene{at: s.at, tail: "setups: {T: {scale: solve}}\n", read: s.read}
	big.seen("T", plane.Turned(0.8, at.T.Mul(k)), false, "A", "B", "C", "r2", "r3", "r4")
	for m, p := range s.at {
		s.at[m] = p.Mul(1 / k)
	}
	r := big.find(t)
	if d := r.right(); d > near {
		t.Errorf("off by %.3f m", d)
	}
	if got := r.X[r.n.Offset[r.n.SetupBlock(0)]+3]; math.Abs(got-k) > 0.01 {
		t.Errorf("scale %.4f, want %.4f", got, k)
	}
}
