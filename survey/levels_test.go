package survey_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/survey"
)

// rimLevels are staffs from two set-ups on the yard's corners, closed on the first, with the freeboards
// of one surface before and after; heights of r1 to r4: 0, 4, −6, 2 mm.
func rimLevels(later float64) string {
	return `- {staff: r1, setup: S1, is: 1.400}
- {staff: r2, setup: S1, is: 1.396}
- {staff: r3, setup: S1, is: 1.406}
- {staff: r3, setup: S2, is: 1.306}
- {staff: r4, setup: S2, is: 1.297}
- {staff: r1, setup: S2, is: 1.300}
- {water: w1, under: r1, is: 0.150, time: "2026-05-14T09:10:00Z"}
- {water: w1, under: r3, is: 0.144, time: "2026-05-14T09:12:00Z"}
` + fmt.Sprintf("- {water: w1, under: r1, is: %.3f, time: \"2026-05-14T10:40:00Z\"}\n", 0.150+later)
}

func z(t *testing.T, r *survey.Result, mark string) float64 {
	t.Helper()
	m := r.Marks[mark]
	if m == nil || m.Z == nil || m.SZ == nil {
		t.Fatalf("%s has no height", mark)
	}
	return *m.Z
}

// Plan and heights are one solution, and the answer says the loop, the stations and the surface.
func TestLevelsOfARim(t *testing.T) {
	r := run(t, small("", ties()+diagonals()+rimLevels(0), rim))
	if r.Levels == nil {
		t.Fatal("no levels")
	}
	for mark, want := range map[string]float64{"r1": 0, "r2": 0.004, "r3": -0.006, "r4": 0.003} {
		if got := z(t, r, mark); math.Abs(got-want) > 0.0011 {
			t.Errorf("%s at %v, want %v", mark, got, want)
		}
	}
	if *r.Marks["r1"].SZ != 0 || r.Marks["A"].Z != nil || r.Marks["r2"].X == nil {
		t.Errorf("r1 ± %v, A at %v", *r.Marks["r1"].SZ, r.Marks["A"].Z)
	}
	l := r.Levels
	if len(l.Loops) != 1 || math.Abs(l.Loops[0].Misclosure) > 1e-12 || l.Loops[0].Setups != 2 || l.Loops[0].Within == nil || !*l.Loops[0].Within {
		t.Errorf("loops %+v", l.Loops)
	}
	if !slices.Equal(l.Loops[0].Marks, []string{"r1", "r3"}) || !slices.Equal(l.Loops[0].Readings, []string{"12", "14", "15", "17"}) {
		t.Errorf("loop by %v over %v", l.Loops[0].Marks, l.Loops[0].Readings)
	}
	if d := *l.Loops[0].Length; math.Abs(d-10) > 0.02 { // twice the diagonal of 4 × 3
		t.Errorf("length %v", d)
	}
	mean := 0.0
	for _, s := range l.Stations {
		mean += s.Off
	}
	if len(l.Stations) != 4 || math.Abs(mean) > 1e-12 || *l.RimLow > -0.005 || *l.RimHigh < 0.003 {
		t.Errorf("stations %+v, high %v, low %v", l.Stations, *l.RimHigh, *l.RimLow)
	}
	if len(l.Surfaces) != 1 || math.Abs(*l.Surfaces[0].Z+0.150) > 0.001 || *r.Setups["S1"].Z != z(t, r, "r1")+1.4 && math.Abs(*r.Setups["S1"].Z-1.4) > 0.001 {
		t.Errorf("surfaces %+v", l.Surfaces)
	}
	if f := found(r, "water-steady"); f == nil || f.Figures["by"] != 0 || !strings.Contains(f.Text, "1 h 30 min") && !strings.Contains(f.Text, "90 min") {
		t.Errorf("of the water: %+v", f)
	}
}

// A surface that fell is said with the amount; one that fell less than shows, as that.
func TestWaterFell(t *testing.T) {
	for later, code := range map[float64]string{0.012: "water-moved", 0.004: "water-steady"} { // order-free: each alone
		r := run(t, small("", ties()+rimLevels(later), rim))
		f := found(r, code)
		if f == nil || math.Abs(f.Figures["by"]-later) > 1e-9 || math.Abs(f.Figures["sd"]-0.0015*math.Sqrt2) > 1e-9 || !strings.Contains(f.Text, "fell") {
			t.Errorf("%v: %+v", later, f)
		}
	}
	r := run(t, small("", ties()+"- {water: w1, under: r1, is: 0.15}\n- {water: w1, under: r2, is: 0.15}\n- {water: w2, under: r1, is: 0.18}\n- {water: w2, under: r2, is: 0.18}\n", rim))
	f := found(r, "waters-differ")
	if f == nil || math.Abs(f.Figures["by"]-0.03) > 1e-9 || !strings.Contains(f.Text, "lower") {
		t.Errorf("two surfaces: %+v", f)
	}
}

// A loop that does not close is said, by the rule that the book chooses.
func TestLoopRule(t *testing.T) {
	wrong := strings.Replace(rimLevels(0), "is: 1.300}", "is: 1.304}", 1)
	r := run(t, small("", ties()+wrong, rim))
	f := found(r, "loop-open")
	if f == nil || math.Abs(f.Figures["open"]-0.004) > 1e-9 || f.Figures["limit"] != 0.003 || *r.Levels.Closure < 0.0039 {
		t.Errorf("%+v", f)
	}
	r = run(t, strings.Replace(small("", ties()+wrong, rim), "readings:\n", "rules: {level_loop: third order 12 mm}\nreadings:\n", 1))
	if l := r.Levels.Loops[0]; math.Abs(*l.Limit-0.012*math.Sqrt(*l.Length/1000)) > 1e-12 || *l.Within {
		t.Errorf("limit %v of %v m", *l.Limit, *l.Length)
	}
}

// Heights wanted set the height: one holds it, of more the mean misfit is nothing, and sz is against
// them.
func TestHeightsWanted(t *testing.T) {
	one := run(t, small("r2: {at: [0, 0, 10]}", ties()+rimLevels(0), rim))
	if math.Abs(z(t, one, "r2")-10) > 1e-12 || *one.Marks["r2"].SZ != 0 || math.Abs(z(t, one, "r1")-9.996) > 0.001 {
		t.Errorf("r2 at %v ± %v", z(t, one, "r2"), *one.Marks["r2"].SZ)
	}
	two := run(t, small("r2: {at: [0, 0, 10]}, r3: {at: [4, 0, 10.03]}", ties()+rimLevels(0), rim))
	if mean := (z(t, two, "r2") + z(t, two, "r3")) / 2; math.Abs(mean-10.015) > 1e-9 || *two.Marks["r2"].SZ == 0 {
		t.Errorf("mean %v", mean)
	}
	if f := found(two, "height-misfit"); f == nil || math.Abs(f.Figures["misfit"]-0.02) > 0.001 {
		t.Errorf("%+v", f)
	}
	if d := z(t, two, "r1") - z(t, two, "r2") - (z(t, one, "r1") - z(t, one, "r2")); math.Abs(d) > 1e-9 {
		t.Errorf("the heights wanted bent the rim by %v", d)
	}
}

// A book of heights alone has heights; a group apart has none, and a finding.
func TestHeightsAlone(t *testing.T) {
	r := run(t, "brimline: 1\nreadings:\n- {level: r1 r2, rise: 12 mm}\n- {level: r2 r3, rise: -5 mm}\n- {level: r3 r1, rise: -6 mm}\n- {level: q1 q2, rise: 1}\n")
	if got := z(t, r, "r2"); math.Abs(got-0.012+0.001/3) > 1e-9 {
		t.Errorf("r2 at %v", got)
	}
	if r.Statistics.Unknowns != 2 || r.Statistics.Redundancy != 1 || r.Marks["q1"].Z != nil || r.Marks["r2"].X != nil {
		t.Errorf("%+v, q1 %+v", r.Statistics, r.Marks["q1"])
	}
	if found(r, "heights-apart") == nil || found(r, "no-datum") != nil || found(r, "no-scale") != nil || found(r, "unfixed") != nil {
		t.Errorf("findings %+v", r.Findings)
	}
}

// A sounding placed from a string has a place and a height, and is one reading of three parts.
func TestSoundingFromAString(t *testing.T) {
	r := run(t, small("", ties()+diagonals()+rimLevels(0)+"- {depth: f1, below: w1, is: 1.42, line: r1 r3, at: 2, left: 0.1}\n- {depth: f2, below: rim, is: 1.57, line: r1 r3, at: 3, right: 0.1}\n", rim))
	f := r.Marks["f1"]
	if f.X == nil || math.Abs(*f.Z+1.57) > 0.001 || math.Abs(*r.Marks["f2"].Z+1.57) > 0.006 {
		t.Fatalf("f1 %+v", f)
	}
	x := r.Readings[len(r.Readings)-2]
	var parts []string
	for _, p := range x.Parts {
		parts = append(parts, p.Part)
	}
	if !slices.Equal(parts, []string{"is", "at", "left"}) || x.Parts[0].Value != 1.42 || x.Parts[0].Text != "1.42" {
		t.Errorf("parts %+v", x.Parts)
	}
	if r.Shape.Worst == nil || len(r.Mistakes) > 0 {
		t.Errorf("shape %+v, mistakes %+v", r.Shape, r.Mistakes)
	}
}

// A staff misread and a water moved are said in words, with what to write instead.
func TestHeightMistakesInWords(t *testing.T) {
	r := run(t, small("", ties()+diagonals()+strings.Replace(rimLevels(0), "is: 1.406}", "is: 1.506}", 1)+"- {level: r2 r3, rise: -10 mm}\n", rim))
	if len(r.Mistakes) != 1 || !strings.Contains(r.Mistakes[0].Text, "staff misread: 100 mm") || len(r.Mistakes[0].Edit) != 1 || math.Abs(*r.Mistakes[0].Edit[0].Value-1.406) > 1e-9 {
		t.Errorf("%+v", r.Mistakes)
	}
	text := small("", ties()+diagonals()+rimLevels(0.03)+"- {water: w1, under: r3, is: 0.174, time: \"2026-05-14T10:42:00Z\"}\n", rim)
	r = run(t, text)
	if len(r.Mistakes) != 1 || r.Mistakes[0].Text != "water w1 fell 30.0 mm between readings 19 and 20, 1 h 28 min apart" && r.Mistakes[0].Text != "water w1 fell 30.0 mm between readings 19 and 20, 88 min apart" {
		t.Errorf("%+v", r.Mistakes)
	}
	r = run(t, strings.Replace(text, "lines:", "- {depth: f1, below: w1, is: 1.40, time: \"2026-05-14T10:43:00Z\"}\nlines:", 1))
	if f := found(r, "held-corrected"); f == nil || !slices.Equal(f.Marks, []string{"f1"}) || math.Abs(*r.Marks["f1"].Z+1.58) > 0.003 {
		t.Errorf("a sounding in the later session: %+v at %v", f, r.Marks["f1"].Z)
	}
}
