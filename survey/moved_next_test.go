package survey_test

import (
	"slices"
	"strings"
	"testing"

	"brimline/survey"
)

const movedBook = `brimline: 1
readings:
- {tie: A B, is: 6.000}
- {tie: A r1, is: 2.238}
- {tie: B r1, is: 7.279}
- {tie: A r2, is: 6.081}
- {tie: B r2, is: 9.223}
- {tie: A r3, is: 9.218}
- {tie: A x1, is: 3.100}
- {moved: B, why: dog line}
lines:
  rim: {closed: true, runs: [{straight: [r1, r2]}, {straight: [r2, r3]}, {straight: [r3, r1]}]}
`

// The old place of a moved peg is neither proposed nor named in a cure.
func TestNobodyTapesToWhereAPegWas(t *testing.T) {
	for _, still := range []bool{true, false} {
		text := movedBook
		if still {
			text = strings.Replace(text, "- {moved: B, why: dog line}\n", "", 1)
		}
		r, err := survey.Run(t.Context(), survey.Input{Book: parse(t, text), NextCount: 50}, nil)
		if err != nil {
			t.Fatal(err)
		}
		proposed := slices.ContainsFunc(r.Next, func(n survey.Next) bool { return slices.Contains(n.Marks, "B") })
		cure := mustFind(t, r, "unfixed").Cure
		if proposed != still || strings.HasSuffix(cure, "to B") != still {
			t.Errorf("standing %v: proposed %v, cure %q", still, proposed, cure)
		}
		if fixed := slices.ContainsFunc(r.Next, func(n survey.Next) bool { return n.Why == "fixes r3" }); !fixed {
			t.Errorf("standing %v: nothing fixes r3: %+v", still, r.Next)
		}
	}
}

// A mark on no line waits behind those of lines, and gains nothing for the shape.
func TestAMarkOnNoLineGainsNothing(t *testing.T) {
	r, err := survey.Run(t.Context(), survey.Input{Book: parse(t, movedBook), NextCount: 50}, nil)
	if err != nil {
		t.Fatal(err)
	}
	lined, beside := -1, -1
	for i, n := range r.Next {
		switch n.Why {
		case "fixes r3":
			lined = i
			if n.Order != "shape" || n.Gain != 1 {
				t.Errorf("%+v", n)
			}
		case "fixes x1":
			beside = i
			if n.Order != "" || n.Gain != 0 {
				t.Errorf("%+v", n)
			}
		}
	}
	if lined < 0 || beside < lined {
		t.Errorf("r3 stands at %d, x1 at %d", lined, beside)
	}
}

// The check tapes for a book count what it has read: nothing that is controlled is controlled again.
func TestChecksCountWhatWasRead(t *testing.T) {
	full := written(crossed(taped("A", "B", "C")), courtRim)
	list, err := survey.Checks(t.Context(), survey.Input{Book: parse(t, full)}, 8)
	if err != nil || list == nil {
		t.Fatalf("%v, %v", list, err)
	}
	for _, n := range list {
		if strings.Contains(n.Why, "would control") {
			t.Errorf("%s: %s", n.Text, n.Why)
		}
	}
	two, err := survey.Checks(t.Context(), survey.Input{Book: parse(t, written(taped("A", "B"), courtRim))}, 8)
	if err != nil || !slices.ContainsFunc(two, func(n survey.Next) bool { return strings.Contains(n.Why, "would control") }) {
		t.Errorf("two pegs: %+v, %v", two, err)
	}
	if none, err := survey.Checks(t.Context(), survey.Input{Book: parse(t, "brimline: 1\nreadings:\n- {tie: A B, is: 6}\n")}, 8); err != nil || none != nil {
		t.Errorf("nothing to plan by: %v, %v", none, err)
	}
}
