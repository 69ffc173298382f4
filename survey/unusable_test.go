package survey_test

import (
	"encoding/json"
	"strings"
	"testing"

	"brimline/survey"
)

// apartBook has a mark whose circles cannot meet; with the third one of the pool its solution does
// not settle, without it a mark of the line is free to move.
const apartBook = `brimline: 1
readings:
- {tie: A B, is: 6}
- {tie: A r1, is: 5}
- {tie: B r1, is: 5}
- {tie: A r2, is: 1}
- {tie: B r2, is: 2}
- {tie: A r3, is: 7}
- {tie: B r3, is: 4}
lines:
  rim: {closed: true, runs: [{straight: [r1, r2]}, {straight: [r2, r3]}, {straight: [r3, r1]}]}
`

// figuresGone wants nothing of a shape that could be taken for known.
func figuresGone(t *testing.T, r *survey.Result) {
	t.Helper()
	s := r.Shape
	if s.State != "unfit" || s.Worst != nil || s.At != "" || len(s.Weakest) > 0 || len(s.Why) == 0 {
		t.Errorf("%s, worst %v at %q, weakest %v, why %q", s.State, s.Worst, s.At, s.Weakest, s.Why)
	}
	for _, x := range s.Tests {
		if x.State != "unfit" || x.U95 != nil || x.Unseen != nil {
			t.Errorf("%+v", x)
		}
	}
	if l := r.Lines["rim"]; l.LengthSD != nil || l.AreaSD != nil {
		t.Errorf("rim: length ± %v, area ± %v", l.LengthSD, l.AreaSD)
	}
	if m := r.Marks["r2"]; m.Ellipse95 != nil || m.SX != nil || m.Hidden != nil || m.Controlled {
		t.Errorf("r2: %+v", m)
	}
	for _, n := range r.Next {
		if n.Gain > 1 {
			t.Errorf("%s gains %g %s", n.Text, n.Gain, n.Unit)
		}
	}
	if _, err := json.Marshal(r); err != nil {
		t.Error(err)
	}
}

func TestWhatDoesNotSettleIsUnfit(t *testing.T) {
	r := run(t, apartBook)
	mustFind(t, r, "not-converged")
	mustFind(t, r, "unheld")
	mustNotFind(t, r, "loose")
	figuresGone(t, r)
	for name, m := range r.Marks {
		if m.Ellipse95 != nil {
			t.Errorf("%s has a ±", name)
		}
	}
}

func TestAMarkThatIsFreeIsUnfit(t *testing.T) {
	r := run(t, strings.Replace(strings.Replace(apartBook, "- {tie: A r3, is: 7}\n- {tie: B r3, is: 4}\n", "", 1),
		"closed: true, runs: [{straight: [r1, r2]}, {straight: [r2, r3]}, {straight: [r3, r1]}]", "closed: false, runs: [{straight: [r1, r2]}]", 1))
	mustNotFind(t, r, "not-converged")
	mustFind(t, r, "unheld")
	figuresGone(t, r)
	if r.Marks["r1"].Ellipse95 == nil {
		t.Error("r1 is held, and has lost its ±")
	}
	if !strings.Contains(strings.Join(r.Shape.Why, "; "), "r2 free to move") {
		t.Errorf("why: %q", r.Shape.Why)
	}
}

// Nothing is wrong with a court but the order of the corners in its line.
func TestALineThatCrossesItselfIsUnfit(t *testing.T) {
	const rim = "lines:\n  rim: {closed: true, runs: [{straight: [r1, r3]}, {straight: [r3, r5]}, {straight: [r5, r7]}, {straight: [r7, r1]}]}\n"
	ready := run(t, written(crossed(taped("A", "B", "C")), rim))
	if ready.Shape.State != "ready" || ready.Lines["rim"].Area == nil {
		t.Fatalf("before: %s", ready.Shape.State)
	}
	swapped := strings.NewReplacer("r3", "r5", "r5", "r3").Replace(rim)
	r := run(t, written(crossed(taped("A", "B", "C")), swapped))
	f := mustFind(t, r, "crossing")
	if f.Severity != "stop" || r.Shape.State != "unfit" || len(r.Shape.Why) == 0 || !strings.Contains(r.Shape.Why[0], "crosses itself") {
		t.Errorf("%s: %s, why %q", f.Severity, r.Shape.State, r.Shape.Why)
	}
	if l := r.Lines["rim"]; l.Area != nil || l.AreaSD != nil || l.Length == nil || l.LengthSD == nil {
		t.Errorf("rim: %+v", l)
	}
	if r.Shape.Worst == nil {
		t.Error("its marks are known all the same")
	}
	for _, in := range []string{apartBook, written(crossed(taped("A", "B", "C")), swapped)} {
		risks, err := survey.Leave(t.Context(), survey.Input{Book: parse(t, in)})
		if err != nil || len(risks) != 1 || risks[0].Odds != 1 || risks[0].State != "unfit" || risks[0].Ready {
			t.Errorf("leaving it: %+v, %v", risks, err)
		}
	}
}
