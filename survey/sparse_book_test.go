package survey_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"brimline/survey"
)

// Half-way through the day every book is incomplete: it still has an answer, which prints.
func TestIncompleteBooks(t *testing.T) {
	drawn := strings.ReplaceAll(ties(), "tool: tape", "class: drawing")
	seen := "- {seen: r1, setup: T1, at: [1, 2], class: drawing}\n- {seen: r2, setup: T1, at: [1, 5], class: drawing}\n" +
		"- {seen: r3, setup: T1, at: [5, 5], class: drawing}\n- {seen: r4, setup: T1, at: [5, 2], class: drawing}\n"
	for _, c := range []struct {
		name, text, codes string
		placed            string // marks with a place, as the result orders them
		readings          int    // that count
	}{
		{"empty", "brimline: 1\n", "no-datum", "", 0},
		{"only a job", "brimline: 1\njob: {name: Larch Yard, measured: 2026-05-14}\n", "no-datum", "", 0},
		{"a line and no reading", "brimline: 1\n" + rim, "line-unread", "", 0},
		{"a mark and no reading", "brimline: 1\nmarks: {r1: {at: [1, 2]}}\n", "mark-unread", "", 0},
		{"one tape", small("", tie("A", "B", 0), ""), "no-check", "A B", 1},
		{"one tape between wanted places", small("A: {at: [1, 1]}, B: {at: [1, 9]}", tie("A", "B", 0), ""), "datum-misfit no-check", "A B", 1},
		{"one tape, a line waiting", small("", tie("A", "B", 0), rim), "no-check line-unread", "A B", 1},
		{"a struck tape", small("", tie("A", "B", 0)+"- {strike: 1, why: slack}\n", ""), "no-datum", "", 0},
		{"a mark read once", small("", tie("A", "B", 0)+tie("A", "r1", 0), ""), "unfixed", "A B", 1},
		{"only a drawing", small("", drawn, rim), "sketch", "", 0},
		{"only a drawing, seen", small("", seen, rim), "sketch", "", 0},
	} {
		r := run(t, c.text)
		if text := bytesOf(t, r); strings.Contains(text, "NaN") || !strings.Contains(text, `"readings":[`) || !strings.Contains(text, `"findings":[`) {
			t.Errorf("%s: %s", c.name, text)
		}
		for _, want := range strings.Fields(c.codes) {
			if found(r, want) == nil {
				t.Errorf("%s: found %q, want %s", c.name, codes(r), want)
			}
		}
		if !strings.Contains(c.text, "readings") && len(r.Findings) > 2 {
			t.Errorf("%s: found %s", c.name, codes(r))
		}
		var placed []string
		for _, n := range r.MarkOrder {
			if m := r.Marks[n]; m.X != nil {
				placed = append(placed, n)
			} else if m.SX != nil || m.Ellipse95 != nil || m.Controlled {
				t.Errorf("%s: %s has no place, and trust", c.name, n)
			}
		}
		if strings.Join(placed, " ") != c.placed || r.Statistics.Readings != c.readings {
			t.Errorf("%s: placed %v, %d readings", c.name, placed, r.Statistics.Readings)
		}
		if r.Shape.State == "ready" || len(r.Shape.Why) == 0 {
			t.Errorf("%s: shape %+v", c.name, r.Shape)
		}
		for _, l := range r.Lines { // order-free: there is one
			if l.Length != nil || l.Area != nil || len(l.Runs) != 0 {
				t.Errorf("%s: the line has figures", c.name)
			}
		}
	}
}

// Books whose figure has no size say so.
func TestNoScale(t *testing.T) {
	seen := "- {seen: r1, setup: T1, at: [1, 2]}\n- {seen: r2, setup: T1, at: [1, 5]}\n- {seen: r3, setup: T1, at: [5, 5]}\n- {seen: r4, setup: T1, at: [5, 2]}\n"
	if r := run(t, small("", seen, "setups: {T1: {scale: solve}}\n"+rim)); found(r, "no-scale") == nil {
		t.Errorf("found %s", codes(r))
	}
	if r := run(t, small("", seen, rim)); found(r, "no-scale") != nil {
		t.Errorf("an instrument that knows its scale: found %s", codes(r))
	}
}

// Run answers for its input: no book is an error, and the context cancels.
func TestRunErrors(t *testing.T) {
	if _, err := survey.Run(context.Background(), survey.Input{}, nil); err == nil {
		t.Error("no book is no error")
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := survey.Run(ctx, survey.Input{Book: parse(t, small("", ties(), rim))}, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
	var steps []survey.Step
	if _, err := survey.Run(context.Background(), survey.Input{Book: parse(t, small("", ties(), rim))}, func(s survey.Step) { steps = append(steps, s) }); err != nil || len(steps) != 6 || steps[0] != survey.StepNetwork || steps[5] != survey.StepResult {
		t.Errorf("steps %v, %v", steps, err)
	}
}
