package survey_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/basin"
	"brimline/plane"
	"brimline/survey"
)

// sounded are soundings of the yard from a string along x at the wall r1–r4: the floor falls from 1.20
// below the water at x = 1 to 2.00 at x = 5, read on a grid 1 m apart from 0.5 m off the walls.
func sounded(water string) string {
	text := ""
	for i := range 4 {
		for j := range 3 {
			at := 0.5 + float64(i)
			text += fmt.Sprintf("- {depth: f%d%d, below: %s, is: %.3f, line: r1 r4, at: %.2f, left: %.2f}\n", i, j, water, 1.2+0.2*at, at, 0.5+float64(j))
		}
	}
	return text
}

// scattered are soundings of the same floor at places of no order, so that it is triangulated one way only.
func scattered() string {
	text := ""
	for i := range 4 {
		for j := range 3 {
			at, left := 0.5+float64(i)+0.12*math.Sin(float64(5*i+3*j)), 0.5+float64(j)+0.12*math.Cos(float64(2*i+7*j))
			text += fmt.Sprintf("- {depth: f%d%d, below: w1, is: %.3f, line: r1 r4, at: %.3f, left: %.3f}\n", i, j, 1.2+0.2*at, at, left)
		}
	}
	return text
}

func waterOf(t *testing.T, r *survey.Result) *survey.Water {
	t.Helper()
	if r.Water == nil {
		t.Fatalf("no water: %+v", r.Findings)
	}
	return r.Water
}

func close1(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.5f, want %.5f ± %g", what, got, want, tolerance)
	}
}

// A pool of 4 × 3 whose floor falls evenly, sounded half a metre from the walls: beyond the outermost the
// floor keeps its depth, so at the ends it is read as 1.30 and 1.90. By prisms: 3·(1.30·0.5 + 1.60·3 + 1.90·0.5).
func TestWaterOfASlope(t *testing.T) {
	r := run(t, small("", ties()+diagonals()+rimLevels(0)+sounded("w1"), rim))
	w := waterOf(t, r)
	close1(t, "area", w.Area, 12, 0.02)
	close1(t, "volume", w.Volume, 3*(1.30*0.5+1.60*3+1.90*0.5), 0.04)
	close1(t, "mean depth", w.MeanDepth, w.Volume/w.Area, 1e-12)
	close1(t, "deepest", w.Deepest, 1.9, 0.002)
	close1(t, "shallowest", w.Shallowest, 1.3, 0.002)
	close1(t, "walls", w.Split.Walls, 3*1.3+3*1.9+2*4*1.6, 0.05)
	close1(t, "floor", w.Split.Floor, 3*(0.5+3*math.Hypot(1, 0.2)+0.5), 0.03)
	close1(t, "wetted", w.WettedArea, w.Split.Floor+w.Split.Walls, 1e-9)
	close1(t, "shortcut", w.Shortcut.Volume, w.Area*1.6, 0.02)
	close1(t, "its error", w.Shortcut.Error, w.Shortcut.Volume-w.Volume, 1e-12)
	close1(t, "steepest", w.Steepest.Slope, 0.2, 0.004)
	close1(t, "1 in", *w.Steepest.OneIn, 1/w.Steepest.Slope, 1e-12)
	c := w.Causes
	close1(t, "causes", c.Water+c.Outline+c.Floor+c.Walls+c.Sampling, 1, 1e-9)
	if w.Surface != "w1" || !strings.HasPrefix(w.At.Mark, "f3") || math.Abs(w.At.X-4.5) > 0.02 || w.VolumeSD == nil || *w.VolumeSD < 0.02 || *w.VolumeSD > 0.3 {
		t.Errorf("%s, deepest at %+v, sd %v", w.Surface, w.At, w.VolumeSD)
	}
	last := w.Stages[len(w.Stages)-1]
	if last.Depth != 0 || last.Volume != w.Volume || *last.VolumeSD != *w.VolumeSD || len(w.Stages) < 19 {
		t.Errorf("%d stages, the last %+v", len(w.Stages), last)
	}
	if r.Basin == nil || w.Caution != "No statement about diving." {
		t.Error("no basin beside the water")
	}
}

// level15 are the soundings of a floor 1.50 below the water everywhere.
func level15(water string) string {
	out := ""
	for _, line := range strings.Split(strings.TrimSpace(sounded(water)), "\n") {
		from := strings.Index(line, "is: ") + len("is: ")
		out += line[:from] + "1.500" + line[from+len("1.300"):] + "\n"
	}
	return out
}

// The variance that the outline gives a level pool is that of its area times the depth squared: the share
// of the outline, found by pushing the rim, is checked by the area's own.
func TestOutlineShare(t *testing.T) {
	for name, lines := range map[string]string{"rim": rim, "track": rim + "  track: {from: rim, outward: 30 mm, sigma: 4 mm, edge: track, corners: mitre}\n"} { // order-free: each alone
		r := run(t, small("", ties()+diagonals()+rimLevels(0)+level15("w1"), lines))
		w := waterOf(t, r)
		want := *r.Lines["rim"].AreaSD * 1.5
		if name == "track" {
			want = math.Hypot(want, 0.004**r.Lines["track"].Length*1.5)
		}
		close1(t, name+": sd by the outline", *w.VolumeSD*math.Sqrt(w.Causes.Outline), want, 0.02*want)
		close1(t, name+": volume", w.Volume, *r.Lines[name].Area*1.5, 0.01)
	}
}

// The same pool in another frame, and with its rim named the other way round, holds as much, as well known.
func TestWaterKnowsNoFrame(t *testing.T) {
	book := ties() + diagonals() + rimLevels(0) + scattered()
	one := waterOf(t, run(t, small("", book, rim)))
	round := "lines:\n  rim: {closed: true, edge: nose, runs: [{straight: [r1, r4]}, {straight: [r4, r3]}, {straight: [r3, r2]}, {straight: [r2, r1]}]}\n"
	for name, text := range map[string]string{ // order-free: each alone
		"turned": small("A: {at: [100, 50]}, B: {at: [97, 55.196]}", book, rim),
		"round":  small("", book, round),
		"raised": small("r1: {at: [1, 2, 12.5]}", book, rim),
	} {
		w := waterOf(t, run(t, text))
		for what, v := range map[string][2]float64{ // order-free: each alone
			"volume": {w.Volume, one.Volume}, "sd": {*w.VolumeSD, *one.VolumeSD}, "wetted": {w.WettedArea, one.WettedArea},
			"wetted sd": {*w.WettedSD, *one.WettedSD}, "mean": {w.MeanDepth, one.MeanDepth}, "deepest": {w.Deepest, one.Deepest},
		} {
			close1(t, name+" "+what, v[0], v[1], 1e-3*v[1])
		}
	}
}

// Walls, steps, ledges and coves as the book says them, on a level pool 1.50 deep, each by what it adds or
// takes away.
func TestWhatStandsInThePool(t *testing.T) {
	plain := waterOf(t, run(t, small("", ties()+diagonals()+rimLevels(0)+level15("w1"), rim)))
	place := func(name string, x, y float64) string { // by two tapes and a repeat from a corner
		at := func(m string) float64 { return math.Hypot(yard[m].X-x, yard[m].Y-y) }
		return fmt.Sprintf("- {tie: A %s, is: %.4f}\n- {tie: B %s, is: %.4f}\n", name, at("A"), name, at("B"))
	}
	plumbs := ""
	for _, m := range []string{"r1", "r2", "r3", "r4"} {
		plumbs += "- {plumb: " + m + ", down: 0.825, outward: 10 mm}\n"
	}
	for _, x := range []struct {
		name, readings, blocks string
		volume, within         float64
	}{
		{"steps", place("s1", 2, 2) + place("s2", 4, 2) + place("s3", 2, 2.6) + place("s4", 4, 2.6),
			"steps: [{name: entry, where: inside, opening: [s1, s2], treads: [{runs: [{straight: [s3, s4]}], below: w1, is: 0.60}]}]\n", -0.9 * 2 * 0.6, 0.02},
		{"ledge", place("b1", 1, 3.0) + place("b2", 1.5, 3.0) + place("b3", 1.5, 4.5) + place("b4", 1, 4.5),
			"ledges: [{name: seat, kind: bench, runs: [{straight: [b1, b2]}, {straight: [b2, b3]}, {straight: [b3, b4]}], below: r2, is: 0.604}]\n", -(1.5 - 0.4505) * 0.5 * 1.5, 0.02},
		{"cove", "", "floor: {coves: [{line: rim, shape: bevel, size: 200 mm}]}\n", -0.02 * (14 - 8*0.2/3), 0.01},
		{"lean", plumbs, "", 14 * 1.5 * (0.15 + 0.75) * 10 / 825, 0.02}, // of depth z below the rim the wall stands z·10/825 out, from 0.15 to 1.65
		{"profiles", "- {profile: r1, from: nose, to: track, outward: 30 mm, down: 48 mm}\n- {profile: r3, from: track, to: nose, inward: 30 mm, up: 48 mm}\n",
			"", 1.5 * (14*0.03 + 4*0.03*0.03), 0.01},
		{"bay", place("s1", 2, 2) + place("s2", 4, 2) + place("s3", 2, 1.2) + place("s4", 4, 1.2),
			"steps: [{name: bay, where: bay, opening: [s1, s2], treads: [{runs: [{straight: [s3, s4]}], below: w1, is: 0.50}]}]\n", 0.5 * 2 * 0.8, 0.02},
	} {
		w := waterOf(t, run(t, small("", ties()+diagonals()+rimLevels(0)+level15("w1")+x.readings, rim+x.blocks)))
		close1(t, x.name, w.Volume-plain.Volume, x.volume, x.within)
	}
}

// A rod down the wall is a depth there: with rods at the corners the floor runs on to 1.20 and 2.00 at the
// ends, and the volume is that of the prism with no strip guessed.
func TestRodsDownTheWall(t *testing.T) {
	rods := ""
	for _, x := range []struct {
		mark string
		drop float64
	}{{"r1", 1.35}, {"r2", 1.355}, {"r3", 2.145}, {"r4", 2.153}} {
		rods += fmt.Sprintf("- {wall: %s, from: nose, to: wall-foot, is: %.3f}\n", x.mark, x.drop)
	}
	w := waterOf(t, run(t, small("", ties()+diagonals()+rimLevels(0)+sounded("w1")+rods, rim)))
	close1(t, "volume", w.Volume, 12*1.6, 0.05)
	if w.Deepest < 1.98 || w.At.Mark != "r4" && w.At.Mark != "r3" {
		t.Errorf("deepest %v at %+v", w.Deepest, w.At)
	}
	r := run(t, small("", ties()+diagonals()+rimLevels(0)+sounded("w1")+"- {wall: r1, from: track, to: cove, is: 1.3}\n", rim))
	if f := found(r, "wall-open"); f == nil || len(f.Readings) != 1 {
		t.Errorf("a rod from an edge whose height nothing tells: %+v", r.Findings)
	}
}

// A lip lower than the water is said by its name, and a raised wall stands in the section where its foot
// runs.
func TestLipAndRaisedWall(t *testing.T) {
	built := ""
	for _, x := range []struct {
		name string
		x, y float64
		rise int
	}{{"k1", 2, 5, -300}, {"k2", 4, 5, -300}, {"n1", 2, 2, 450}, {"n2", 4, 2, 450}, {"m1", 2, 2, 0}, {"m2", 4, 2, 0}} {
		built += fmt.Sprintf("- {tie: A %s, is: %.4f}\n- {tie: B %s, is: %.4f}\n- {level: r1 %s, rise: %d mm}\n",
			x.name, math.Hypot(x.x, x.y), x.name, math.Hypot(x.x-6, x.y), x.name, x.rise)
	}
	lines := rim + "  lip: {runs: [{straight: [k1, k2]}]}\n  top: {runs: [{straight: [n1, n2]}]}\n  foot: {runs: [{straight: [m1, m2]}]}\n"
	r := run(t, small("", ties()+diagonals()+rimLevels(0)+level15("w1")+built, lines+
		"spills: [{name: weir, kind: vanishing, lip: lip, drop: 1 m}]\nraised: [{name: wall, foot: foot, top: top}]\n"))
	if f := found(r, "water-over"); f == nil || math.Abs(f.Figures["over"]-0.15) > 0.003 || !strings.Contains(f.Text, "weir") {
		t.Errorf("of the lip: %+v", r.Findings)
	}
	high, low := math.Inf(-1), math.Inf(1)
	for _, piece := range r.Basin.Section(plane.Point{X: 3, Y: 0}, plane.Point{X: 3, Y: 6}) {
		for _, p := range piece.Points {
			if p.S < 3 {
				high = math.Max(high, p.Z)
			} else if p.S > 4.95 {
				low = math.Min(low, -p.Z)
			}
		}
	}
	close1(t, "top of the raised wall", high, 0.45, 0.003)
	close1(t, "the lip", -low, -0.3, 0.003)
	if out := run(t, small("", ties()+diagonals()+rimLevels(0)+level15("w1")+built, lines)); found(out, "water-over") != nil {
		t.Error("a lip where none is said")
	}
}

// Depths and slopes beside the rule set that the book names; the first change of slope is measured along
// the axis.
func TestWaterRules(t *testing.T) {
	blocks := "floor: {breaks: [[f10, f11, f12]]}\nrules: {depths: ispsc 2012 residential}\n"
	w := waterOf(t, run(t, small("", ties()+diagonals()+rimLevels(0)+sounded("w1"), rim+blocks)))
	if w.RuleSet != "ispsc 2012 residential" || w.Edition == "" || len(w.Rules) != 3 || w.Caution != basin.Caution {
		t.Fatalf("%s %s: %+v", w.RuleSet, w.Edition, w.Rules)
	}
	for k, want := range []struct {
		value   float64
		verdict basin.Verdict
	}{{0.2, basin.Beyond}, {0.2, basin.Meets}, {1.5, basin.Beyond}} {
		l := w.Rules[k]
		if l.Value == nil || math.Abs(*l.Value-want.value) > 0.01 || l.Verdict != string(want.verdict) || l.Clause == "" || l.Source == "" {
			t.Errorf("%s: %+v", l.What, l)
		}
	}
}

// What is missing is said, and nothing is guessed.
func TestWaterLacks(t *testing.T) {
	for _, x := range []struct{ code, readings, lines string }{
		{"water-unread", strings.ReplaceAll(sounded("r1"), "below: w1", "below: r1"), rim},
		{"rimless", rimLevels(0) + sounded("w1"), ""},
		{"floor-unread", rimLevels(0), rim + "floor: {breaks: [[r1, r3]]}\n"},
		{"depth-placeless", rimLevels(0) + sounded("w1") + "- {depth: f9, below: w1, is: 1.7}\n", rim},
		{"top-open", rimLevels(0) + sounded("w1"), rim + "steps: [{name: entry, where: inside, treads: [{runs: [{straight: [A, B]}]}]}]\n"},
		{"water-over", strings.Split(rimLevels(0), "- {water")[0] + "- {water: w1, under: k, is: 0.100}\n- {level: k r1, rise: -250 mm}\n" + sounded("w1"), rim},
	} {
		r := run(t, small("", ties()+diagonals()+x.readings, x.lines))
		if f := found(r, x.code); f == nil || f.Text == "" || f.Text == x.code {
			t.Errorf("%s is not said: %+v", x.code, r.Findings)
		}
		if (r.Water == nil) != (x.code == "water-unread" || x.code == "rimless" || x.code == "floor-unread") {
			t.Errorf("%s: water %+v", x.code, r.Water)
		}
	}
	if r := run(t, small("", ties()+rimLevels(0), rim)); r.Water != nil || r.Basin != nil || found(r, "floor-unread") != nil {
		t.Error("a basin where no depth is read")
	}
}
