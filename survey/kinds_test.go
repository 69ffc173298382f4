package survey_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// An angle shows in degrees, with all its figures: value, residual, sd, detectable.
func TestAnglesInDegrees(t *testing.T) {
	r2, a, r7 := court["r2"], court["A"], court["r7"]
	turn := math.Mod(math.Atan2(r2.Y-a.Y, r2.X-a.X)-math.Atan2(r7.Y-a.Y, r7.X-a.X)+2*math.Pi, 2*math.Pi) * 180 / math.Pi
	more := fmt.Sprintf("- {turn: r2 r7, at: A, is: %.4f, sigma: 0.03}\n- {square: r1 r3 r5, sigma: 0.2}\n", turn+0.011)
	all := crossed(taped("A", "B", "C"))
	r := run(t, strings.Replace(written(all, courtRim), "- {side", more+"- {side", 1))
	x, y := r.Readings[len(all)], r.Readings[len(all)+1]
	if x.Kind != "turn" || y.Kind != "square" || x.State != "good" || y.State != "good" {
		t.Fatalf("%s %s, %s %s", x.Kind, x.State, y.Kind, y.State)
	}
	near(t, "turn", x.Value, turn+0.011, 6e-5)
	near(t, "turn adjusted", *x.Adjusted, turn, 0.05)
	near(t, "square", y.Value, 90, 1e-12)
	near(t, "sd of the turn", x.SD, 0.03, 1e-12)
	near(t, "sd of the square", y.SD, 0.2, 1e-12)
	near(t, "detectable", *y.Detectable, 4.13*0.2/math.Sqrt(*y.Redundancy), 1e-9)
	near(t, "residual", *x.Residual, *x.Adjusted-x.Value, 1e-12)
	near(t, "w", *x.W, *x.Residual/(x.SD*math.Sqrt(*x.Redundancy)), 1e-6)
}

// A turn wrong by degrees is suspect, and no length stands for what it was.
func TestWrongTurn(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	r := run(t, strings.Replace(written(all, courtRim), "- {side", "- {turn: r2 r7, at: A, is: 61.2, sigma: 0.03}\n- {side", 1))
	x := r.Readings[len(all)]
	if x.State != "suspect" || x.Likely[0].Code != "unknown" || x.Likely[0].Value != nil {
		t.Fatalf("%s, %+v", x.State, x.Likely)
	}
	if m := r.Mistakes[0]; m.Code != "unknown" || len(m.Edit) > 0 || !strings.Contains(m.Text, "turn") {
		t.Errorf("%+v", m)
	}
}

// Asserted lines and circles have a part for each mark: its distance from the free line or circle.
func TestAssertedParts(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	more := "- {straight: r1 r2 r3, sigma: 5 mm}\n- {arc: r1 r3 r5 r7, sigma: 8 mm}\n" // the corners of a rectangle lie on a circle
	r := run(t, strings.Replace(written(all, courtRim), "- {side", more+"- {side", 1))
	bare := run(t, written(all, courtRim))
	if got := r.Statistics.Redundancy - bare.Statistics.Redundancy; got != 2 { // 3 − 2 and 4 − 3 conditions
		t.Errorf("%d conditions, want 2", got)
	}
	for k, c := range []struct {
		kind  string
		parts int
		sd    float64
	}{{"straight", 3, 0.005}, {"arc", 4, 0.008}} {
		x := r.Readings[len(all)+k]
		if x.Kind != c.kind || len(x.Parts) != c.parts || x.State != "good" {
			t.Fatalf("%s %s with %d parts", x.Kind, x.State, len(x.Parts))
		}
		sum := 0.0
		for i, p := range x.Parts {
			if p.Part != fmt.Sprint(i+1) || p.Value != 0 || p.Text != "" || p.SD != c.sd {
				t.Errorf("%s: part %+v", c.kind, p)
			}
			near(t, c.kind+": residual", *p.Residual, *p.Adjusted, 1e-12)
			sum += *p.Redundancy
		}
		near(t, c.kind+": redundancy", *x.Redundancy, sum, 1e-12)
	}
}

// A rise has a length, and the arc of two marks takes its radius from it: s²/(8h) + h/2 (a circle's
// chord s and rise h).
func TestRiseGivesTheRadius(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	arc := strings.Replace(courtRim, "{straight: [r3, r4, r5]}", "{straight: [r3, r4]}, {arc: [r4, r5]}", 1)
	r := run(t, strings.Replace(written(all, arc), "- {side", "- {bow: r4 r5, is: 0.300, toward: deck, tool: tape}\n- {side", 1))
	x := r.Readings[len(all)]
	if x.Kind != "bow" || len(x.Parts) > 0 || x.State != "lone" { // one rise checks nothing
		t.Errorf("%s %s, %d parts", x.Kind, x.State, len(x.Parts))
	}
	near(t, "adjusted rise", *x.Adjusted, 0.3, 1e-9)
	s := place(t, r, "r4").Dist(place(t, r, "r5"))
	for _, run := range r.Lines["rim"].Runs {
		if run.Kind == "arc" {
			near(t, "radius", *run.Radius, s*s/(8*0.3)+0.15, 0.02)
			if *run.Sweep >= 0 {
				t.Errorf("sweep %g of an outward arc of a clockwise line", *run.Sweep)
			}
			return
		}
	}
	t.Errorf("runs %+v", r.Lines["rim"].Runs)
}

// The rows of a column are ties of their own: 1.1, 1.2, in the order read.
func TestColumnRows(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	var rows, rest []string
	for _, x := range all {
		if x.a == "B" && strings.HasPrefix(x.b, "r") {
			rows = append(rows, fmt.Sprintf("[%s, %.3f]", x.b, x.is))
		} else {
			rest = append(rest, x.String())
		}
	}
	book := strings.Replace(written(nil, courtRim), "readings:\n", "readings:\n- {from: B, tool: tape, to: ["+strings.Join(rows, ", ")+"]}\n"+strings.Join(rest, ""), 1)
	r, plain := run(t, book), run(t, written(all, courtRim))
	for k := range 8 {
		x := r.Readings[k]
		if x.N != fmt.Sprintf("1.%d", k+1) || x.Kind != "tie" || x.Marks[0] != "B" || x.Marks[1] != fmt.Sprintf("r%d", k+1) || x.Tool != "tape" {
			t.Errorf("row %d: %s %s %v %s", k+1, x.N, x.Kind, x.Marks, x.Tool)
		}
	}
	for m := range court { // order-free: each mark is compared alone
		near(t, m, place(t, r, m).Dist(place(t, plain, m)), 0, 1e-9)
	}
}

// A tape round something can only be too long: where it is, it pulls little.
func TestBentTape(t *testing.T) {
	for _, c := range []struct{ off, sd float64 }{{0.060, math.Hypot(0.004, 0.050)}, {-0.009, 0.004}} {
		all := crossed(taped("A", "B", "C"))
		i := at(t, all, "B", "r5")
		all[i].is, all[i].extra = all[i].is+c.off, ", bent: true"
		r := run(t, written(all, courtRim))
		x := reading(t, r, number(i))
		if x.State != "good" {
			t.Errorf("off by %g: %s, %+v", c.off, x.State, x.Likely)
		}
		near(t, "sd", x.SD, c.sd, 1e-9)
		unmoved(t, r, 0.010)
	}
}
