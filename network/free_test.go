package network_test

import (
	"math"
	"reflect"
	"testing"

	"brimline/network"
)

// at is a state with the marks where they are said to be, the free blocks begun.
func at(n *network.Network, places map[string][2]float64) network.State {
	x := n.NewState()
	for name, p := range places {
		i := 2 * n.ByName[name]
		x[i], x[i+1] = p[0], p[1]
	}
	n.Begin(x)
	return x
}

func near(t *testing.T, what string, got, want []float64, tol float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %v, want %v", what, got, want)
	}
	for k := range got {
		if !(math.Abs(got[k]-want[k]) <= tol) {
			t.Errorf("%s: %v, want %v", what, got, want)
			return
		}
	}
}

// Free blocks stand behind marks and set-ups, and each reading knows its own.
func TestFreeBlocks(t *testing.T) {
	n, _ := built(t, `tools: {reel: {zero: solve}, both: {zero: solve, scale: solve}, tape: {sigma: 3 mm}}
readings:
- {tie: A B, is: 8, tool: reel}
- {straight: A B C}
- {arc: A B C D}
- {bow: A B, is: 0.3}
- {bow: B A, is: 0.31, toward: deck, tool: both}
- {bow: A B, is: 0.2, toward: water}
- {tie: A C, is: 8, tool: both}
- {tie: A D, is: 8, tool: tape}
- {seen: A, setup: T, at: [1, 2]}
`)
	var got []string
	for _, f := range n.Free {
		got = append(got, f.Kind+" "+f.Name+f.Toward)
	}
	if want := []string{"tool reel", "straight ", "arc ", "bow deck", "tool both", "bow water"}; !reflect.DeepEqual(got, want) {
		t.Fatalf("free %q, want %q", got, want)
	}
	if want := []int{0, 2, 4, 6, 8, 11, 12, 14, 17, 18, 20, 21}; !reflect.DeepEqual(n.Offset, want) {
		t.Errorf("offsets %v, want %v", n.Offset, want)
	}
	var free []int
	for _, o := range n.Obs {
		free = append(free, o.Free)
	}
	if want := []int{0, 1, 2, 3, 3, 5, 4, -1, -1}; !reflect.DeepEqual(free, want) {
		t.Errorf("free of each reading %v, want %v", free, want)
	}
	if n.MostParts != 4 || n.MostSize != 11 {
		t.Errorf("the largest reading has %d parts and touches %d, want 4 and 11", n.MostParts, n.MostSize)
	}
	x := at(n, map[string][2]float64{"A": {0, 0}, "B": {2, 0}, "C": {2, 2}, "D": {0, 2}})
	near(t, "free blocks", x[11:], []float64{0, x[12], x[13], x[14], x[15], x[16], 0.3, 0, 1, 0.2}, 0)
	v, _ := predict(&n.Obs[2], x)
	near(t, "a circle through four corners", v, []float64{0, 0, 0, 0}, 1e-12)
	near(t, "its curvature", []float64{math.Abs(x[16])}, []float64{math.Sqrt2 / 2}, 1e-12)
}

// A line and a circle begin where they fit the marks best: the sum of squares is stationary.
func TestBeginFits(t *testing.T) {
	n, _ := built(t, "readings:\n- {straight: A B C D}\n- {arc: A B C D E}\n")
	x := at(n, map[string][2]float64{"A": {1, 1.02}, "B": {2, 1.97}, "C": {3.2, 3.17}, "D": {4, 4.05}, "E": {4.4, 5.3}})
	for i, from := range []int{10, 12} {
		o := &n.Obs[i]
		v, j := predict(o, x)
		for c := o.Size - (2 + i); c < o.Size; c++ {
			sum := 0.0
			for p := range v {
				sum += v[p] * j[p*o.Size+c]
			}
			if math.Abs(sum) > 1e-7 {
				t.Errorf("reading %d: the sum of squares falls along scalar %d: %g (%v)", i+1, c, sum, x[from:])
			}
		}
	}
}

// Nothing begins where a mark has no place, or where only a check or a struck reading would hold it.
func TestBeginLeavesOut(t *testing.T) {
	n, _ := built(t, "tools: {reel: {zero: solve}}\nreadings:\n- {straight: A B C}\n- {bow: A B, is: 0.3, check: true}\n- {arc: A B D E, id: x}\n- {strike: x, why: no}\n- {tie: A B, is: 3, tool: reel, check: true}\n")
	x := at(n, map[string][2]float64{"A": {0, 0}, "B": {1, 0}, "D": {2, 0}, "E": {3, 1}})
	for f := range n.Free {
		if n.Placed(x, n.FreeBlock(f)) {
			t.Errorf("free block %d, %s, begins", f, n.Free[f].Kind)
		}
	}
	x.SetPoint(n.ByName["C"], x.Point(n.ByName["A"]))
	if n.Begin(x); !n.Placed(x, n.FreeBlock(0)) {
		t.Error("the straight has all its marks and does not begin")
	}
}

// A bow whose chord a line's arc joins over further marks is predicted from the arc.
func TestBowOfArc(t *testing.T) {
	const readings = "readings:\n- {tie: a b, is: 2}\n- {tie: m b, is: 1}\n- {tie: k b, is: 1}\n- {bow: b a, is: 0.5}\n"
	for _, c := range []struct {
		name, lines, middle string
	}{
		{"an arc over one mark", "lines: {l: {runs: [{straight: [k, a]}, {arc: [a, m, b]}]}}\n", "m"},
		{"an arc over three, one of them not read", "lines: {l: {runs: [{arc: [a, z, m, b]}]}}\n", "m"},
		{"an arc of two marks", "lines: {l: {runs: [{arc: [a, b]}]}}\n", ""},
		{"a curve", "lines: {l: {runs: [{curve: [a, m, b]}]}}\n", ""},
		{"another arc", "lines: {l: {runs: [{arc: [a, m, k]}]}}\n", ""},
		{"no line", "", ""},
	} {
		n, _ := built(t, readings+c.lines)
		o := n.Obs[3]
		middle := ""
		if len(o.Marks) == 3 {
			middle = n.Marks[o.Marks[2]]
		}
		if middle != c.middle || (o.Free >= 0) != (c.middle == "") {
			t.Errorf("%s: over %q, free %d", c.name, middle, o.Free)
		}
	}
	n, _ := built(t, readings+"lines: {l: {runs: [{arc: [a, m, b]}]}}\n")
	for _, y := range []float64{1, -1} { // half a circle on either side
		x := at(n, map[string][2]float64{"a": {-1, 0}, "b": {1, 0}, "m": {math.Sqrt2 / 2, y * math.Sqrt2 / 2}, "k": {5, 5}})
		v, _ := predict(&n.Obs[3], x)
		near(t, "the rise of half a circle", v, []float64{1}, 1e-12)
	}
}

// What each of the kinds that prove others predicts, by hand.
func TestPredictTrustByHand(t *testing.T) {
	const q = math.Pi / 2
	for _, c := range []struct {
		name, text string
		places     map[string][2]float64
		free       []float64 // in place of what Begin gives
		want       []float64
	}{
		{"turn from north to east", "- {turn: N E, at: k, is: 90}\n", map[string][2]float64{"N": {1, 9}, "E": {4, 1}, "k": {1, 1}}, nil, []float64{q}},
		{"turn from east to north", "- {turn: E N, at: k, is: 270}\n", map[string][2]float64{"N": {1, 9}, "E": {4, 1}, "k": {1, 1}}, nil, []float64{3 * q}},
		{"turn across north", "- {turn: a b, at: k, is: 350}\n", map[string][2]float64{"a": {1, 0}, "b": {9, 0}, "k": {0, 0}}, nil, []float64{4 * q}},
		{"square on the left", "- {square: a k b}\n", map[string][2]float64{"a": {1, 0}, "k": {0, 0}, "b": {0, 3}}, nil, []float64{q}},
		{"square on the right", "- {square: a k b}\n", map[string][2]float64{"a": {1, 0}, "k": {0, 0}, "b": {1, -1}}, nil, []float64{q / 2}},
		{"straight", "- {straight: a b c}\n", map[string][2]float64{"a": {0, 0}, "b": {1, 1}, "c": {2, 3}}, []float64{0, 0.5}, []float64{-0.5, 0.5, 2.5}},
		{"straight going up", "- {straight: a b c}\n", map[string][2]float64{"a": {5, 0}, "b": {6, 1}, "c": {4, 3}}, []float64{q, 0}, []float64{0, -1, 1}},
		{"arc of radius 2", "- {arc: a b c d}\n", map[string][2]float64{"a": {0, 0}, "b": {0, 2}, "c": {2, 2}, "d": {0, 5}}, []float64{0, 0, 0.5}, []float64{0, 2, 0, -1}},
		{"arc turning right", "- {arc: a b c d}\n", map[string][2]float64{"a": {0, 0}, "b": {0, -2}, "c": {2, -2}, "d": {0, -5}}, []float64{0, 0, -0.5}, []float64{0, -2, 0, 1}},
		{"arc without curvature", "- {arc: a b c d}\n", map[string][2]float64{"a": {0, 0}, "b": {7, 2}, "c": {2, -2}, "d": {0, 5}}, []float64{0, 1, 0}, []float64{-1, 1, -3, 4}},
		{"bow with a tool's zero and scale", "- {bow: a b, is: 0.4, tool: reel}\n", nil, []float64{0.3, 0.1, 2}, []float64{0.7}},
		{"tie with a tool's zero and scale", "- {tie: a b, is: 0.4, tool: reel}\n", map[string][2]float64{"a": {0, 0}, "b": {3, 4}}, []float64{0.1, 2}, []float64{10.1}},
		{"bow with figures of its tool", "- {bow: a b, is: 0.4, tool: known}\n", nil, []float64{0.3}, []float64{0.65}},
	} {
		n, found := built(t, "tools: {reel: {zero: solve, scale: solve}, known: {zero: 50 mm, scale: 2}}\nreadings:\n"+c.text)
		x := at(n, c.places)
		copy(x[2*len(n.Marks):], c.free)
		v, _ := predict(&n.Obs[0], x)
		near(t, c.name, v, c.want, 1e-12)
		if len(found) > 0 {
			t.Errorf("%s: findings %v", c.name, found)
		}
	}
}

// Marks that coincide, and a mark at the centre of a circle, give no NaN.
func TestCoincidentMarksOfTrust(t *testing.T) {
	n, _ := built(t, `tools: {reel: {zero: solve, scale: solve}}
readings:
- {turn: a b, at: c, is: 30}
- {square: a b c}
- {straight: a b c}
- {arc: a b c d}
- {tie: a b, is: 3, tool: reel}
- {bow: a c, is: 0.2}
lines: {l: {runs: [{arc: [a, b, c]}]}}
`)
	one := [2]float64{2, 3}
	x := at(n, map[string][2]float64{"a": one, "b": one, "c": one, "d": one})
	centre := append(network.State(nil), x...)
	copy(centre[n.Offset[n.FreeBlock(1)]:], []float64{0, 5, -0.2})
	for _, x := range []network.State{x, centre} {
		for i := range n.Obs {
			o := &n.Obs[i]
			v, j := predict(o, x)
			if k, ok := o.Kind.(network.Curved); ok {
				h := make([]float64, o.Size*o.Size)
				k.Curve(x, o, []float64{1}, h)
				j = append(j, h...)
			}
			for _, f := range append(v, j...) {
				if math.IsNaN(f) || math.IsInf(f, 0) {
					t.Errorf("%s: %v %v", o.Kind.Name(), v, j)
					break
				}
			}
		}
	}
}

// The words of a reading that change its part in the solution.
func TestTrustWords(t *testing.T) {
	n, found := built(t, `tools: {reel: {zero: 50 mm}}
readings:
- {tie: A B, is: 3, check: true}
- {tie: A C, is: 3, bent: true}
- {tie: A C, is: 4, id: x}
- {replaces: x, tie: A C, is: 3.1, computed: true}
- {offset: D, line: A B, at: 1, left: 1, tool: reel}
- {moved: B}
- {tie: A B, is: 3}
`)
	if o := n.Obs[0]; !o.Check || !o.Use || o.Long != 0 {
		t.Errorf("check: %+v", o)
	}
	if o := n.Obs[1]; o.Check || o.Long != 0.05 {
		t.Errorf("bent: %+v", o)
	}
	if o := n.Obs[3]; !o.Computed || !o.Use || n.Obs[2].Use {
		t.Errorf("computed: %+v", o)
	}
	if got := codes(found); !reflect.DeepEqual(got, []string{"zero-ties-only"}) {
		t.Errorf("findings %v", found)
	}
	if i := n.ByName["B (2)"]; !n.Pegs[i] || n.Marks[i] != "B (2)" {
		t.Errorf("B (2) is no peg: %v", n.Marks)
	}
	x := at(n, map[string][2]float64{"A": {0, 0}, "C": {2.9, 0}})
	if got, want := n.Misfit(x, &n.Obs[1]), 0.1/math.Hypot(0.005, 0.05); math.Abs(got-want) > 1e-9 {
		t.Errorf("a bent tie read too long: %v, want %v", got, want)
	}
	x.SetPoint(n.ByName["C"], x.Point(n.ByName["C"]).Mul(3.1/2.9))
	if got := n.Misfit(x, &n.Obs[1]); math.Abs(got-20) > 1e-9 {
		t.Errorf("a bent tie read too short: %v, want 20", got)
	}
}
