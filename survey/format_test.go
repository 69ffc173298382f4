package survey_test

import (
	"encoding/json"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"
)

// all kinds of reading: tapes, an offset, an instrument point in a set-up with a scale of its own.
func everyKind() string {
	seen := "- {seen: r1, setup: T1, at: [1.001, 2.002]}\n- {seen: r2, setup: T1, at: [0.999, 5.001]}\n- {seen: r3, setup: T1, at: [5.002, 4.998]}\n"
	return small("", ties()+diagonals()+"- {offset: r1, line: A B, at: 1.004, left: 1.997}\n"+seen+"- {strike: 10, why: wrong corner}\n", "setups: {T1: {scale: solve}}\n"+rim)
}

// Keys of the result as the format, section 2, writes them: each object of the printed JSON must
// have them, and these may be null where there is nothing to say.
func TestKeysOfTheFormat(t *testing.T) {
	var top map[string]any
	if err := json.Unmarshal([]byte(bytesOf(t, run(t, everyKind()))), &top); err != nil {
		t.Fatal(err)
	}
	object := func(v any) map[string]any { return v.(map[string]any) }
	first := func(v any) map[string]any { return object(v.([]any)[0]) }
	line := object(object(top["lines"])["rim"])
	offset := object(top["readings"].([]any)[11])
	for _, c := range []struct {
		what, keys, null string
		got              map[string]any
	}{
		{"result", "book statistics marks readings walks lines setups tools levels water next orders shape mistakes findings", "levels water", top},
		{"book", "name sha256", "", object(top["book"])},
		{"statistics", "readings unknowns redundancy reference_sd scaled chi_square iterations", "", object(top["statistics"])},
		{"chi-square", "value low high pass", "", object(object(top["statistics"])["chi_square"])},
		{"mark", "x y z sx sy sz ellipse95 controlled hidden alternatives", "z sz", object(object(top["marks"])["r1"])},
		{"ellipse", "major minor bearing", "", object(object(object(top["marks"])["r1"])["ellipse95"])},
		{"tie", "n id kind marks tool value adjusted residual sd w redundancy detectable state group likely parts", "group", first(top["readings"])},
		{"offset", "n id kind marks tool value adjusted residual sd w redundancy detectable state group likely parts", "group", offset},
		{"part", "part value adjusted residual sd w redundancy detectable", "", first(offset["parts"])},
		{"line", "closed length length_sd area area_sd inferred family gaps runs", "", line},
		{"run", "kind from to length bearing", "", first(line["runs"])},
		{"setup", "x y z turn scale scale_sd", "z", object(object(top["setups"])["T1"])},
		{"tool", "zero scale sd", "sd", object(object(top["tools"])["tape"])},
		{"shape", "state tolerance worst at why tests share unseen", "", object(top["shape"])},
		{"finding", "code severity text marks readings figures cure", "", first(top["findings"])},
	} {
		for _, k := range strings.Fields(c.keys) {
			v, ok := c.got[k]
			if null := slices.Contains(strings.Fields(c.null), k); !ok || (v == nil) != null {
				t.Errorf("%s: key %s is %v (there: %v), null wanted: %v; has %v", c.what, k, v, ok, null, slices.Sorted(maps.Keys(c.got)))
			}
		}
	}
	for _, k := range []string{"walks", "next", "orders", "mistakes"} {
		if l, ok := top[k].([]any); !ok || len(l) != 0 {
			t.Errorf("%s is %v, want an empty list", k, top[k])
		}
	}
	if s := object(top["book"])["sha256"].(string); len(s) != 64 || object(top["book"])["name"] != "Small Yard" {
		t.Errorf("book %v", top["book"])
	}
}

// Where there is nothing to say the key is there and null.
func TestNullsOfTheFormat(t *testing.T) {
	var top map[string]any
	if err := json.Unmarshal([]byte(bytesOf(t, run(t, small("", tie("A", "B", 0)+tie("A", "r1", 0), rim)))), &top); err != nil {
		t.Fatal(err)
	}
	object := func(v any) map[string]any { return v.(map[string]any) }
	for _, c := range []struct {
		what, null string
		got        map[string]any
	}{
		{"mark", "x y z sx sy sz ellipse95 hidden", object(object(top["marks"])["r1"])},
		{"statistics", "reference_sd", object(top["statistics"])},
		{"chi-square", "low high", object(object(top["statistics"])["chi_square"])},
		{"reading", "adjusted residual w detectable group", object(top["readings"].([]any)[1])},
		{"line", "length length_sd area area_sd", object(object(top["lines"])["rim"])},
		{"shape", "worst", object(top["shape"])},
	} {
		for _, k := range strings.Fields(c.null) {
			if v, ok := c.got[k]; !ok || v != nil {
				t.Errorf("%s: key %s is %v (there: %v), want null", c.what, k, v, ok)
			}
		}
	}
}

// What the format says of the figures of a reading.
func TestFiguresOfReadings(t *testing.T) {
	r := run(t, everyKind())
	sum := 0.0
	check := func(what string, value, sd float64, adjusted, residual, w, red, detectable *float64) {
		if adjusted == nil || residual == nil || w == nil || red == nil || detectable == nil {
			t.Fatalf("%s lacks a figure", what)
		}
		near(t, what+": residual", *residual, *adjusted-value, 1e-12)
		near(t, what+": w", *w, *residual/(sd*math.Sqrt(*red)), 1e-9)
		near(t, what+": detectable", *detectable, 4.13*sd/math.Sqrt(*red), 1e-12)
		if *red < 0 || *red > 1 {
			t.Errorf("%s: redundancy %g", what, *red)
		}
	}
	for _, x := range r.Readings {
		if x.State != "struck" {
			sum += *x.Redundancy
		}
		if len(x.Parts) == 0 {
			if x.Kind != "tie" {
				t.Errorf("reading %s, a %s, has no parts", x.N, x.Kind)
			}
			check("reading "+x.N, x.Value, x.SD, x.Adjusted, x.Residual, x.W, x.Redundancy, x.Detectable)
			continue
		}
		var names string
		red, worst, largest := 0.0, 0, 0.0
		for k, p := range x.Parts {
			check("reading "+x.N+" "+p.Part, p.Value, p.SD, p.Adjusted, p.Residual, p.W, p.Redundancy, p.Detectable)
			names += p.Part + " "
			red += *p.Redundancy
			largest = math.Max(largest, *p.Detectable)
			if math.Abs(*p.W) > math.Abs(*x.Parts[worst].W) {
				worst = k
			}
		}
		if want := map[string]string{"offset": "at left ", "seen": "x y "}[x.Kind]; names != want {
			t.Errorf("reading %s has parts %q, want %q", x.N, names, want)
		}
		p := x.Parts[worst]
		if x.Value != p.Value || *x.W != *p.W || *x.Residual != *p.Residual || x.SD != p.SD || x.Text != p.Text {
			t.Errorf("reading %s shows %g, not its part %s", x.N, x.Value, p.Part)
		}
		near(t, "reading "+x.N+": redundancy", *x.Redundancy, red, 1e-12)
		near(t, "reading "+x.N+": detectable", *x.Detectable, largest, 0)
	}
	near(t, "sum of redundancies", sum, float64(r.Statistics.Redundancy), 1e-6)
	// Nine ties, one diagonal (the other is struck), an offset and three points of two values;
	// six marks and a set-up of four, less shift and turn.
	if s := r.Statistics; s.Readings != 18 || s.Unknowns != 13 || s.Redundancy != 5 {
		t.Errorf("%d readings, %d unknowns, redundancy %d; want 18, 13, 5", s.Readings, s.Unknowns, s.Redundancy)
	}
	near(t, "reference sd", *r.Statistics.ReferenceSD, math.Sqrt(r.Statistics.ChiSquare.Value/5), 1e-12)
	// 2.5 and 97.5 % points of chi-square with 5 degrees of freedom: NIST/SEMATECH e-Handbook of
	// Statistical Methods, 1.3.6.7.4.
	near(t, "lower limit", *r.Statistics.ChiSquare.Low, 0.831, 0.0005)
	near(t, "upper limit", *r.Statistics.ChiSquare.High, 12.833, 0.0005)
}

// Places are relative to the datum: A has none, B none across.
func TestTrustOfMarks(t *testing.T) {
	r := run(t, everyKind())
	for name, m := range r.Marks { // order-free: each mark is judged alone
		if !m.Controlled || m.Hidden == nil {
			t.Errorf("%s is not controlled", name)
		}
		if name == "A" {
			continue
		}
		if e := m.Ellipse95; e.Bearing < 0 || e.Bearing >= 180 || e.Major < e.Minor || e.Minor < 0 {
			t.Errorf("%s: ellipse %+v", name, *e)
		}
		// The axes hold the variances: a² + b² = k²·(sx² + sy²).
		e, k := m.Ellipse95, -2*math.Log(0.05)
		near(t, name+": trace", e.Major*e.Major+e.Minor*e.Minor, k*(*m.SX**m.SX+*m.SY**m.SY), 1e-11)
		s, c := math.Sincos(e.Bearing * math.Pi / 180)
		near(t, name+": sx of the ellipse", k**m.SX**m.SX, math.Pow(e.Major*s, 2)+math.Pow(e.Minor*c, 2), 1e-11)
	}
	a, b := r.Marks["A"], r.Marks["B"]
	if *a.X != 0 || *a.Y != 0 || *a.SX != 0 || *a.SY != 0 || a.Ellipse95 != nil {
		t.Errorf("A stands at %g, %g ± %g, %g", *a.X, *a.Y, *a.SX, *a.SY)
	}
	if *b.Y != 0 || *b.SY != 0 || !(*b.SX > 0) || b.Ellipse95.Minor > 1e-6 {
		t.Errorf("B stands at %g, %g ± %g, %g", *b.X, *b.Y, *b.SX, *b.SY)
	}
	near(t, "bearing of B's ellipse", b.Ellipse95.Bearing, 90, 0.01)
	for name, p := range yard { // order-free: each mark is compared alone
		near(t, name, place(t, r, name).Dist(p), 0, 0.006)
	}
	l := r.Lines["rim"]
	near(t, "length", *l.Length, 14, 0.02)
	near(t, "area", *l.Area, 12, 0.03)
	for i, want := range []float64{0, 90, 180, 270} {
		near(t, "bearing", math.Remainder(*l.Runs[i].Bearing-want, 360), 0, 0.15)
		near(t, "turn", *l.Runs[i].Turn, -90, 0.2)
	}
	near(t, "scale", r.Setups["T1"].Scale, 1, 0.003)
	if sd := r.Setups["T1"].ScaleSD; sd == nil || *sd <= 0 || *sd > 0.003 {
		t.Errorf("sd of the scale %v", sd)
	}
}
