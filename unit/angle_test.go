package unit_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/unit"
)

var angles = []struct {
	text string
	want float64 // degrees
}{
	{"42.2519", 42.2519}, {"42.2519°", 42.2519}, {"42.2519 deg", 42.2519}, {"42°15'07\"", 42 + 15./60 + 7./3600},
	{"42° 15′ 07″", 42 + 15./60 + 7./3600}, {"-0°30'", -0.5}, {"−12.5", -12.5}, {"42°15.1'", 42 + 15.1/60},
	{"42°7\"", 42 + 7./3600}, {"0", 0}, {"360", 360}, {"42°15'07.5\"", 42 + 15./60 + 7.5/3600},
}

func TestParseAngle(t *testing.T) {
	for _, c := range angles {
		got, err := unit.ParseAngle(c.text)
		if want := c.want * math.Pi / 180; err != nil || math.Abs(got-want) > 1e-15*(1+math.Abs(want)) {
			t.Errorf("ParseAngle(%q) = %v, %v; want %v", c.text, got, err, want)
		}
	}
}

var notAngles = []struct{ text, code string }{
	{"", unit.Empty}, {"42,25", unit.DecimalComma}, {"42°60'", unit.MinutesOver}, {"42°15'60\"", unit.MinutesOver},
	{"42.5°15'", unit.Unreadable}, {"42°15.5'7\"", unit.Unreadable}, {"42 15 7", unit.Unreadable}, {"nan", unit.NotFinite},
	{"4000", unit.TooLarge}, {"north", unit.Unreadable}, {"42°15'07\"9", unit.Unreadable}, {"15'", unit.Unreadable},
	{"42°7\"15'", unit.Unreadable},
}

func TestParseAngleRefused(t *testing.T) {
	for _, c := range notAngles {
		_, err := unit.ParseAngle(c.text)
		var e *unit.Error
		if !errors.As(err, &e) || e.Code != c.code {
			t.Errorf("ParseAngle(%q): %v; want %s", c.text, err, c.code)
		}
	}
}

func TestParseSlope(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{{"1:60", 1. / 60}, {"2 %", 0.02}, {"2%", 0.02}, {"-2 %", -0.02}, {"1.5°", math.Tan(1.5 * math.Pi / 180)}, {"0", 0}, {"1 : 12.5", 0.08}, {"-1:60", -1. / 60}} {
		got, err := unit.ParseSlope(c.text)
		if err != nil || math.Abs(got-c.want) > 1e-16 {
			t.Errorf("ParseSlope(%q) = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
	for _, c := range []struct{ text, code string }{{"2", unit.Ambiguous}, {"1:0", unit.Unreadable}, {"90°", unit.TooLarge}, {"1:60:2", unit.Unreadable}, {"", unit.Empty}, {"2,5 %", unit.DecimalComma}, {"1:.0001", unit.TooLarge}} {
		_, err := unit.ParseSlope(c.text)
		var e *unit.Error
		if !errors.As(err, &e) || e.Code != c.code {
			t.Errorf("ParseSlope(%q): %v; want %s", c.text, err, c.code)
		}
	}
}

// What Degrees prints is read back to the same number, whatever it is, and shortly if it was
// typed so.
func TestDegreesReadBack(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		rad := (r.Float64() - 0.5) * math.Pow(10, 3*r.Float64()-2)
		if back, err := unit.ParseAngle(unit.Degrees(rad)); err != nil || back != rad {
			t.Fatalf("%v printed %s read %v, %v", rad, unit.Degrees(rad), back, err)
		}
	}
	for _, text := range []string{"42", "0.1", "359.9999", "-12.25", "0"} {
		rad, err := unit.ParseAngle(text)
		if got := unit.Degrees(rad); err != nil || got != text {
			t.Errorf("%s printed %s, %v", text, got, err)
		}
	}
}

func FuzzAngle(f *testing.F) {
	for _, c := range angles {
		f.Add(c.text)
	}
	for _, c := range notAngles {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if v, err := unit.ParseAngle(text); err == nil && !(math.Abs(v) <= 3601*math.Pi/180) {
			t.Fatalf("%q gives %v", text, v)
		}
		if v, err := unit.ParseSlope(text); err == nil && !(math.Abs(v) <= 1000) {
			t.Fatalf("slope %q gives %v", text, v)
		}
	})
}
