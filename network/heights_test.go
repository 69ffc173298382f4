package network_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"brimline/finding"
	"brimline/network"
)

// up is the height of a mark in a state.
func up(n *network.Network, x network.State, name string) float64 {
	for i, f := range n.Free {
		if f.Upward() && f.Name == name {
			return x[n.Offset[n.FreeBlock(i)]]
		}
	}
	return math.Inf(1)
}

// The height that is held: FORMAT, Frame; where nothing of it is read, what the first depth was read
// below.
func TestHeldHeight(t *testing.T) {
	for _, c := range []struct{ name, text, kind, held string }{
		{"an at of three numbers", "marks: {r2: {at: [0, 0, 3]}}\nreadings:\n- {level: r1 r2, rise: 0.1}\n", "height", "r2"},
		{"one that nothing reads", "marks: {r9: {at: [0, 0, 3]}}\nreadings:\n- {tie: r9 r1, is: 3}\n- {level: r1 r2, rise: 0.1}\n", "height", "r1"},
		{"the first level or staff", "readings:\n- {water: w1, under: r3, is: 0.1}\n- {staff: r1, setup: S, is: 1}\n- {level: r2 r1, rise: 0.1}\n", "height", "r1"},
		{"water before sights", "readings:\n- {seen: r1, setup: T, at: [1, 2, 3]}\n- {water: w1, under: r3, is: 0.1}\n", "height", "r3"},
		{"seen", "readings:\n- {seen: r1, setup: T, at: [1, 2, 3]}\n", "height", "r1"},
		{"depths below a water alone", "readings:\n- {water: w1, under: r1, is: 0.1, check: true}\n- {depth: f1, below: w1, is: 1.4}\n", "water", "w1"},
		{"depths below a line alone", "readings:\n- {tie: r1 r2, is: 3}\n- {depth: f1, below: rim, is: 1.4}\nlines: {rim: {runs: [{straight: [r1, r2]}]}}\n", "rim", "rim"},
		{"a struck one holds nothing", "readings:\n- {level: r1 r2, rise: 0.1, id: x}\n- {strike: x, why: slack}\n- {level: r3 r4, rise: 0.1}\n", "height", "r3"},
	} {
		n, _ := built(t, c.text)
		b, ok := n.Datum()
		if !ok {
			t.Errorf("%s: no height is held", c.name)
			continue
		}
		if f := n.Free[int(b-n.FreeBlock(0))]; f.Kind != c.kind || f.Name != c.held {
			t.Errorf("%s: held %s %s, want %s %s", c.name, f.Kind, f.Name, c.kind, c.held)
		}
	}
	if n, _ := built(t, "readings:\n- {tie: r1 r2, is: 3}\n"); n.Level >= 0 {
		t.Errorf("a book without heights holds %d", n.Level)
	}
}

// Heights start where most of their readings have them, whatever one of them says.
func TestBeginHeights(t *testing.T) {
	n, _ := built(t, `readings:
- {level: A r1, rise: 0.1}
- {staff: r1, setup: S, is: 1.4}
- {staff: r2, setup: S, is: 1.2}
- {staff: r3, setup: S, is: 2.1}
- {water: w1, under: r2, is: 0.15}
- {water: w1, under: r3, is: 0.05}
- {level: r2 r3, rise: -0.1}
- {depth: f1, below: w1, is: 1.5}
- {level: q1 q2, rise: 1}
`)
	x := n.NewState()
	n.Begin(x)
	for name, want := range map[string]float64{"A": 0, "r1": 0.1, "S": 1.5, "r2": 0.3, "r3": 0.2, "w1": 0.15, "f1": -1.35} {
		if got := up(n, x, name); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s begins at %v, want %v", name, got, want)
		}
	}
	for _, name := range []string{"q1", "q2"} {
		if got := up(n, x, name); !math.IsNaN(got) {
			t.Errorf("%s begins at %v though nothing joins it", name, got)
		}
	}
}

// A group of heights apart is named with the reading that would join it.
func TestHeightsApart(t *testing.T) {
	for _, c := range []struct{ text, marks, cure string }{
		{"- {level: q1 q2, rise: 1}\n", "q1 q2", "level from r1 to q1"},
		{"- {staff: q1, setup: S9, is: 1}\n- {staff: q2, setup: S9, is: 1}\n", "q1 q2", "hold the staff on r1 as well, from set-up S9"},
		{"- {water: w9, under: q1, is: 1}\n", "q1", "read how far water w9 lies under r1"},
		{"- {seen: q1, setup: T, at: [1, 2, 3]}\n", "q1", "see r1 from T as well, with its height"},
	} {
		_, found := built(t, "readings:\n- {level: r1 r2, rise: 0.1}\n"+c.text)
		f := only(t, found, "heights-apart")
		if strings.Join(f.Marks, " ") != c.marks || f.Words["cure"] != c.cure {
			t.Errorf("%s: %v, %q", c.text, f.Marks, f.Words["cure"])
		}
	}
	if _, found := built(t, "readings:\n- {level: r1 r2, rise: 0.1}\n- {level: q1 q2, rise: 1, check: true}\n"); len(found) > 0 {
		t.Errorf("a check is said to hold heights: %v", found)
	}
}

func only(t *testing.T, found []finding.Finding, code string) finding.Finding {
	t.Helper()
	var out []finding.Finding
	for _, f := range found {
		if f.Code == code {
			out = append(out, f)
		}
	}
	if len(out) != 1 {
		t.Fatalf("%d findings %s in %v", len(out), code, found)
	}
	return out[0]
}

// What each reading of heights touches, and its weight: pointing in plan enters none.
func TestHeightReadings(t *testing.T) {
	n, _ := built(t, `tools: {N: {sigma: 2 mm}}
setups: {S: {collimation: 0.2, sight: 10}, U: {collimation: solve}}
marks: {r1: {definition: 9 mm}}
readings:
- {staff: r1, setup: S, is: 1.4}
- {staff: r2, setup: S, is: 1.2, sight: 20, tool: N}
- {staff: r1, setup: U, is: 1.4, sight: 30}
- {staff: r2, setup: U, is: 1.4}
- {depth: f1, below: w1, is: 1.5, line: r1 r2, at: 2, left: 0.1, sigma: [7 mm, 8 mm, 9 mm]}
- {water: w1, under: r1, is: 0.1}
- {seen: r1, setup: T, at: [1, 2, 3], sigma: [1 mm, 2 mm, 3 mm]}
- {wall: r1, from: track, to: cove, is: 1.067}
`)
	var zero, sight []float64
	var kinds []string
	for i := range n.Obs {
		o := &n.Obs[i]
		kinds = append(kinds, o.Kind.Parts(o)[0])
		if o.Kind.Name() == "staff" {
			zero, sight = append(zero, o.Zero), append(sight, o.Sight)
		}
		if o.Upright != (len(o.Marks) == 0) || o.Upright && len(o.Of) == 0 {
			t.Errorf("observation %d: upright %v, marks %v, of %v", i, o.Upright, o.Marks, o.Of)
		}
	}
	if want := []string{"is", "is", "is", "is", "is", "at", "is", "x", "z"}; !reflect.DeepEqual(kinds, want) {
		t.Fatalf("parts %q, want %q", kinds, want)
	}
	near(t, "zero", zero, []float64{0.002, 0.004, 0, 0}, 1e-12)
	near(t, "sight", sight, []float64{10, 20, 30, 0}, 1e-12)
	near(t, "sd of a staff", append(n.Obs[0].SD, n.Obs[1].SD...), []float64{0.001, 0.002}, 1e-12)
	near(t, "sd of a sounding's place", append(n.Obs[4].SD, n.Obs[5].SD...), []float64{0.007, math.Hypot(0.008, 0.009), math.Hypot(0.009, 0.009)}, 1e-12)
	near(t, "sd of what was seen", append(n.Obs[7].SD, n.Obs[8].SD...), []float64{math.Hypot(0.001, 0.009), math.Hypot(0.002, 0.009), 0.003}, 1e-12)
	if len(n.Obs[2].Extra) != 3 || len(n.Obs[3].Extra) != 2 {
		t.Errorf("collimation touches %v and %v: a staff without a length of sight tells nothing of it", n.Obs[2].Extra, n.Obs[3].Extra)
	}
	if n.Setups[0] != "T" || len(n.Setups) != 1 {
		t.Errorf("set-ups %v: a level's has no place in plan", n.Setups)
	}
}

// A tie along the slope sees heights where both ends have them; else it is taken as level and can only
// be too long.
func TestSlopeNeedsHeights(t *testing.T) {
	n, found := built(t, `readings:
- {tie: A B, is: 5, slope: true}
- {tie: A C, is: 5, slope: true}
- {level: A B, rise: 3}
`)
	if o := n.Obs[0]; !o.Slope || o.Climb != 3 || o.Long != 0 || o.Size != 6 {
		t.Errorf("with heights: slope %v, climb %v, long %v, size %d", o.Slope, o.Climb, o.Long, o.Size)
	}
	if o := n.Obs[1]; o.Slope || o.Long != 0.05 {
		t.Errorf("without: slope %v, long %v", o.Slope, o.Long)
	}
	if f := only(t, found, "slope-level"); !reflect.DeepEqual(f.Readings, []string{"2"}) {
		t.Errorf("named are readings %v", f.Readings)
	}
}

// A depth below a line is read below the marks of it that have heights, or below a level line.
func TestDepthBelowLine(t *testing.T) {
	head := "readings:\n- {depth: f1, below: rim, is: 1.5}\n"
	line := "lines: {rim: {closed: true, runs: [{straight: [r1, r2]}, {straight: [r2, r3]}, {straight: [r3, r1]}]}}\n"
	n, _ := built(t, head+"- {level: r1 r3, rise: 0.1}\n- {level: r3 r2, rise: 0.1}\n"+line)
	if f := n.Obs[0].Foot; f == nil || len(f.Marks) != 3 || !f.Closed {
		t.Errorf("foot %+v", n.Obs[0].Foot)
	}
	n, _ = built(t, head+"- {level: r1 BM, rise: 0.1}\n- {tie: r2 r3, is: 3}\n"+line)
	if o := n.Obs[0]; o.Foot != nil || len(o.Extra) != 2 || n.Free[int(o.Extra[1]-n.FreeBlock(0))].Name != "r1" {
		t.Errorf("one mark with a height: foot %+v, %v", o.Foot, o.Extra)
	}
	n, _ = built(t, head+"- {tie: r1 r2, is: 3}\n- {tie: r2 r3, is: 3}\n"+line)
	if o := n.Obs[0]; o.Foot != nil || n.Free[int(o.Extra[1]-n.FreeBlock(0))].Kind != "rim" {
		t.Errorf("none: foot %+v, %v", o.Foot, o.Extra)
	}
}

// A tape longer by its warmth reads short.
func TestTapeTemperature(t *testing.T) {
	n, _ := built(t, "tools: {steel: {sigma: 2 mm, expansion: 11.5e-6}}\nreadings:\n- {tie: A B, is: 10, tool: steel, at_temperature: 40}\n- {tie: A B, is: 10, tool: steel}\n")
	x := network.State{0, 0, 10, 0}
	v, _ := predict(&n.Obs[0], x)
	near(t, "at 40 °C", v, []float64{10 / (1 + 20*11.5e-6)}, 1e-12)
	v, _ = predict(&n.Obs[1], x)
	near(t, "not said", v, []float64{10}, 1e-12)
}
