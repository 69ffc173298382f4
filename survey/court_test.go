package survey_test

import (
	"fmt"
	"strings"
	"testing"

	"brimline/plane"
	"brimline/survey"
)

// court is the true place of the marks of the books in which mistakes are planted: eight marks on
// a rectangle of 8 × 4 m between three pegs. Invented.
var court = map[string]plane.Point{
	"A": {}, "B": {X: 8}, "C": {X: 2.5, Y: 9},
	"r1": {X: 0.5, Y: 2}, "r2": {X: 0.5, Y: 4}, "r3": {X: 0.5, Y: 6}, "r4": {X: 4, Y: 6},
	"r5": {X: 8.5, Y: 6}, "r6": {X: 8.5, Y: 4}, "r7": {X: 8.5, Y: 2}, "r8": {X: 5, Y: 2},
}

const courtRim = "lines:\n  rim: {closed: true, edge: nose, runs: [{straight: [r1, r2, r3]}, {straight: [r3, r4, r5]}, {straight: [r5, r6, r7]}, {straight: [r7, r8, r1]}]}\n"

// tape is one tie of the court as written.
type tape struct {
	a, b  string
	is    float64
	extra string // further keys
	tool  string // "": tape
}

func (t tape) String() string {
	tool := t.tool
	if tool == "" {
		tool = "tape"
	}
	return fmt.Sprintf("- {tie: %s %s, is: %.3f, tool: %s%s}\n", t.a, t.b, t.is, tool, t.extra)
}

// scatter are the errors of the tapes in turn, metres.
var scatter = []float64{0.002, -0.003, 0.001, 0.002, -0.001, 0.003, -0.002, 0.001, -0.004, 0, 0.003}

// taped are the tapes of the court from some pegs, mark by mark, after those between the pegs.
func taped(pegs ...string) []tape {
	var out []tape
	put := func(a, b string) {
		out = append(out, tape{a: a, b: b, is: court[a].Dist(court[b]) + scatter[len(out)%len(scatter)]})
	}
	for i, a := range pegs {
		for _, b := range pegs[i+1:] {
			put(a, b)
		}
	}
	for k := range 8 {
		for _, p := range pegs {
			put(p, fmt.Sprintf("r%d", k+1))
		}
	}
	return out
}

// crossed adds four tapes between marks.
func crossed(in []tape) []tape {
	for k, m := range [][2]string{{"r1", "r5"}, {"r3", "r7"}, {"r2", "r6"}, {"r4", "r8"}} {
		in = append(in, tape{a: m[0], b: m[1], is: court[m[0]].Dist(court[m[1]]) + scatter[k]})
	}
	return in
}

// at is the place of a tape in a list.
func at(t testing.TB, all []tape, a, b string) int {
	t.Helper()
	for i, x := range all {
		if x.a == a && x.b == b {
			return i
		}
	}
	t.Fatalf("no tape %s %s", a, b)
	return -1
}

// written is the book of some tapes of 4 mm; more is put after the readings.
func written(all []tape, more string) string {
	var b strings.Builder
	b.WriteString("brimline: 1\njob: {name: Small Court}\ntools:\n  tape: {sigma: 4 mm}\n  reel: {sigma: 4 mm}\nreadings:\n")
	for _, t := range all {
		b.WriteString(t.String())
	}
	return b.String() + "- {side: r1, of: A B, hand: left}\n" + more
}

// number is the n of a tape in the list that written writes.
func number(i int) string { return fmt.Sprint(i + 1) }

// unmoved wants every mark of the court within some metres of where it is.
func unmoved(t testing.TB, r *survey.Result, within float64) {
	t.Helper()
	for name, p := range court { // order-free: each mark is compared alone
		if r.Marks[name] == nil {
			continue
		}
		near(t, name, place(t, r, name).Dist(p), 0, within)
	}
}

// states lists the readings in a state.
func states(r *survey.Result, state string) []string {
	var out []string
	for _, x := range r.Readings {
		if x.State == state {
			out = append(out, x.N)
		}
	}
	return out
}
