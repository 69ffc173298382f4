package survey_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/plane"
	"brimline/survey"
)

// stadium is the true place of the marks of a pool of two straights of 6 m and two half circles of
// 2 m between three pegs, counter-clockwise. Invented.
var stadium = func() map[string]plane.Point {
	at := map[string]plane.Point{"A": {}, "B": {X: 10}, "C": {X: 4, Y: 10}, "h1": {X: 3.1, Y: 0.7}, "h2": {X: 11.2, Y: 5}, "h3": {X: 4, Y: 4.1},
		"r1": {X: 2, Y: 2}, "r2": {X: 8, Y: 2}, "r6": {X: 8, Y: 6}, "r7": {X: 2, Y: 6}}
	for k, turn := range []float64{-40, 0, 50} {
		s, c := math.Sincos(turn * math.Pi / 180)
		at[fmt.Sprintf("r%d", 3+k)] = plane.Point{X: 8 + 2*c, Y: 4 + 2*s}
		s, c = math.Sincos((180 + turn) * math.Pi / 180)
		at[fmt.Sprintf("r%d", 8+k)] = plane.Point{X: 2 + 2*c, Y: 4 + 2*s}
	}
	return at
}()

// stadiumPath is its rim.
var stadiumPath = plane.Path{Closed: true, Segs: []plane.Segment{
	{A: plane.Point{X: 2, Y: 2}, B: plane.Point{X: 8, Y: 2}}, {A: plane.Point{X: 8, Y: 2}, B: plane.Point{X: 8, Y: 6}, Bulge: 1},
	{A: plane.Point{X: 8, Y: 6}, B: plane.Point{X: 2, Y: 6}}, {A: plane.Point{X: 2, Y: 6}, B: plane.Point{X: 2, Y: 2}, Bulge: 1}}}

const statedRuns = "[{straight: [r1, r2]}, {arc: [r2, r3, r4, r5, r6], joint: tangent}, {straight: [r6, r7], joint: tangent}, {arc: [r7, r8, r9, r10, r1], joint: tangent}]"
const anyRuns = "[{any: [r1, r2, r3, r4, r5, r6, r7, r8, r9, r10, r1]}]"

// stadiumTies are exact tapes from the pegs to every mark, but for an error in turn.
func stadiumTies(errors ...float64) string {
	var b strings.Builder
	n := 0
	put := func(p, q string) {
		off := 0.0
		if len(errors) > 0 {
			off = errors[n%len(errors)]
		}
		n++
		fmt.Fprintf(&b, "- {tie: %s %s, is: %.7f, sigma: 2 mm}\n", p, q, stadium[p].Dist(stadium[q])+off)
	}
	put("A", "B")
	put("A", "C")
	put("B", "C")
	for _, m := range []string{"r1", "r2", "r3", "r4", "r5", "r6", "r7", "r8", "r9", "r10", "h1", "h2", "h3"} {
		put("A", m)
		put("B", m)
		put("C", m)
	}
	return b.String()
}

// stadiumBook has further readings and lines beside the rim.
func stadiumBook(runs, readings, lines string, errors ...float64) string {
	return "brimline: 1\nreadings:\n" + stadiumTies(errors...) + readings + "lines:\n  rim: {closed: true, edge: nose, runs: " + runs + "}\n" + lines
}

// aside3 is exact tapes from the three pegs to a further place.
func aside3(name string, x, y float64) string {
	out := ""
	for _, p := range []string{"A", "B", "C"} {
		out += fmt.Sprintf("- {tie: %s %s, is: %.7f, sigma: 2 mm}\n", p, name, stadium[p].Dist(plane.Point{X: x, Y: y}))
	}
	return out
}

// last gives the last readings of a result.
func last(r *survey.Result, n int) []survey.Reading { return r.Readings[len(r.Readings)-n:] }

func mustFind(t *testing.T, r *survey.Result, code string) survey.Finding {
	t.Helper()
	for _, f := range r.Findings {
		if f.Code == code {
			return f
		}
	}
	t.Fatalf("no finding %s: %+v", code, r.Findings)
	return survey.Finding{}
}

func mustNotFind(t *testing.T, r *survey.Result, code string) {
	t.Helper()
	for _, f := range r.Findings {
		if f.Code == code {
			t.Errorf("finding %s: %s", code, f.Text)
		}
	}
}
