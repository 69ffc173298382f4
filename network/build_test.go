package network_test

import (
	"math"
	"reflect"
	"testing"

	"brimline/fieldbook"
	"brimline/network"
)

// The datum of FORMAT, Frame: A and B; A and the other mark of its first tie; the first tie; the
// first two marks named.
func TestBase(t *testing.T) {
	for _, c := range []struct{ name, text, origin, second string }{
		{"A and B, in any order", "- {tie: C r, is: 3}\n- {tie: B r, is: 3}\n- {tie: A r, is: 3}\n", "A", "B"},
		{"A and B without a tie between them", "- {tie: A r, is: 3}\n- {tie: r B, is: 3}\n", "A", "B"},
		{"A without B", "- {tie: C r, is: 3}\n- {tie: s A, is: 3}\n- {tie: A r, is: 3}\n", "A", "s"},
		{"no A: B on +x", "- {tie: C r, is: 3}\n- {tie: B r, is: 3}\n", "C", "B"},
		{"no A, an offset first", "- {offset: s, line: C r, at: 1, left: 1}\n- {tie: r C, is: 3}\n", "r", "C"},
		{"no ties", "- {seen: s, setup: T, at: [1, 2]}\n- {seen: q, setup: T, at: [3, 2]}\n", "s", "q"},
		{"no ties, A named later", "- {seen: s, setup: T, at: [1, 2]}\n- {seen: A, setup: T, at: [3, 2]}\n", "A", "s"},
		{"a struck tie sets nothing", "- {tie: C r, is: 3, id: bad}\n- {tie: s q, is: 3}\n- {strike: bad, why: slack}\n", "s", "q"},
		{"a check sets nothing", "- {tie: C r, is: 3, check: true}\n- {tie: s q, is: 3}\n", "s", "q"},
		{"a computed correction sets nothing", "- {tie: C r, is: 3}\n- {replaces: 1, tie: C r, is: 4, computed: true}\n- {tie: s q, is: 3}\n", "s", "q"},
		{"a check where there is nothing else", "- {tie: C r, is: 3, check: true}\n", "C", "r"},
		{"a drawing's tie sets nothing", "- {tie: C r, is: 3, class: drawing}\n- {tie: s q, is: 3}\n", "s", "q"},
	} {
		n, _ := built(t, "readings:\n"+c.text)
		got := [2]string{n.Marks[n.Base[0]], n.Marks[n.Base[1]]}
		if want := [2]string{c.origin, c.second}; got != want {
			t.Errorf("%s: base %v, want %v", c.name, got, want)
		}
	}
	for name, text := range map[string]string{"empty": "", "one mark": "readings:\n- {seen: s, setup: T, at: [1, 2]}\n"} {
		if n, _ := built(t, text); n.Base != [2]int{-1, -1} {
			t.Errorf("%s: base %v, want none", name, n.Base)
		}
	}
}

// Struck readings, owner's words and drawings stay in the list and out of the solution.
func TestUse(t *testing.T) {
	n, found := built(t, "readings:\n- {tie: A B, is: 8, id: a}\n- {tie: A C, is: 8, class: owner}\n- {tie: A D, is: 8, class: drawing}\n"+
		"- {tie: A E, is: 8, class: template}\n- {tie: A F, is: 8, class: measured}\n- {strike: a, why: wrong peg}\n- {replaces: 2, tie: A C, is: 7}\n")
	use, sketch := []bool{}, []bool{}
	for _, o := range n.Obs {
		use, sketch = append(use, o.Use), append(sketch, o.Sketch)
	}
	if want := []bool{false, false, false, true, true, true}; !reflect.DeepEqual(use, want) {
		t.Errorf("use %v, want %v", use, want)
	}
	if want := []bool{false, false, true, false, false, false}; !reflect.DeepEqual(sketch, want) {
		t.Errorf("sketch %v, want %v", sketch, want)
	}
	if got := codes(found); !reflect.DeepEqual(got, []string{"sketch"}) {
		t.Errorf("findings %v: the owner's word was replaced, so only the drawing is left to say", got)
	}
	n, found = built(t, "readings:\n- {tie: A B, is: 8}\n- {tie: A C, is: 8, class: owner}\n")
	if got := codes(found); !reflect.DeepEqual(got, []string{"owner-word"}) || !reflect.DeepEqual(found[0].Readings, []string{"2"}) {
		t.Errorf("findings %v", found)
	}
	if n.Obs[1].Reading != 1 {
		t.Errorf("the second observation is reading %d of the book", n.Obs[1].Reading)
	}
}

// Blocks of two for marks, of three for set-ups, of four where the scale is solved.
func TestNumbering(t *testing.T) {
	n, _ := built(t, "setups: {U: {scale: solve}}\nreadings:\n- {tie: r A, is: 8}\n- {seen: s, setup: T, at: [1, 2], flip: true}\n- {seen: r, setup: U, at: [3, 4]}\n- {offset: q, line: A r, at: 3, right: 1.5}\n")
	if want := []string{"r", "A", "s", "q"}; !reflect.DeepEqual(n.Marks, want) {
		t.Errorf("marks %v, want %v", n.Marks, want)
	}
	if want := []int{0, 2, 4, 6, 8, 11, 15}; !reflect.DeepEqual(n.Offset, want) {
		t.Errorf("offsets %v, want %v", n.Offset, want)
	}
	seen := n.Obs[1]
	if !seen.Flip || seen.Solve || seen.Size != 5 || !reflect.DeepEqual(seen.At, []int{4, 8}) || !reflect.DeepEqual(seen.Values, []float64{1, 2}) {
		t.Errorf("sight: %+v", seen)
	}
	scaled := n.Obs[2]
	if scaled.Flip || !scaled.Solve || scaled.Size != 6 || !reflect.DeepEqual(scaled.Blocks, []network.Unknown{0, 5}) {
		t.Errorf("sight with a scale: %+v", scaled)
	}
	off := n.Obs[3]
	if off.Size != 6 || !reflect.DeepEqual(off.Marks, []int{3, 1, 0}) || !reflect.DeepEqual(off.Values, []float64{3, -1.5}) {
		t.Errorf("offset: %+v", off)
	}
}

// A tool's zero and scale reach the tie and nothing else.
func TestZeroAndScale(t *testing.T) {
	n, _ := built(t, "tools:\n  reel: {sigma: 5 mm, zero: 100 mm, scale: 1.001}\n  tape: {sigma: 3 mm}\nreadings:\n- {tie: A B, is: 8.1, tool: reel}\n- {tie: A B, is: 8, tool: tape}\n- {tie: A B, is: 8}\n- {offset: r, line: A B, at: 3, left: 1, tool: reel}\n")
	for i, want := range [][2]float64{{0.1, 1.001}, {0, 1}, {0, 1}, {0, 1}} {
		if o := n.Obs[i]; o.Zero != want[0] || o.Scale != want[1] {
			t.Errorf("reading %d: zero %v and scale %v, want %v", i+1, o.Zero, o.Scale, want)
		}
	}
	x := network.State{0, 0, 8, 0, 0, 0}
	if v, _ := predict(&n.Obs[0], x); math.Abs(v[0]-(8*1.001+0.1)) > 1e-12 {
		t.Errorf("8 m read with the reel: %v", v)
	}
}

// Sides, places wanted, marks that nothing reads, lines, edges and pegs.
func TestWords(t *testing.T) {
	n, found := built(t, `marks:
  A: {at: [10, 20]}
  k1: {kind: benchmark, at: [1, 2, 3]}
  Q: {kind: rim}
  r: {edge: 4 mm}
  s: {edge: 0}
  ghost: {at: [5, 5]}
  old: {kind: peg}
readings:
- {tie: A B, is: 8}
- {tie: A k1, is: 8}
- {tie: Q r, is: 3}
- {tie: s r, is: 3}
- {side: r, of: A B, hand: right}
- {side: s, of: B A, hand: left}
- {side: ghost, of: A B, hand: left}
lines:
  rim: {closed: true, sharp: 9 mm, runs: [{straight: [r, s]}, {straight: [s, Q]}, {straight: [Q, r]}]}
  wall: {runs: [{straight: [k1, unread]}]}
`)
	at := n.ByName
	if want := []network.Side{{at["r"], at["A"], at["B"], false}, {at["s"], at["B"], at["A"], true}}; !reflect.DeepEqual(n.Sides, want) {
		t.Errorf("sides %v, want %v", n.Sides, want)
	}
	if len(n.Wanted) != 2 || n.Wanted[0].Mark != at["A"] || n.Wanted[0].At.X != 10 || n.Wanted[0].At.Y != 20 || n.Wanted[1].Mark != at["k1"] || n.Wanted[1].At.Y != 2 {
		t.Errorf("wanted %v", n.Wanted)
	}
	if got := codes(found); !reflect.DeepEqual(got, []string{"mark-unread"}) || !reflect.DeepEqual(found[0].Marks, []string{"ghost", "old"}) {
		t.Errorf("findings %v", found)
	}
	if want := []network.Path{{"rim", true, []int{at["r"], at["s"], at["Q"]}}, {"wall", false, []int{at["k1"]}}}; !reflect.DeepEqual(n.Paths, want) {
		t.Errorf("paths %v, want %v", n.Paths, want)
	}
	for name, want := range map[string]float64{"r": 0.004, "s": 0, "Q": 0.009, "A": 0} {
		if got := n.Edge[at[name]]; got != want {
			t.Errorf("edge of %s: %v, want %v", name, got, want)
		}
	}
	for name, want := range map[string]bool{"A": true, "B": true, "k1": true, "Q": false, "r": false} {
		if got := n.Pegs[at[name]]; got != want {
			t.Errorf("peg %s: %v, want %v", name, got, want)
		}
	}
}

// The misfit is the worst part in standard deviations, infinite before everything has a place.
func TestMisfit(t *testing.T) {
	n, _ := built(t, "readings:\n- {tie: A B, is: 8}\n- {offset: r, line: A B, at: 3, left: 1, sigma: [10 mm, 5 mm]}\n")
	x := n.NewState()
	x.SetPoint(n.ByName["A"], x.Point(0))
	if got := n.Misfit(x, &n.Obs[0]); !math.IsInf(got, 1) {
		t.Errorf("without places: %v", got)
	}
	copy(x, network.State{0, 0, 8.015, 0, 3.04, 1.01})
	for i, want := range []float64{3, 4} {
		if got := n.Misfit(x, &n.Obs[i]); math.Abs(got-want) > 1e-9 {
			t.Errorf("reading %d: %v, want %v", i+1, got, want)
		}
	}
}

// An empty book is an empty network.
func TestEmpty(t *testing.T) {
	n, found := network.Build(&fieldbook.Book{}, nil)
	if len(n.Marks) != 0 || len(n.Obs) != 0 || len(n.NewState()) != 0 || len(found) != 0 {
		t.Errorf("%+v %v", n, found)
	}
}
