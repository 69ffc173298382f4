package survey_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/plane"
	"brimline/survey"
)

// sameShape says that the marks of b are those of a moved rigidly.
func sameShape(t *testing.T, a, b *survey.Result) {
	t.Helper()
	names := a.MarkOrder
	for i, p := range names {
		for _, q := range names[:i] {
			near(t, "distance "+p+" "+q, place(t, b, p).Dist(place(t, b, q)), place(t, a, p).Dist(place(t, a, q)), 1e-9)
		}
	}
	near(t, "area", *b.Lines["rim"].Area, *a.Lines["rim"].Area, 1e-9)
	near(t, "sd of the area", *b.Lines["rim"].AreaSD, *a.Lines["rim"].AreaSD, 1e-9)
	near(t, "worst of the shape", *b.Shape.Worst, *a.Shape.Worst, 1e-9)
}

// One place wanted sets the place and nothing else; its mark is then the one without sd.
func TestOnePlaceWanted(t *testing.T) {
	free := run(t, small("", ties()+diagonals(), rim))
	r := run(t, small("r1: {at: [10, 20]}", ties()+diagonals(), rim))
	sameShape(t, free, r)
	near(t, "r1", place(t, r, "r1").Dist(plane.Point{X: 10, Y: 20}), 0, 1e-9)
	d := place(t, r, "B").Sub(place(t, r, "A"))
	near(t, "direction of the base", plane.Angle(d), 0, 1e-12)
	if m := r.Marks["r1"]; *m.SX != 0 || *m.SY != 0 || m.Ellipse95 != nil {
		t.Errorf("r1 ± %g, %g, ellipse %v", *m.SX, *m.SY, m.Ellipse95)
	}
	if m := r.Marks["A"]; !(*m.SX > 0 && *m.SY > 0) {
		t.Errorf("A ± %g, %g", *m.SX, *m.SY)
	}
	if found(r, "datum-misfit") != nil {
		t.Errorf("found %s", codes(r))
	}
}

// Two set place and direction; ellipses, bearings, set-ups and lines turn with them.
func TestTwoPlacesWanted(t *testing.T) {
	seen := "- {seen: r1, setup: T1, at: [1.001, 2.002]}\n- {seen: r2, setup: T1, at: [0.999, 5.001]}\n- {seen: r3, setup: T1, at: [5.002, 4.998]}\n"
	free := run(t, small("", ties()+diagonals()+seen, rim))
	r := run(t, small("A: {at: [100, 50]}, B: {at: [100, 56]}", ties()+diagonals()+seen, rim))
	sameShape(t, free, r)
	for _, name := range free.MarkOrder {
		p, q := place(t, free, name), place(t, r, name)
		near(t, name+" turned a quarter", q.Dist(plane.Point{X: 100 - p.Y, Y: 50 + p.X}), 0, 1e-9)
		m, n := free.Marks[name], r.Marks[name]
		near(t, name+": sx", *n.SX, *m.SY, 1e-9)
		near(t, name+": sy", *n.SY, *m.SX, 1e-9)
		if (m.Ellipse95 == nil) != (name == "A") || (n.Ellipse95 == nil) != (name == "A") {
			t.Fatalf("%s: ellipse %v, turned %v", name, m.Ellipse95, n.Ellipse95)
		}
		if e, f := m.Ellipse95, n.Ellipse95; e != nil {
			near(t, name+": major", f.Major, e.Major, 1e-9)
			near(t, name+": minor", f.Minor, e.Minor, 1e-9)
			near(t, name+": bearing", math.Remainder(f.Bearing-e.Bearing+90, 180), 0, 1e-4)
		}
		if n.Hidden == nil || m.Hidden == nil {
			t.Fatalf("%s: hidden %v, turned %v", name, m.Hidden, n.Hidden)
		}
		near(t, name+": hidden", *n.Hidden, *m.Hidden, 1e-9)
	}
	for i, x := range free.Lines["rim"].Runs {
		near(t, "bearing of a run", math.Remainder(*r.Lines["rim"].Runs[i].Bearing-*x.Bearing+90, 360), 0, 1e-9)
		v, w := free.Lines["rim"].Vertices[i], r.Lines["rim"].Vertices[i]
		near(t, "vertex", math.Hypot(w.X-100+v.Y, w.Y-50-v.X), 0, 1e-9)
	}
	near(t, "turn of the set-up", math.Remainder(*r.Setups["T1"].Turn-*free.Setups["T1"].Turn-90, 360), 0, 1e-9)
	near(t, "set-up", math.Hypot(*r.Setups["T1"].X-100+*free.Setups["T1"].Y, *r.Setups["T1"].Y-50-*free.Setups["T1"].X), 0, 1e-9)
	if found(r, "datum-misfit") != nil {
		t.Errorf("found %s", codes(r))
	}
	far := run(t, small("A: {at: [100, 50]}, B: {at: [100, 56.1]}", ties()+diagonals(), rim))
	sameShape(t, run(t, small("", ties()+diagonals(), rim)), far)
	f := found(far, "datum-misfit")
	if f == nil || len(f.Marks) != 1 || f.Marks[0] != "B" {
		t.Fatalf("found %s", codes(far))
	}
	near(t, "misfit", f.Figures["misfit"], 6.1-place(t, far, "A").Dist(place(t, far, "B")), 1e-9)
}

// Places wanted far from the origin, at an angle of no quarter: the first mark has no sd, the
// second none across, and sx and sy are those of the ellipses.
func TestPlacesWantedAtAnAngle(t *testing.T) {
	turn := 37 * math.Pi / 180
	d := plane.Point{X: 5}.Turn(turn) // r1 to r3 is 5 m
	r := run(t, small(fmt.Sprintf("r1: {at: [10, 20]}, r3: {at: [%.9f, %.9f]}", 10+d.X, 20+d.Y), ties()+diagonals(), rim))
	sameShape(t, run(t, small("", ties()+diagonals(), rim)), r)
	near(t, "r1", place(t, r, "r1").Dist(plane.Point{X: 10, Y: 20}), 0, 1e-9)
	near(t, "direction of r3", plane.Angle(place(t, r, "r3").Sub(place(t, r, "r1"))), turn, 1e-9)
	if r.Marks["r1"].Ellipse95 != nil {
		t.Errorf("r1 has the ellipse %+v", *r.Marks["r1"].Ellipse95)
	}
	e := r.Marks["r3"].Ellipse95
	near(t, "r3 across", e.Minor, 0, 2e-6)
	near(t, "bearing of the ellipse at r3", e.Bearing, 90-37, 1e-3)
	for _, n := range []string{"A", "B", "r2", "r3", "r4"} {
		m := r.Marks[n]
		e, k := m.Ellipse95, -2*math.Log(0.05)
		s, c := math.Sincos(e.Bearing * math.Pi / 180)
		near(t, n+": sx of the ellipse", k**m.SX**m.SX, math.Pow(e.Major*s, 2)+math.Pow(e.Minor*c, 2), 1e-11)
		near(t, n+": sy of the ellipse", k**m.SY**m.SY, math.Pow(e.Major*c, 2)+math.Pow(e.Minor*s, 2), 1e-11)
	}
}

// Three are met by a rigid fit: what is left has no mean and no turn, the largest is reported,
// and the figure is not bent.
const three = "A: {at: [50, 80]}, B: {at: [56.01, 80.02]}, r3: {at: [55.0, 85.03]}"

func TestThreePlacesWanted(t *testing.T) {
	r := run(t, small(three, ties()+diagonals(), rim))
	sameShape(t, run(t, small("", ties()+diagonals(), rim)), r)
	want := map[string]plane.Point{"A": {X: 50, Y: 80}, "B": {X: 56.01, Y: 80.02}, "r3": {X: 55, Y: 85.03}}
	var sum, centre plane.Point
	turn, worst, at := 0.0, 0.0, ""
	for _, n := range []string{"A", "B", "r3"} {
		centre = centre.Add(want[n].Mul(1. / 3))
	}
	for _, n := range []string{"A", "B", "r3"} {
		d := place(t, r, n).Sub(want[n])
		sum = sum.Add(d)
		turn += want[n].Sub(centre).Cross(d)
		if d.Len() > worst {
			worst, at = d.Len(), n
		}
	}
	near(t, "mean of the misfits", sum.Len(), 0, 1e-9)
	near(t, "turn of the misfits", turn, 0, 1e-9)
	f := found(r, "datum-misfit")
	if f == nil || len(f.Marks) != 1 || f.Marks[0] != at {
		t.Fatalf("found %s, want a misfit at %s", codes(r), at)
	}
	near(t, "misfit", f.Figures["misfit"], worst, 1e-9)
	if worst < 0.005 {
		t.Errorf("misfit of %g: nothing is tested", worst)
	}
}

// The sd of marks laid on three wanted places are the scatter of their coordinates over noisy
// repetitions of the visit; so are those in the datum of the pegs.
func TestScatterOfMarks(t *testing.T) {
	const seed, draws = 99, 800
	for _, marks := range []string{three, "", "r1: {at: [10, 20]}"} {
		b := parse(t, small(marks, ties()+diagonals(), rim))
		rng := rand.New(rand.NewPCG(seed, 1))
		first := solve(t, b)
		sum := map[string][4]float64{}
		for range draws {
			for i := range b.Readings {
				m := b.Readings[i].Marks
				b.Readings[i].Values[0].Metres = yard[m[0]].Dist(yard[m[1]]) + 0.004*rng.NormFloat64()
			}
			r := solve(t, b)
			for _, n := range r.MarkOrder {
				p, s := place(t, r, n).Sub(place(t, first, n)), sum[n]
				sum[n] = [4]float64{s[0] + p.X, s[1] + p.Y, s[2] + p.X*p.X, s[3] + p.Y*p.Y}
			}
		}
		for _, n := range first.MarkOrder {
			s := sum[n]
			for k, sd := range []float64{*first.Marks[n].SX, *first.Marks[n].SY} {
				got := math.Sqrt(math.Max(s[2+k]/draws-s[k]*s[k]/draws/draws, 0))
				// the sd of a count of 800 is 2.5 % of it
				near(t, n+" with places wanted {"+marks+"}: scatter", got, sd, 0.1*sd+1e-9)
			}
		}
	}
}
