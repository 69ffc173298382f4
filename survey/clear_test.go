package survey_test

import (
	"fmt"
	"math"
	"testing"

	"brimline/plane"
)

// A clear reading is the distance that plane finds from the true mark to the true line, outside, inside
// and to a parallel.
func TestClearIsDistance(t *testing.T) {
	track, err := stadiumPath.Offset(0.3, plane.RoundCorners)
	if err != nil {
		t.Fatal(err)
	}
	more, want := "", []float64{}
	for _, m := range []string{"h1", "h2", "h3"} {
		for _, l := range []struct {
			name string
			path plane.Path
		}{{"rim", stadiumPath}, {"track", track.Paths[0]}} {
			d := math.Abs(l.path.Distance(stadium[m]))
			want = append(want, d)
			more += fmt.Sprintf("- {clear: %s, line: %s, is: %.4f, check: true}\n", m, l.name, d)
		}
	}
	for _, runs := range []string{statedRuns, anyRuns} {
		r := run(t, stadiumBook(runs, more, "  track: {from: rim, outward: 300 mm, sigma: 3 mm, edge: track}\n"))
		for i, x := range last(r, len(want)) {
			near(t, fmt.Sprint(x.Marks, x.Line), *x.Adjusted, want[i], 2e-3)
			sd := []float64{0.010, math.Hypot(0.010, 0.003)}[i%2]
			near(t, "sd", x.SD, sd, 1e-9)
		}
		mustNotFind(t, r, "clear-beyond")
	}
}

// A clear distance places no mark that nothing else fixes: both sides of the line would do.
func TestClearPlacesNothing(t *testing.T) {
	src := "brimline: 1\nreadings:\n" + ties() + "- {tie: r1 g1, is: 1.5}\n- {clear: g1, line: rim, is: 0.9, sigma: 4 mm}\n- {side: g1, of: r2 r1, hand: right}\n" + rim
	r := run(t, "brimline: 1\ntools: {tape: {sigma: 4 mm}}\n"+src[len("brimline: 1\n"):])
	for _, f := range r.Findings {
		if f.Code == "unfixed" || f.Code == "not-used" {
			return
		}
	}
	t.Errorf("a mark of one tape and a clear distance is placed in silence: %+v", r.Findings)
}

// Past the end of an open line the nearest place is its end.
func TestClearBeyond(t *testing.T) {
	lines := "  wall: {runs: [{straight: [r7, r6]}]}\n"
	r := run(t, stadiumBook(statedRuns, fmt.Sprintf("- {clear: h2, line: wall, is: %.3f}\n- {clear: h3, line: wall, is: 1.9}\n", stadium["h2"].Dist(stadium["r6"])), lines))
	if f := mustFind(t, r, "clear-beyond"); f.Readings[0] != last(r, 2)[0].N || f.Marks[0] != "h2" {
		t.Errorf("%+v", f)
	}
}

// Free deck is kept and shown, and places nothing.
func TestClearUntil(t *testing.T) {
	r := run(t, stadiumBook(statedRuns, "- {clear: r3, until: the hedge, is: 85 cm}\n", ""))
	bare := run(t, stadiumBook(statedRuns, "", ""))
	x := last(r, 1)[0]
	if x.Until != "the hedge" || x.Value != 0.85 || x.Text != "85 cm" || x.Adjusted != nil || x.SD != 0.010 {
		t.Errorf("%+v", x)
	}
	if r.Statistics.Readings != bare.Statistics.Readings || r.Statistics.Redundancy != bare.Statistics.Redundancy || r.Statistics.ChiSquare.Value != bare.Statistics.ChiSquare.Value {
		t.Errorf("%+v, without it %+v", r.Statistics, bare.Statistics)
	}
	mustNotFind(t, r, "line-first")
}

// A rule has no hook: a tool's zero is in a tie and not in a width.
func TestWidthHasNoZero(t *testing.T) {
	src := stadiumBook(statedRuns, "- {width: r1 r2, is: 6.001, tool: hook, check: true}\n- {tie: r1 r2, is: 6.031, tool: hook, check: true}\n- {width: r6 r7, is: 6, check: true}\n", "")
	r := run(t, "brimline: 1\ntools: {hook: {zero: 30 mm, sigma: 4 mm}}\n"+src[len("brimline: 1\n"):])
	x := last(r, 3)
	near(t, "width", *x[0].Adjusted, 6, 1e-5)
	near(t, "tie", *x[1].Adjusted, 6.03, 1e-5)
	near(t, "sd of a rule", x[2].SD, 0.003, 1e-12)
	mustNotFind(t, r, "zero-ties-only")
}
