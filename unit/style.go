package unit

import (
	"math"
	"strconv"
	"strings"
)

// Form is the way a length is printed.
type Form int

// The forms.
const (
	Metres      Form = iota // 5.214
	Millimetres             // 5214
	Centimetres             // 521.4
	FeetInches              // 17′ 1 1/4″
	DecimalFeet             // 17.11
)

// Style prints lengths. Its zero value prints metres with three decimals. Denominator is the
// finest fraction of an inch of FeetInches: a power of two to 128, 16 where it is none.
type Style struct {
	Form        Form
	Denominator int
}

// nothing is printed for a figure that is no number.
const nothing = "–"

// StyleFor is the style of a job: metres, millimetres and centimetres as they are; feet and
// inches to 1/16 in for FT and IN.
func StyleFor(u Unit) Style {
	switch u {
	case MM:
		return Style{Form: Millimetres}
	case CM:
		return Style{Form: Centimetres}
	case FT, IN:
		return Style{Form: FeetInches, Denominator: 16}
	}
	return Style{}
}

// Step is the smallest difference printed, in metres.
func (s Style) Step() float64 {
	switch s.Form {
	case FeetInches:
		return 0.0254 / float64(s.denominator())
	case DecimalFeet:
		return 0.003048
	}
	return 0.001
}

// UnitName is the unit in words, for "all dimensions in metres".
func (s Style) UnitName() string {
	switch s.Form {
	case Millimetres:
		return "millimetres"
	case Centimetres:
		return "centimetres"
	case FeetInches:
		return "feet and inches"
	case DecimalFeet:
		return "feet and decimals"
	}
	return "metres"
}

// Length prints metres as a bare figure of the style, rounded to its step, halves away from
// zero. A minus is U+2212; NaN, infinities and lengths beyond 100000 km print as a dash.
func (s Style) Length(m float64) string {
	n, ok := s.count(m)
	if !ok {
		return nothing
	}
	return s.text(n)
}

// LengthUnit prints like Length, with the unit where the figure does not carry it already.
func (s Style) LengthUnit(m float64) string {
	t := s.Length(m)
	if t == nothing {
		return t
	}
	switch s.Form {
	case Metres:
		return t + " m"
	case Millimetres:
		return t + " mm"
	case Centimetres:
		return t + " cm"
	case DecimalFeet:
		return t + " ft"
	}
	return t
}

// Size prints a length by a width: 8.020 × 4.010.
func (s Style) Size(a, b float64) string { return s.Length(a) + " × " + s.Length(b) }

// count is the length in whole steps.
func (s Style) count(m float64) (int64, bool) {
	if math.IsNaN(m) || math.Abs(m) > farthest {
		return 0, false
	}
	return int64(math.Round(m / s.Step())), true
}

// text prints a number of steps.
func (s Style) text(n int64) string {
	sign := ""
	if n < 0 {
		sign, n = "−", -n
	}
	switch s.Form {
	case Millimetres:
		return sign + strconv.FormatInt(n, 10)
	case Centimetres:
		return sign + point(n, 1)
	case DecimalFeet:
		return sign + point(n, 2)
	case FeetInches:
		return sign + feetInches(n, int64(s.denominator()))
	}
	return sign + point(n, 3)
}

func (s Style) denominator() int {
	if d := s.Denominator; d == 1 || ruled(int64(d)) {
		return d
	}
	return 16
}

// point writes a whole number with its last places behind a decimal point.
func point(n int64, places int) string {
	t := strconv.FormatInt(n, 10)
	if len(t) <= places {
		t = strings.Repeat("0", places+1-len(t)) + t
	}
	return t[:len(t)-places] + "." + t[len(t)-places:]
}

// feetInches writes n parts of 1/den inch with the fraction in lowest terms.
func feetInches(n, den int64) string {
	feet, rest := n/(12*den), n%(12*den)
	inches, part := rest/den, rest%den
	for part > 0 && part%2 == 0 {
		part, den = part/2, den/2
	}
	out := ""
	if feet > 0 {
		out = strconv.FormatInt(feet, 10) + "′ "
	}
	switch {
	case part == 0:
		return out + strconv.FormatInt(inches, 10) + "″"
	case inches == 0 && feet == 0:
		return strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(den, 10) + "″"
	}
	return out + strconv.FormatInt(inches, 10) + " " + strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(den, 10) + "″"
}

// Angle prints radians as degrees with one decimal: 42.3°.
func Angle(rad float64) string {
	if math.IsNaN(rad) || math.Abs(rad) > 2*math.Pi*mostDegrees {
		return nothing
	}
	n := int64(math.Round(rad * 1800 / math.Pi))
	if n < 0 {
		return "−" + point(-n, 1) + "°"
	}
	return point(n, 1) + "°"
}

// Bearing prints radians clockwise from +y as degrees from 0.0° to below 360.0°.
func Bearing(rad float64) string {
	if math.IsNaN(rad) || math.Abs(rad) > 2*math.Pi*mostDegrees {
		return nothing
	}
	n := int64(math.Round(rad*1800/math.Pi)) % 3600
	if n < 0 {
		n += 3600
	}
	return point(n, 1) + "°"
}
