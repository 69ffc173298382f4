package unit_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/unit"
)

// styles is every form, and every denominator of an inch.
var styles = []unit.Style{
	{}, {Form: unit.Millimetres}, {Form: unit.Centimetres}, {Form: unit.DecimalFeet},
	{Form: unit.FeetInches}, {Form: unit.FeetInches, Denominator: 1}, {Form: unit.FeetInches, Denominator: 2},
	{Form: unit.FeetInches, Denominator: 8}, {Form: unit.FeetInches, Denominator: 64},
}

func TestLength(t *testing.T) {
	for _, c := range []struct {
		style      unit.Style
		m          float64
		bare, full string
	}{
		{unit.StyleFor(unit.M), 5.2144, "5.214", "5.214 m"}, {unit.StyleFor(unit.MM), 5.2144, "5214", "5214 mm"},
		{unit.StyleFor(unit.CM), 5.2144, "521.4", "521.4 cm"}, {unit.StyleFor(unit.FT), 5.21335, "17′ 1 1/4″", "17′ 1 1/4″"},
		{unit.StyleFor(unit.FT), 3.8227, "12′ 6 1/2″", "12′ 6 1/2″"}, {unit.Style{Form: unit.DecimalFeet}, 5.21208, "17.10", "17.10 ft"},
		{unit.StyleFor(unit.IN), 0.03175, "1 1/4″", "1 1/4″"}, {unit.StyleFor(unit.FT), 3.6576, "12′ 0″", "12′ 0″"},
		{unit.StyleFor(unit.FT), 3.6703, "12′ 0 1/2″", "12′ 0 1/2″"}, {unit.StyleFor(unit.FT), 0.0127, "1/2″", "1/2″"},
		{unit.StyleFor(unit.FT), 3.65759, "12′ 0″", "12′ 0″"}, {unit.StyleFor(unit.FT), 0, "0″", "0″"},
		{unit.Style{}, -0.0004, "0.000", "0.000 m"}, {unit.Style{}, -1.5, "−1.500", "−1.500 m"}, {unit.Style{}, 0.0005, "0.001", "0.001 m"},
		{unit.Style{}, math.NaN(), "–", "–"}, {unit.Style{}, math.Inf(1), "–", "–"}, {unit.Style{}, 1e300, "–", "–"},
		{unit.Style{Form: unit.FeetInches, Denominator: 7}, 0.0254 / 16, "1/16″", "1/16″"},
	} {
		if got, full := c.style.Length(c.m), c.style.LengthUnit(c.m); got != c.bare || full != c.full {
			t.Errorf("%+v of %v: %q, %q; want %q, %q", c.style, c.m, got, full, c.bare, c.full)
		}
	}
	if got := (unit.Style{}).Size(8.02, 4.01); got != "8.020 × 4.010" {
		t.Errorf("Size: %q", got)
	}
}

// Reading what was printed gives the length again within half a step, in every style; printing
// that once more gives the same text.
func TestRoundTrip(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 4000 {
		m := (r.Float64() - 0.3) * math.Pow(10, 4*r.Float64()-2)
		for _, s := range styles {
			text := s.LengthUnit(m)
			back, err := unit.ParseLength(text, unit.FT)
			if err != nil || math.Abs(back-m) > s.Step()*0.5000001 {
				t.Fatalf("%v printed %q read %v, %v", m, text, back, err)
			}
			if again := s.LengthUnit(back); again != text {
				t.Fatalf("%v printed %q, then %q", m, text, again)
			}
		}
	}
}

func TestAngleAndBearing(t *testing.T) {
	for _, c := range []struct {
		deg            float64
		angle, bearing string
	}{{42.25, "42.3°", "42.3°"}, {-12.34, "−12.3°", "347.7°"}, {359.97, "360.0°", "0.0°"}, {0, "0.0°", "0.0°"}, {math.NaN(), "–", "–"}} {
		if got := unit.Angle(c.deg * math.Pi / 180); got != c.angle {
			t.Errorf("Angle(%v°) = %s; want %s", c.deg, got, c.angle)
		}
		if got := unit.Bearing(c.deg * math.Pi / 180); got != c.bearing {
			t.Errorf("Bearing(%v°) = %s; want %s", c.deg, got, c.bearing)
		}
	}
}

func TestChain(t *testing.T) {
	got, total := unit.Chain([]float64{1.0004, 1.0004, 1.0004}, unit.Style{})
	if strings.Join(got, " ") != "1.001 1.000 1.000" || total != "3.001" {
		t.Errorf("got %v, %s", got, total)
	}
	if got, total = unit.Chain([]float64{1, math.NaN()}, unit.Style{}); got[0] != "1.000" || got[1] != "–" || total != "–" {
		t.Errorf("with no number: %v, %s", got, total)
	}
	if got, total = unit.Chain(nil, unit.Style{}); len(got) != 0 || total != "0.000" {
		t.Errorf("empty: %v, %s", got, total)
	}
}

// The printed members add up to the printed total, the total is the rounded sum, and no member
// is a step away from its true size.
func TestChainAddsUp(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 2))
	read := func(text string, s unit.Style) float64 {
		v, err := unit.ParseLength(text, map[unit.Form]unit.Unit{unit.Metres: unit.M, unit.Millimetres: unit.MM, unit.Centimetres: unit.CM}[s.Form])
		if s.Form == unit.DecimalFeet {
			v, err = unit.ParseLength(text+" ft", unit.FT)
		}
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		return v
	}
	for range 500 {
		parts := make([]float64, 1+r.IntN(30))
		var sum float64
		for i := range parts {
			parts[i] = r.NormFloat64() * 3
			sum += parts[i]
		}
		for _, s := range styles {
			texts, total := unit.Chain(parts, s)
			var printed float64
			for i, x := range texts {
				v := read(x, s)
				printed += v
				if math.Abs(v-parts[i]) > s.Step()*1.00001 {
					t.Fatalf("%v printed %s", parts[i], x)
				}
			}
			if math.Abs(printed-read(total, s)) > 1e-9 || total != s.Length(sum) {
				t.Fatalf("%v: members %v add to %v, total %s, sum %s", s, texts, printed, total, s.Length(sum))
			}
		}
	}
}
