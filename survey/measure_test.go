package survey_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/survey"
)

func rule(t testing.TB, text string) *survey.Ruler {
	t.Helper()
	r, err := survey.Rule(context.Background(), survey.Input{Book: parse(t, text)}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func across(t testing.TB, r *survey.Ruler, p, q string) *survey.Measured {
	t.Helper()
	m, err := r.Measure(p, q)
	if err != nil {
		t.Fatalf("%s to %s: %v", p, q, err)
	}
	return m
}

// exact is the yard without a false reading: a rectangle of 4 × 3, its corner r1 at (1, 2).
func exact() string {
	out := tie("A", "B", 0) + tie("r1", "r3", 0) + tie("r2", "r4", 0) + tie("r1", "r2", 0) + tie("r2", "r3", 0) + tie("r1", "r4", 0)
	for _, r := range []string{"r1", "r2", "r3", "r4"} {
		out += tie("A", r, 0) + tie("B", r, 0)
	}
	return small("", out, rim)
}

// Lengths, bearings and ways of a rectangle are what a rule would give.
func TestMeasureKnown(t *testing.T) {
	r := rule(t, exact())
	for _, c := range []struct {
		p, q            string
		length, bearing float64
		along, back     float64 // −1 none
	}{
		{"r1", "r3", 5, 90 - math.Atan2(3, 4)*180/math.Pi, 7, 7},
		{"r1", "r2", 3, 0, 3, 11},
		{"r2", "r1", 3, 180, 11, 3},
		{"rim@1", "rim@5 m", math.Hypot(2, 2), 45, 4, 10},
		{"rim@0", "rim@7000 mm", 5, 90 - math.Atan2(3, 4)*180/math.Pi, 7, 7},
		{"rim@B", "r3", 3, 0, 11, 3},
		{"A", "rim@1", math.Hypot(1, 3), math.Atan2(1, 3) * 180 / math.Pi, -1, -1},
		{"A", "rim", math.Hypot(1, 2), math.Atan2(1, 2) * 180 / math.Pi, -1, -1},
	} {
		m := across(t, r, c.p, c.q)
		name := c.p + " to " + c.q
		near(t, name+": length", m.Length, c.length, 1e-6)
		near(t, name+": bearing", math.Remainder(*m.Bearing-c.bearing, 360), 0, 1e-4)
		if c.along < 0 {
			if len(m.Along) != 0 {
				t.Errorf("%s: along %v", name, m.Along)
			}
			continue
		}
		near(t, name+": along", m.Along[0].Length, c.along, 1e-6)
		near(t, name+": the other way", *m.Along[0].Opposite, c.back, 1e-6)
	}
	m := across(t, r, "rim@A", "r1") // the corner nearest to A
	near(t, "corner to its mark", m.Length, 0, 1e-6)
	if m.Bearing != nil {
		t.Errorf("bearing %g of nothing", *m.Bearing)
	}
	more := ""
	for _, p := range []string{"A", "B", "r3"} {
		more += fmt.Sprintf("- {tie: %s M, is: %.6f, tool: tape}\n", p, math.Hypot(yard[p].X-1, yard[p].Y-2.005))
	}
	m = across(t, rule(t, strings.Replace(exact(), rim, more+rim, 1)), "M", "r1")
	if m.Bearing != nil || !(m.LengthSD > 0.004) {
		t.Errorf("5 mm apart: %+v", m)
	}
}

// The shortest way says on which side a mark lies and whether it is square.
func TestMeasureAcross(t *testing.T) {
	open := strings.Replace(rim, "closed: true, ", "", 1)
	for _, c := range []struct {
		lines, mark, side string
		square            bool
	}{{rim, "A", "outside", false}, {rim, "M", "inside", true}, {open, "M", "right", true}, {rim, "r2", "on", true}} {
		more := ""
		for _, p := range []string{"A", "B", "r1"} {
			more += fmt.Sprintf("- {tie: %s M, is: %.6f, tool: tape}\n", p, math.Hypot(yard[p].X-2, yard[p].Y-3))
		}
		book := strings.Replace(exact(), rim, more+c.lines, 1)
		m := across(t, rule(t, book), "rim", c.mark) // the line first: it is turned about
		if m.From != c.mark || m.Across == nil || m.Across.Side != c.side || m.Across.Square != c.square {
			t.Errorf("%s: %+v, %+v", c.mark, m, m.Across)
		}
	}
}

// noisy is the yard with normal errors of 4 mm in every tape.
func noisy(r *rand.Rand) string {
	off := func() float64 { return 0.004 * r.NormFloat64() }
	out := tie("A", "B", off()) + tie("r1", "r3", off()) + tie("r2", "r4", off()) + tie("r1", "r2", off())
	for _, m := range []string{"r1", "r2", "r3", "r4"} {
		out += tie("A", m, off()) + tie("B", m, off())
	}
	return small("", out, rim)
}

// Of 1,000 books the 95 % interval of each figure holds the truth in 93 to 97 %.
func TestMeasureHoldsTheTruth(t *testing.T) {
	const draws, seed = 1000, 20260514
	r := rand.New(rand.NewPCG(seed, 4))
	truth := rule(t, exact())
	pairs := [][2]string{{"r1", "r3"}, {"A", "rim@5"}, {"rim@B", "rim@9.5"}, {"B", "rim"}}
	in := map[string]int{}
	count := func(name string, got, want, sd float64) {
		if math.Abs(got-want) <= 1.959964*sd {
			in[name]++
		} else {
			in[name] += 0
		}
	}
	for range draws {
		noisy := rule(t, noisy(r))
		for _, p := range pairs {
			got, want := across(t, noisy, p[0], p[1]), across(t, truth, p[0], p[1])
			name := p[0] + " to " + p[1]
			count(name+": length", got.Length, want.Length, got.LengthSD)
			count(name+": bearing", math.Remainder(*got.Bearing-*want.Bearing, 360), 0, *got.BearingSD)
			for i := range got.Along {
				count(name+": along", got.Along[i].Length, want.Along[i].Length, got.Along[i].LengthSD)
				count(name+": the other way", *got.Along[i].Opposite, *want.Along[i].Opposite, *got.Along[i].OppositeSD)
			}
		}
	}
	for name, n := range in { // order-free: each figure is judged alone
		if n < draws*93/100 || n > draws*97/100 {
			t.Errorf("%s: %d of %d within 95 %% (seed %d)", name, n, draws, seed)
		}
	}
}

// hidden is the largest move that a detectable error in one tape makes: found again by lengthening
// each tape in turn and solving anew.
func TestMeasureHiddenAgain(t *testing.T) {
	src := exact()
	book := run(t, src)
	base := rule(t, src)
	pairs := [][2]string{{"r1", "r3"}, {"A", "rim@5"}, {"B", "rim"}}
	lines := strings.Split(src, "\n")
	worst, n := make([]float64, len(pairs)), 0
	for i, l := range lines {
		if !strings.HasPrefix(l, "- {tie: ") {
			continue
		}
		const by = 0.0005
		x := book.Readings[n]
		n++
		other := append([]string(nil), lines...)
		other[i] = fmt.Sprintf("- {tie: %s %s, is: %.6f, tool: tape}", x.Marks[0], x.Marks[1], x.Value+by)
		moved := rule(t, strings.Join(other, "\n"))
		for k, p := range pairs {
			d := across(t, moved, p[0], p[1]).Length - across(t, base, p[0], p[1]).Length
			worst[k] = math.Max(worst[k], math.Abs(d)/by**x.Detectable)
		}
	}
	for k, p := range pairs {
		m := across(t, base, p[0], p[1])
		if !m.Controlled || m.Hidden == nil {
			t.Fatalf("%v: not controlled", p)
		}
		near(t, fmt.Sprint(p, ": hidden"), *m.Hidden, worst[k], 0.01*worst[k])
	}
	two := rule(t, small("", ties(), rim)) // two ties to each mark, and no more
	if m := across(t, two, "r1", "r3"); m.Controlled || m.Hidden != nil {
		t.Errorf("controlled by nothing: %+v", m)
	}
}

// Rise, slope and sloping length from heights set by hand.
func TestMeasureRise(t *testing.T) {
	r := rule(t, exact())
	if m := across(t, r, "r1", "r4"); m.Rise != nil {
		t.Fatalf("a rise without heights: %+v", m.Rise)
	}
	height := func(mark string, z, sd float64) { r.Marks[mark].Z, r.Marks[mark].SZ = &z, &sd }
	height("r1", 0.2, 0.003)
	height("r4", 0.3, 0.004)
	m := across(t, r, "r1", "r4") // 4 m apart
	near(t, "rise", m.Rise.Rise, 0.1, 1e-12)
	near(t, "its sd", m.Rise.RiseSD, 0.005, 1e-12)
	near(t, "slope", *m.Rise.Slope, 0.025, 1e-6)
	near(t, "n of 1:n", *m.Rise.OneIn, 40, 1e-3)
	near(t, "sloping length", m.Rise.Sloping, math.Sqrt(16.01), 1e-6)
	again := func(f func(level, rise float64) float64) float64 { // by central differences
		const h = 1e-5
		l := (f(4+h, 0.1) - f(4-h, 0.1)) / (2 * h) * m.LengthSD
		z := (f(4, 0.1+h) - f(4, 0.1-h)) / (2 * h) * 0.005
		return math.Hypot(l, z)
	}
	near(t, "sd of the slope", *m.Rise.SlopeSD, again(func(l, h float64) float64 { return h / l }), 1e-8)
	near(t, "sd of n", *m.Rise.OneInSD, again(func(l, h float64) float64 { return l / h }), 1e-4)
	near(t, "sd of the sloping length", m.Rise.SlopingSD, again(math.Hypot), 1e-8)
	height("r4", 0.201, 0.004)
	if m := across(t, r, "r4", "r1"); m.Rise.OneIn != nil || *m.Rise.Slope >= 0 {
		t.Errorf("a slope that is none: %+v", m.Rise)
	}
}

// A bearing is told in the frame of the places wanted.
func TestMeasureBearingInItsFrame(t *testing.T) {
	text := strings.Replace(exact(), "readings:", "marks: {r1: {at: [10, 10]}, r3: {at: [10, 15]}}\nreadings:", 1)
	m := across(t, rule(t, text), "r1", "r3")
	near(t, "bearing of what holds it", *m.Bearing, 0, 1e-6)
	near(t, "its sd", *m.BearingSD, 0, 1e-6)
	if m := across(t, rule(t, text), "A", "B"); !(*m.BearingSD > 0.01) {
		t.Errorf("the bearing of the base has an sd of %g°", *m.BearingSD)
	}
	m = across(t, rule(t, exact()), "A", "B")
	near(t, "bearing of the base", *m.Bearing, 90, 1e-6)
	near(t, "its sd", *m.BearingSD, 0, 1e-6)
}
