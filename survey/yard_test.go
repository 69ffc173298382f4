package survey_test

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/plane"
	"brimline/survey"
)

// yard is the true place of the marks of the small books here: a rectangle of 4 × 3 before two
// pegs 6 m apart. Invented.
var yard = map[string]plane.Point{
	"A": {}, "B": {X: 6},
	"r1": {X: 1, Y: 2}, "r2": {X: 1, Y: 5}, "r3": {X: 5, Y: 5}, "r4": {X: 5, Y: 2},
}

// tie is a tape of the yard, with an error.
func tie(a, b string, off float64) string {
	return fmt.Sprintf("- {tie: %s %s, is: %.6f, tool: tape}\n", a, b, yard[a].Dist(yard[b])+off)
}

const rim = "lines:\n  rim: {closed: true, edge: nose, runs: [{straight: [r1, r2]}, {straight: [r2, r3]}, {straight: [r3, r4]}, {straight: [r4, r1]}]}\n"

// ties is every tape from the pegs to the corners, and the base.
func ties() string {
	out := tie("A", "B", 0.001)
	off := []float64{0.002, -0.003, 0.001, 0.002, -0.001, 0.003, -0.002, 0.001}
	for i, r := range []string{"r1", "r2", "r3", "r4"} {
		out += tie("A", r, off[2*i]) + tie("B", r, off[2*i+1])
	}
	return out
}

// diagonals check the rectangle.
func diagonals() string { return tie("r1", "r3", 0.002) + tie("r2", "r4", -0.004) }

func small(marks, readings, lines string) string {
	out := "brimline: 1\njob: {name: Small Yard}\ntools:\n  tape: {sigma: 4 mm}\n"
	if marks != "" {
		out += "marks: {" + marks + "}\n"
	}
	return out + "readings:\n" + readings + lines
}

func parse(t testing.TB, text string) *fieldbook.Book {
	t.Helper()
	b, err := fieldbook.Parse("yard.yaml", []byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return &b
}

func solve(t testing.TB, b *fieldbook.Book) *survey.Result {
	t.Helper()
	r, err := survey.Run(context.Background(), survey.Input{Book: b}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func run(t testing.TB, text string) *survey.Result {
	t.Helper()
	return solve(t, parse(t, text))
}

func bytesOf(t testing.TB, r *survey.Result) string {
	t.Helper()
	out, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// codes joins the codes found.
func codes(r *survey.Result) string {
	var out []string
	for _, f := range r.Findings {
		out = append(out, f.Code)
	}
	return strings.Join(out, " ")
}

func found(r *survey.Result, code string) *survey.Finding {
	for i := range r.Findings {
		if r.Findings[i].Code == code {
			return &r.Findings[i]
		}
	}
	return nil
}

func reading(t testing.TB, r *survey.Result, n string) survey.Reading {
	t.Helper()
	for _, x := range r.Readings {
		if x.N == n {
			return x
		}
	}
	t.Fatalf("no reading %s", n)
	return survey.Reading{}
}

func place(t testing.TB, r *survey.Result, name string) plane.Point {
	t.Helper()
	m := r.Marks[name]
	if m == nil || m.X == nil || m.Y == nil {
		t.Fatalf("%s has no place", name)
	}
	return plane.Point{X: *m.X, Y: *m.Y}
}

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.10g, want %.10g within %g", what, got, want, tol)
	}
}
