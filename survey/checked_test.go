package survey_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"brimline/survey"
)

// withChecks is the court from two pegs with its four cross tapes as checks, the first wrong by off.
func withChecks(off float64) []tape {
	all := crossed(taped("A", "B"))
	for k := len(all) - 4; k < len(all); k++ {
		all[k].extra = ", check: true"
	}
	all[len(all)-4].is += off
	return all
}

func redundancies(r *survey.Result) (sum float64) {
	for _, x := range r.Readings {
		if !x.Check && x.State != "struck" {
			sum += *x.Redundancy
		}
	}
	return sum
}

// Checks that agree move no mark and are not in the statistics, but what they would show counts
// in the redundancy of the readings.
func TestAgreeingChecks(t *testing.T) {
	with, bare := run(t, written(withChecks(0), courtRim)), run(t, written(taped("A", "B"), courtRim))
	for _, n := range bare.MarkOrder {
		near(t, n, place(t, with, n).Dist(place(t, bare, n)), 0, 1e-9)
		near(t, n+": sx", *with.Marks[n].SX, *bare.Marks[n].SX, 1e-9)
	}
	if got := states(with, "agrees"); len(got) != 4 {
		t.Fatalf("agrees %v", got)
	}
	if s := with.Statistics; s.Readings != bare.Statistics.Readings || s.Redundancy != 0 || s.ReferenceSD != nil {
		t.Errorf("statistics %+v", s)
	}
	near(t, "redundancies without checks", redundancies(bare), 0, 1e-6)
	sum := 0.0
	for _, x := range with.Readings {
		sum += *x.Redundancy
	}
	near(t, "redundancies with checks", sum, 4, 1e-6) // one for each reading more than fix the figure
	for _, n := range []string{"r1", "r2", "r5", "r7"} {
		if a, b := with.Marks[n], bare.Marks[n]; !a.Controlled || a.Hidden == nil || b.Controlled || b.Hidden != nil {
			t.Errorf("%s: controlled %v, without checks %v", n, a.Controlled, b.Controlled)
		}
	}
	if with.Shape.State != "ready" || bare.Shape.State == "ready" {
		t.Errorf("shape %s, without checks %s", with.Shape.State, bare.Shape.State)
	}
}

// oneCheck is the court from three pegs with one cross tape, a check that is wrong by off.
func oneCheck(off float64) (string, string) {
	all := taped("A", "B", "C")
	all = append(all, tape{a: "r1", b: "r5", is: court["r1"].Dist(court["r5"]) + off, extra: ", check: true"})
	return written(all, courtRim), number(len(all) - 1)
}

// A check agrees up to 3.29 times its own sd and that of its prediction together.
func TestCheckAtItsLimit(t *testing.T) {
	book, n := oneCheck(0)
	x := reading(t, run(t, book), n)
	if x.Kind != "tie" || !x.Check {
		t.Fatalf("%+v", x)
	}
	near(t, "residual", *x.Residual, *x.Adjusted-x.Value, 1e-12)
	near(t, "w", math.Abs(*x.W), math.Abs(*x.Residual)/math.Hypot(x.SD, predicted(x)), 1e-6)
	limit := 3.29 * math.Hypot(x.SD, predicted(x))
	for _, c := range []struct {
		off   float64
		state string
	}{{limit - 0.002, "agrees"}, {limit + 0.002, "disagrees"}, {-limit + 0.002, "agrees"}, {-limit - 0.002, "disagrees"}} {
		book, _ := oneCheck(*x.Residual + c.off)
		y := reading(t, run(t, book), n)
		if y.State != c.state {
			t.Errorf("off by %.4f of %.4f: %s, want %s", c.off, limit, y.State, c.state)
		}
		near(t, "difference", y.Value-*y.Adjusted, c.off, 0.0006)
	}
}

// predicted is the sd of the prediction of a check: with its own sd it makes its redundancy,
// sd²/(sd² + q²).
func predicted(x survey.Reading) float64 { return x.SD * math.Sqrt(1/(*x.Redundancy)-1) }

// A check that disagrees moves nothing, proves nothing, and says what may have been done to it.
func TestDisagreeingCheck(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	k := len(all) - 4
	all[k].extra, all[k].is = ", check: true", all[k].is+0.3048
	r := run(t, written(all, courtRim))
	bare := run(t, written(append(slices.Clone(all[:k]), all[k+1:]...), courtRim))
	x := reading(t, r, number(k))
	if x.State != "disagrees" || len(x.Likely) == 0 || x.Likely[0].Code != "foot" {
		t.Fatalf("%s, likely %+v", x.State, x.Likely)
	}
	for _, n := range bare.MarkOrder {
		near(t, n, place(t, r, n).Dist(place(t, bare, n)), 0, 1e-9)
	}
	near(t, "redundancies", redundancies(r), redundancies(bare), 1e-6)
	if len(states(r, "suspect")) > 0 || len(r.Mistakes) != 1 {
		t.Errorf("suspect %v, mistakes %+v", states(r, "suspect"), r.Mistakes)
	}
}

// Checks show a mistake in a reading, which is then left out.
func TestChecksShowAMistake(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	for k := len(all) - 4; k < len(all); k++ {
		all[k].extra = ", check: true"
	}
	i := at(t, all, "C", "r7")
	all[i].is -= 1
	r := run(t, written(all, courtRim))
	if got := states(r, "suspect"); !slices.Equal(got, []string{number(i)}) || len(states(r, "agrees")) != 4 {
		t.Errorf("suspect %v, agrees %v", got, states(r, "agrees"))
	}
	if l := reading(t, r, number(i)).Likely; len(l) == 0 || l[0].Code != "metre" {
		t.Errorf("likely %+v", l)
	}
}

// Only marks without a place leave a check without an answer.
func TestCheckOfAnUnfixedMark(t *testing.T) {
	r := run(t, written(append(taped("A", "B"), tape{a: "r1", b: "x9", is: 3, extra: ", check: true"}), courtRim))
	if x := reading(t, r, fmt.Sprint(len(taped("A", "B"))+1)); x.State != "lone" || x.Adjusted != nil {
		t.Errorf("%s, adjusted %v", x.State, x.Adjusted)
	}
}
