package unit_test

import (
	"errors"
	"math"
	"testing"

	"brimline/unit"
)

// lengths is the table of spellings: what is typed, in which job, and the exact metres. The
// spellings are those of docs/conventions.md; the trade's list of entries is common practice,
// no source.
var lengths = []struct {
	text string
	bare unit.Unit
	want float64
}{
	{"5.214 m", unit.M, 5.214}, {"521.4 cm", unit.M, 5.214}, {"5214 mm", unit.FT, 5.214},
	{"17.1 ft", unit.M, 5.21208}, {"205.25 in", unit.M, 5.21335},
	{`17' 1 1/4"`, unit.M, 5.21335}, {`17'-1.25"`, unit.M, 5.21335}, {"17 ft 1 1/4 in", unit.FT, 5.21335},
	{"12'6 1/2", unit.M, 3.8227}, {"12-6-1/2", unit.FT, 3.8227}, {"12 6.5", unit.FT, 3.8227},
	{"17'", unit.M, 5.1816}, {`1 1/4"`, unit.M, 0.03175}, {`1 1/4"`, unit.FT, 0.03175},
	{"12′ 6½″", unit.M, 3.8227}, {"12’ 6 1⁄2”", unit.M, 3.8227}, {"12' 6 1/2''", unit.M, 3.8227},
	{`150.5"`, unit.FT, 3.8227}, {"3.823", unit.M, 3.823}, {"3823", unit.MM, 3.823}, {"382.3cm", unit.M, 3.823},
	{"12 6", unit.FT, 3.81}, {"12-6", unit.FT, 3.81}, {`12-6 1/2"`, unit.FT, 3.8227}, {`12 6 1/2"`, unit.FT, 3.8227},
	{`12' 0 1/2"`, unit.FT, 3.6703}, {`12' 1/2"`, unit.FT, 3.6703}, {`12'-6-1/2"`, unit.M, 3.8227},
	{"17", unit.FT, 5.1816}, {"17", unit.IN, 0.4318}, {"6 1/2", unit.IN, 0.1651}, {"1/2", unit.IN, 0.0127},
	{"9.150", unit.M, 9.15}, {"9.150", unit.CM, 0.0915}, {".5", unit.M, 0.5}, {"5.", unit.M, 5},
	{"-3.2", unit.M, -3.2}, {"−3.2 m", unit.M, -3.2}, {"+3.2", unit.M, 3.2}, {`-1' 6"`, unit.M, -0.4572},
	{"  5.214\u00a0m ", unit.M, 5.214}, {"5.214m", unit.M, 5.214}, {"5 METRES", unit.FT, 5},
	{"5e-7", unit.M, 5e-7}, {"1.5e2", unit.MM, 0.15}, {"0", unit.FT, 0}, {"-0", unit.M, 0},
	{"17.5'", unit.FT, 5.334}, {`0.5"`, unit.FT, 0.0127}, {`11 127/128"`, unit.FT, 11.9921875 * 0.0254},
	{"00012.50", unit.M, 12.5}, {"12 feet", unit.M, 3.6576},
}

func TestParseLength(t *testing.T) {
	for _, c := range lengths {
		got, err := unit.ParseLength(c.text, c.bare)
		if err != nil || got != c.want || math.Signbit(got) != math.Signbit(c.want) {
			t.Errorf("ParseLength(%q, %s) = %v, %v; want exactly %v", c.text, c.bare, got, err, c.want)
		}
	}
}

// refused is the table of texts that are no length, with the answer.
var refused = []struct {
	text     string
	bare     unit.Unit
	code     string
	expected string // "" not compared
}{
	{"", unit.M, unit.Empty, ""}, {"   ", unit.M, unit.Empty, ""},
	{"5,214", unit.M, unit.DecimalComma, "5.214"}, {"5,214 m", unit.M, unit.DecimalComma, "5.214 m"},
	{"1,234.5", unit.MM, unit.DecimalComma, "1234.5"}, {"1,234,567", unit.MM, unit.DecimalComma, "1234567"},
	{`5' 13"`, unit.M, unit.InchesOver, `6' 1"`}, {`5' 12"`, unit.M, unit.InchesOver, `6' 0"`},
	{"12-14-1/2", unit.FT, unit.InchesOver, `13' 2 1/2"`}, {"12 12.25", unit.FT, unit.InchesOver, `13' 1/4"`},
	{`5' 30"`, unit.M, unit.InchesOver, `7' 6"`},
	{`1 1/3"`, unit.M, unit.Fraction, "the inches in decimals (0.333) or sixteenths (5/16)"},
	{`17' 5/4"`, unit.M, unit.Fraction, "the fraction as 1 1/4"}, {`17' 1 4/4"`, unit.M, unit.Fraction, "the fraction as 1"},
	{`1/10"`, unit.M, unit.Fraction, ""}, {`1/256"`, unit.M, unit.Fraction, ""}, {`3/1"`, unit.M, unit.Fraction, ""},
	{"12.6", unit.FT, unit.Ambiguous, `12.6 ft or 12' 6"`}, {"5.10", unit.FT, unit.Ambiguous, `5.10 ft or 5' 10"`},
	{"12.60", unit.FT, unit.Ambiguous, "12.60 ft"}, {"12.06", unit.FT, unit.Ambiguous, `12.06 ft or 12' 6"`},
	{"12 1/2", unit.FT, unit.Ambiguous, ""}, {"1/2", unit.FT, unit.Ambiguous, ""}, {"12-1/2", unit.FT, unit.Ambiguous, ""},
	{`17.5' 3"`, unit.M, unit.Ambiguous, ""},
	{"nan", unit.M, unit.NotFinite, ""}, {".nan", unit.M, unit.NotFinite, ""}, {"-.inf", unit.M, unit.NotFinite, ""},
	{"Infinity", unit.M, unit.NotFinite, ""}, {"1e400", unit.M, unit.Unreadable, ""}, {"1e16", unit.M, unit.Unreadable, ""},
	{"9e15", unit.M, unit.TooLarge, ""}, {"100000001", unit.M, unit.TooLarge, ""},
	{"0x1F", unit.M, unit.Unreadable, ""}, {"1_000", unit.M, unit.Unreadable, ""}, {"12-6-1/2", unit.M, unit.Unreadable, ""},
	{"12 6.5", unit.M, unit.Unreadable, ""}, {"6 1/2", unit.M, unit.Unreadable, ""}, {"5.214 km", unit.M, unit.Unreadable, ""},
	{"5 m 20", unit.M, unit.Unreadable, ""}, {"abc", unit.M, unit.Unreadable, ""}, {"5.2.1", unit.M, unit.Unreadable, ""},
	{"--5", unit.M, unit.Unreadable, ""}, {"-", unit.M, unit.Unreadable, ""}, {"'", unit.M, unit.Unreadable, ""},
	{`1/0"`, unit.M, unit.Unreadable, ""}, {`12' 6"'`, unit.M, unit.Unreadable, ""}, {"5 ' ' 3", unit.M, unit.Unreadable, ""},
	{"5\xff", unit.M, unit.Unreadable, ""}, {"5\x00", unit.M, unit.Unreadable, ""}, {"5", unit.Unit("furlong"), unit.Unreadable, ""},
	{"12 -6", unit.M, unit.Unreadable, ""}, {"12- -6", unit.FT, unit.Unreadable, ""}, {"5,", unit.M, unit.Unreadable, ""},
	{"1111111111111111111111111111111111111111111111111111111111111111111", unit.M, unit.Unreadable, ""},
}

func TestParseLengthRefused(t *testing.T) {
	for _, c := range refused {
		got, err := unit.ParseLength(c.text, c.bare)
		var e *unit.Error
		if !errors.As(err, &e) {
			t.Errorf("ParseLength(%q, %s) = %v, %v; want %s", c.text, c.bare, got, err, c.code)
			continue
		}
		if e.Code != c.code || c.expected != "" && e.Expected != c.expected || e.Error() == "" {
			t.Errorf("ParseLength(%q, %s): %s, expected %q; want %s, %q", c.text, c.bare, e.Code, e.Expected, c.code, c.expected)
		}
	}
}

// What an answer tells people to write must itself be read.
func TestAdviceIsRead(t *testing.T) {
	for _, c := range refused {
		_, err := unit.ParseLength(c.text, c.bare)
		var e *unit.Error
		if !errors.As(err, &e) || e.Code != unit.DecimalComma && e.Code != unit.InchesOver {
			continue
		}
		if _, err := unit.ParseLength(e.Expected, c.bare); err != nil {
			t.Errorf("%q: the advice %q is refused: %v", c.text, e.Expected, err)
		}
	}
}

func FuzzLength(f *testing.F) {
	for _, c := range lengths {
		f.Add(c.text, string(c.bare))
	}
	for _, c := range refused {
		f.Add(c.text, string(c.bare))
	}
	f.Fuzz(func(t *testing.T, text, bare string) {
		v, err := unit.ParseLength(text, unit.Unit(bare))
		if err != nil {
			if v != 0 {
				t.Fatalf("%q: a value beside an error", text)
			}
			return
		}
		if math.IsNaN(v) || math.Abs(v) > 1e8 {
			t.Fatalf("%q gives %v", text, v)
		}
		for _, s := range styles {
			printed := s.LengthUnit(v)
			back, err := unit.ParseLength(printed, unit.M)
			if err != nil || math.Abs(back-v) > s.Step()/2+1e-8 {
				t.Fatalf("%q = %v printed %q read %v, %v", text, v, printed, back, err)
			}
		}
	})
}
