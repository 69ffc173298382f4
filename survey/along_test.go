package survey_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// Along a stadium every length is known: straights of 6 m, half circles of 2 m, on a parallel at d of
// 2 + d. A check reading shows what is predicted.
func TestAlongStadium(t *testing.T) {
	turn := func(degrees float64) float64 { return degrees * math.Pi / 180 }
	const d = 0.032
	cases := []struct {
		reading string
		want    float64
	}{
		{"along: r1 r2, line: rim", 6},
		{"along: r2 r6, line: rim", 2 * math.Pi},
		{"along: r1 r4, line: rim", 6 + math.Pi},
		{"along: r3 r5, line: rim", 2 * turn(90)},
		{"along: r5 r8, line: rim", 2*turn(40) + 6 + 2*turn(50)},
		{"along: r9 r2, line: rim", math.Pi + 6},
		{"along: r6 r2, line: rim", 12 + 2*math.Pi},
		{"round: rim", 12 + 4*math.Pi},
		{"along: r1 r4, line: track", 6 + (2+d)*turn(90)},
		{"along: r4 r9, line: track", 6 + (2+d)*math.Pi},
		{"along: r3 r5, line: wall", (2 + d - 0.3) * turn(90)},
		{"round: track", 12 + 2*(2+d)*math.Pi},
		{"along: r3 r5, round: wall", 12 + 2*(2+d-0.3)*math.Pi},
	}
	var more strings.Builder
	for _, c := range cases {
		fmt.Fprintf(&more, "- {%s, is: %.7f, check: true}\n", c.reading, c.want)
	}
	lines := "  track: {from: rim, outward: 32 mm, edge: track}\n  wall: {from: track, inward: 300 mm, edge: wall-foot}\n"
	for _, runs := range []struct {
		name, text string
		within     float64
	}{{"stated", statedRuns, 2e-6}, {"found", anyRuns, 2e-3}} {
		r := run(t, stadiumBook(runs.text, more.String(), lines))
		for i, x := range last(r, len(cases)) {
			if x.State != "agrees" || x.Adjusted == nil {
				t.Fatalf("%s, %s: %s", runs.name, cases[i].reading, x.State)
			}
			near(t, runs.name+", "+cases[i].reading, *x.Adjusted, cases[i].want, runs.within)
		}
	}
}

// A tape round a circle of 3 m marked by eye, the line a curve, one arc, or left to be found.
func TestRoundCircle(t *testing.T) {
	turns := []float64{0, 34, 66, 110, 141, 180, 222, 250, 291, 325}
	var ties, names strings.Builder
	ties.WriteString("- {tie: A B, is: 10}\n")
	for k, d := range turns {
		s, c := math.Sincos(d * math.Pi / 180)
		x, y := 5+3*c, 5+3*s
		fmt.Fprintf(&ties, "- {tie: A r%d, is: %.7f}\n- {tie: B r%d, is: %.7f}\n", k, math.Hypot(x, y), k, math.Hypot(x-10, y))
		fmt.Fprintf(&names, "r%d, ", k)
	}
	for _, kind := range []string{"curve", "arc", "any"} {
		src := "brimline: 1\nreadings:\n" + ties.String() + fmt.Sprintf("- {round: rim, is: %.7f, check: true}\n", 6*math.Pi) +
			"lines: {rim: {closed: true, runs: [{" + kind + ": [" + names.String() + "r0]}]}}\n"
		x := last(run(t, src), 1)[0]
		if x.Adjusted == nil {
			t.Fatal(kind, x.State)
		}
		near(t, kind, *x.Adjusted, 6*math.Pi, 1e-6)
		near(t, kind+" sd", x.SD, math.Hypot(0.005, 0.001*6*math.Pi), 1e-5)
	}
}

// A reading along the line moves the shape: with tapes that are all 4 mm long, a loop read exactly
// pulls the length back, by what the weights allow.
func TestRoundPulls(t *testing.T) {
	const truth = 12 + 4*math.Pi
	reading := fmt.Sprintf("- {round: rim, is: %.7f, sigma: 1 mm}\n", truth)
	errors := []float64{0.003, -0.002, 0.001, 0.004, -0.003, 0.002, -0.001}
	bare := run(t, stadiumBook(statedRuns, "", "", errors...))
	r := run(t, stadiumBook(statedRuns, reading, "", errors...))
	was, now := math.Abs(*bare.Lines["rim"].Length-truth), math.Abs(*r.Lines["rim"].Length-truth)
	if now > was/2 || now > 0.0015 {
		t.Errorf("the loop is %.1f mm off, %.1f mm without the tape", 1000*now, 1000*was)
	}
	if *r.Lines["rim"].LengthSD >= *bare.Lines["rim"].LengthSD {
		t.Errorf("sd %.4f, without the tape %.4f", *r.Lines["rim"].LengthSD, *bare.Lines["rim"].LengthSD)
	}
	x := last(r, 1)[0]
	if x.State != "good" || *x.Redundancy < 0.01 || *x.Redundancy > 0.99 {
		t.Errorf("%s with redundancy %v", x.State, *x.Redundancy)
	}
}

// A tape along the line that is a metre short is suspect, and the metre is named; one that was read
// the other way round is asked about.
func TestAlongMistakes(t *testing.T) {
	errors := []float64{0.001, -0.002, 0.001, 0.002, -0.001}
	r := run(t, stadiumBook(statedRuns, fmt.Sprintf("- {along: r1 r6, line: rim, is: %.3f}\n", 5+2*math.Pi), "", errors...))
	if x := last(r, 1)[0]; x.State != "suspect" || x.Likely[0].Code != "metre" {
		t.Errorf("%s, %+v", x.State, x.Likely)
	}
	mustNotFind(t, r, "other-way")
	check := fmt.Sprintf("- {round: rim, is: %.3f, check: true}\n- {along: r4 r1, line: rim, is: %.3f}\n", 12+4*math.Pi, 6+3*math.Pi-3.1)
	r = run(t, stadiumBook(anyRuns, check, "", errors...)) // what the line is made of is not told by the wrong tape
	if x := last(r, 2); x[0].State != "agrees" || x[1].State != "suspect" {
		t.Errorf("%s beside %s", x[0].State, x[1].State)
	}
	r = run(t, stadiumBook(statedRuns, fmt.Sprintf("- {along: r4 r1, line: rim, is: %.3f}\n", 6+math.Pi), "", errors...))
	if f := mustFind(t, r, "other-way"); f.Marks[0] != "r4" {
		t.Errorf("%+v", f)
	}
}

// A reading whose line has marks that nothing reads yet waits, and shows what was read.
func TestAlongWaits(t *testing.T) {
	r := run(t, stadiumBook(strings.Replace(statedRuns, "r3, r4", "r3, x1, r4", 1), "- {along: r2 r6, line: rim, is: 6.28}\n- {along: r6 r7, line: rim, is: 6.003}\n", ""))
	x := last(r, 2)
	if x[0].Adjusted != nil || x[0].Value != 6.28 || x[0].SD < 0.008 {
		t.Errorf("%+v", x[0])
	}
	if f := mustFind(t, r, "line-first"); len(f.Marks) != 1 || f.Marks[0] != "x1" || f.Readings[0] != x[0].N {
		t.Errorf("%+v", f)
	}
	if x[1].Adjusted == nil || x[1].State != "good" {
		t.Errorf("a stretch that lacks nothing: %+v", x[1])
	}
}

// An unreached corner on the way: two straights that meet, rounded, by Euclid.
func TestAlongCorner(t *testing.T) {
	for _, c := range []struct {
		round string
		want  float64
	}{{"", 3 + 4}, {"round: 500 mm, ", 3 + 4 - 0.5*(2-math.Pi/2)}} {
		src := "brimline: 1\nreadings:\n" + ties() + fmt.Sprintf("- {along: r1 r3, line: rim, is: %.6f, check: true}\n", c.want) +
			"lines: {rim: {runs: [{straight: [r1, p1, c1]}, {straight: [c1, p2, r3]}]}}\nunreached: {c1: {meet: [[r1, p1], [p2, r3]], " + c.round + "sigma: 6 mm}}\n"
		src = strings.ReplaceAll(strings.ReplaceAll(src, ", tool: tape", ""), "r2, is", "r9, is") // r2 is the corner: nobody touches it
		src = strings.Replace(src, "readings:\n", "readings:\n"+aside("p1", 1, 4)+aside("p2", 2.5, 5), 1)
		r := run(t, src)
		x := last(r, 1)[0]
		if x.Adjusted == nil {
			t.Fatalf("%+v", r.Findings)
		}
		near(t, "length", *x.Adjusted, c.want, 0.012)
		near(t, "sd", x.SD, math.Hypot(math.Hypot(0.005, 0.001*c.want), 0.006), 1e-6)
	}
}

// aside is exact tapes from the yard's pegs to a place.
func aside(name string, x, y float64) string {
	return fmt.Sprintf("- {tie: A %s, is: %.6f}\n- {tie: B %s, is: %.6f}\n", name, math.Hypot(x, y), name, math.Hypot(x-6, y))
}
