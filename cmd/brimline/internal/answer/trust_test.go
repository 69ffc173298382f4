package answer_test

import (
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"brimline/cmd/brimline/internal/answer"
	"brimline/survey"
	"brimline/unit"
)

var update = flag.Bool("update", false, "write the golden files anew")

func group(n int) *int { return &n }

// doubted is the triangle with everything that can be wrong of it: a reading named, a group that
// cannot be told apart, checks, a correction, mistakes with and without an edit, other kinds.
func doubted() *survey.Result {
	r := triangle()
	r.Shape.State = "unfit"
	r.Shape.Why = []string{"reading 5 would move the edge at r2 by 31 mm"}
	r.Shape.Share, r.Shape.Unseen = 0.5, 0.01
	odds, little := 0.034, 0.0004
	r.Shape.Tests = []survey.Test{
		{Name: "edge", At: "r2", U95: at(0.0183), Tolerance: 0.025, Share: 0.5, Unseen: &odds, State: "unfit"},
		{Name: "between", At: "r1", U95: at(0.0041), Tolerance: 0.025, Share: 0.5, Unseen: &little, State: "ready"},
	}
	r.Shape.Weakest = []survey.Weak{
		{Text: "An error of up to 62 mm could hide in tie B–17 and would move the edge there by 40 mm; tape 17–23 to expose it"},
		{Text: "An error of up to 48 mm could hide in tie A–r2 and would move the edge there by 31 mm; tape r2–r9 to expose it"},
		{Text: "the third"}, {Text: "the fourth is not said"},
	}
	tie := func(n, a, b string, v float64, text, state string) survey.Reading {
		return survey.Reading{N: n, Kind: "tie", Marks: []string{a, b}, Value: v, Text: text, Residual: at(-1.002), Adjusted: at(v - 1.002), W: at(-88), State: state}
	}
	metre := tie("5", "B", "r9", 7.45, "7.450", "suspect")
	metre.Likely = []survey.Likely{{Code: "metre", Cause: "one metre long", Value: at(6.45), Probability: 0.93}}
	one, two := tie("6", "A", "r7", 5.1, "5.10", "doubtful"), tie("7", "B", "r7", 6.2, "6.20", "doubtful")
	one.Group, two.Group = group(1), group(1)
	one.Likely = []survey.Likely{{Code: "foot", Cause: "one foot short", Value: at(5.4048), Probability: 0.46}}
	check := tie("8", "r1", "r9", 3.3, "3.300", "disagrees")
	check.Check, check.Residual, check.Adjusted = true, at(0.062), at(3.362)
	fixed := tie("9", "A", "r1", 5.83, "5.83", "good")
	fixed.Computed, fixed.As, fixed.Residual, fixed.W = true, "5.10", at(0), at(0)
	r.Readings = append(r.Readings, metre, one, two, check, fixed,
		survey.Reading{N: "10", Kind: "turn", Marks: []string{"A", "k1", "r5"}, Value: 42.2519, Text: "42.2519", Residual: at(0.0021), W: at(0.3), Detectable: at(0.0652), State: "good"},
		survey.Reading{N: "11", Kind: "straight", Marks: []string{"r1", "r2", "r3"}, Residual: at(0.002), W: at(0.4), Detectable: at(0.031), State: "agrees"})
	r.Mistakes = []survey.Mistake{
		{Code: "metre", Text: "reading 5 is one metre long", Readings: []string{"5"}, Edit: []survey.Edit{{N: "5", Value: at(6.45)}}, Probability: 0.93},
		{Code: "columns", Text: "A and B are swapped at r7", Readings: []string{"6", "7"}, Edit: []survey.Edit{{N: "6", Marks: []string{"B", "r7"}}, {N: "7", Marks: []string{"A", "r7"}}}, Probability: 0.999},
		{Code: "peg-moved", Text: "B was moved after reading 7", Readings: []string{"8", "9"}, Probability: 0.61},
	}
	r.Next = []survey.Next{
		{Kind: "tie", Marks: []string{"A", "r9"}, Text: "tape A to r9, about 7.61", About: at(7.61), Order: "shape", Gain: 0.011, Unit: "m", Minutes: 1.5, Alone: true, Why: "would control r9"},
		{Kind: "tie", Marks: []string{"r2", "r7"}, Text: "tape r2 to r7, about 3.10", Order: "winter cover", Gain: 0.4, Minutes: 1, Why: "would tell 6 from 7"},
		{Kind: "tie", Marks: []string{"r1", "r5"}, Text: "tape r1 to r5", Minutes: 2, Alone: true},
		{Kind: "tie", Marks: []string{"r1", "r6"}, Text: "the fourth", Alone: true},
	}
	r.Orders = []survey.Order{
		{Name: "winter cover", Kind: "cover", State: "unfit", For: "cut", Tests: []survey.Test{{Name: "edge", At: "r7", U95: at(0.018), Tolerance: 0.025, Share: 0.5, State: "unfit"}},
			Lacks: []survey.Lack{{What: "deck width at r7", How: "clear r7 until hedge", Minutes: 1}}},
		{Name: "bubble", Kind: "blanket", State: "ready"},
	}
	return r
}

// risks are what leaving the doubted pool now would mean.
func risks() []survey.Leaving {
	return []survey.Leaving{
		{Order: "shape", State: "unfit", Odds: 0.034, Minutes: 4.5, Ready: true, Buy: doubted().Next[:2], Ways: []survey.Way{
			{Code: "metre", Readings: []string{"17"}, Size: at(-1), Odds: 0.012}, {Code: "peg-moved", Readings: []string{"2", "7"}, Odds: 0.01}, {Code: "error", At: "r2", Odds: 0.004}}},
		{Order: "winter cover", State: "unfit", Odds: 0.2, Minutes: 9, Buy: append(doubted().Next, doubted().Next...)},
	}
}

// The answers to the three questions, as rounded text.
func TestGolden(t *testing.T) {
	for name, got := range map[string]string{
		"solve": answer.Text(doubted(), unit.M, "larch.yaml"),
		"feet":  answer.Text(doubted(), unit.FT, "-"),
		"leave": answer.Leave(doubted(), risks(), unit.M),
		"next":  answer.Next(doubted(), unit.M),
	} {
		file := filepath.Join("testdata", name+".txt")
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s has changed (go test ./cmd/brimline/internal/answer -update writes it anew):\n%s", file, got)
		}
		for _, l := range strings.Split(got, "\n") {
			if utf8.RuneCountInString(l) > 80 && !strings.HasPrefix(l, "  ") {
				t.Errorf("%s: line of %d: %q", name, utf8.RuneCountInString(l), l)
			}
		}
	}
}

// The word is that of the worst: an order that is not ready takes it from a shape that is.
func TestVerdictIsTheWorst(t *testing.T) {
	for _, c := range []struct {
		shape, want string
		orders      []string
	}{
		{"ready", "ready", nil}, {"ready", "ready", []string{"ready"}}, {"ready", "unproven", []string{"ready", "unproven"}}, {"unproven", "unfit", []string{"unfit", "ready"}},
		{"unfit", "unfit", []string{"ready"}}, {"ready", "odd", []string{"odd"}},
	} {
		r := &survey.Result{Shape: survey.Shape{State: c.shape}}
		for _, o := range c.orders {
			r.Orders = append(r.Orders, survey.Order{Name: "cover", State: o})
		}
		if got := answer.Verdict(r); got != c.want {
			t.Errorf("%s with %v: %s, want %s", c.shape, c.orders, got, c.want)
		}
		if text := answer.Text(r, unit.M, ""); c.shape == "ready" && c.want == "unproven" && !strings.Contains(text, "May I go? Not yet.") {
			t.Errorf("an order is unproven, and the answer is\n%s", text)
		}
	}
}

// What stands out is said before the tables, the best three proposals and no more.
func TestOnlySoMuch(t *testing.T) {
	got := answer.Text(doubted(), unit.M, "larch.yaml")
	for _, no := range []string{"the fourth"} {
		if strings.Contains(got, no) {
			t.Errorf("says %q", no)
		}
	}
	if all := answer.Next(doubted(), unit.M); !strings.Contains(all, "4. The fourth.") {
		t.Errorf("next keeps back what was asked for:\n%s", all)
	}
	var at []int
	for _, w := range []string{"May I go? No.", "could hide in tie B–17", "Good so far?", "5  tie B r9  7.450  suspect: one metre long, 6.450 (93 %)", "What next?", "What is open", "How sure", "Marks (", "Readings ("} {
		at = append(at, strings.Index(got, w))
	}
	if !slices.IsSorted(at) || at[0] < 0 {
		t.Errorf("places %v in\n%s", at, got)
	}
}

// Where nothing is left to read the program says so, and the reason is the verdict's.
func TestNothingNext(t *testing.T) {
	for state, want := range map[string]string{"ready": "Nothing: everything is ready.", "unproven": "No reading that can be proposed would help"} {
		if got := answer.Next(&survey.Result{Shape: survey.Shape{State: state}}, unit.M); !strings.Contains(got, want) {
			t.Errorf("%s: %q", state, got)
		}
	}
	if got := answer.Checks(nil, 3, unit.M); !strings.Contains(got, "None can be proposed") {
		t.Errorf("%q", got)
	}
	for asked, more := range map[int]bool{4: false, 5: true} {
		got := answer.Checks(doubted().Next, asked, unit.M)
		if !strings.Contains(got, "4. The fourth.") || !strings.Contains(got, "Together about 4.5 minutes.") || strings.Contains(got, "More would not help.") != more {
			t.Errorf("asked for %d: %q", asked, got)
		}
	}
}

// A file name with a blank is one word of the command that accepts; standard input cannot be written.
func TestAcceptCommand(t *testing.T) {
	for book, want := range map[string]string{"larch.yaml": "brimline solve larch.yaml --accept 2", "my book.yaml": "brimline solve 'my book.yaml' --accept 2", "-": "(to accept, keep the book as a file)"} {
		if got := strings.Join(strings.Fields(answer.Text(doubted(), unit.M, book)), " "); !strings.Contains(got, want) {
			t.Errorf("%s: no %q", book, want)
		}
	}
}

// What accepting wrote: the old figure, the new one, and that nobody read it.
func TestWritten(t *testing.T) {
	r := doubted()
	r.Readings = append(r.Readings, survey.Reading{N: "12", Kind: "tie", Marks: []string{"B", "r7"}, Text: "5.10", Computed: true, As: "5.10"})
	got := answer.Written(r, unit.M, "larch.yaml", []answer.Correction{{Was: "4", Now: "9"}, {Was: "6", Now: "12"}})
	for _, want := range []string{"Written to larch.yaml;", "- 4  tie A r1  as read 5.10, used 5.83, not re-read\n", "- 6  tie A r7  as read tie A r7, used tie B r7, not re-read\n"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}
