package draft

import (
	"math"
	"strconv"
	"strings"

	"brimline/sheet"
	"brimline/unit"
)

// cover is the number of standard deviations behind ±: 95 % of a normal distribution.
const cover = 1.96

// figures prints numbers in the units of the book.
type figures struct{ style unit.Style }

// none is printed where there is no figure.
const none = "–"

// feet says that the job is in feet and inches.
func (f figures) feet() bool {
	return f.style.Form == unit.FeetInches || f.style.Form == unit.DecimalFeet
}

// length prints a length with true fractions.
func (f figures) length(m float64) string { return sheet.Typeset(f.style.Length(m)) }

// ref prints a length that may be missing.
func (f figures) ref(m *float64) string {
	if m == nil {
		return none
	}
	return f.length(*m)
}

// rounded prints a length to no more than its doubt allows: with a doubt (two standard
// deviations) above 5 mm a figure in metres loses its third decimal.
func (f figures) rounded(m, doubt float64) string {
	if f.style.Form == unit.Metres && doubt > 0.005 {
		return minus(strconv.FormatFloat(m, 'f', 2, 64))
	}
	return f.length(m)
}

// small prints a small length as a bare figure of smallUnit.
func (f figures) small(m float64) string {
	if math.IsNaN(m) || math.IsInf(m, 0) {
		return none
	}
	if f.feet() {
		return minus(strconv.FormatFloat(m/0.0254, 'f', 2, 64))
	}
	return minus(strconv.FormatFloat(m*1000, 'f', 1, 64))
}

// whole prints a small length without decimals of a millimetre, with its unit.
func (f figures) whole(m float64) string {
	if math.IsNaN(m) || math.IsInf(m, 0) {
		return none
	}
	if f.feet() {
		return minus(strconv.FormatFloat(m/0.0254, 'f', 2, 64)) + " in"
	}
	return minus(strconv.FormatFloat(m*1000, 'f', 0, 64)) + " mm"
}

func (f figures) smallRef(m *float64) string {
	if m == nil {
		return none
	}
	return f.small(*m)
}

// smallUnit is the unit of small.
func (f figures) smallUnit() string {
	if f.feet() {
		return "in"
	}
	return "mm"
}

// lengthUnit is the unit of length, for the heads of tables.
func (f figures) lengthUnit() string {
	switch f.style.Form {
	case unit.Millimetres:
		return "mm"
	case unit.Centimetres:
		return "cm"
	case unit.FeetInches:
		return "ft in"
	case unit.DecimalFeet:
		return "ft"
	}
	return "m"
}

// withUnit prints a length with the unit where it does not carry one.
func (f figures) withUnit(m float64) string { return sheet.Typeset(f.style.LengthUnit(m)) }

// area prints square metres or square feet with the doubt of one standard deviation doubled.
func (f figures) area(m2 float64, sd *float64) string {
	const foot2 = 0.3048 * 0.3048
	name, per, places := " m²", 1.0, 2
	if f.feet() {
		name, per, places = " ft²", foot2, 1
	}
	t := strconv.FormatFloat(m2/per, 'f', places, 64)
	if sd != nil {
		t += " ± " + strconv.FormatFloat(cover**sd/per, 'f', places, 64)
	}
	return minus(t) + name
}

// plain prints a number with so many decimals.
func plain(x *float64, places int) string {
	if x == nil || math.IsNaN(*x) || math.IsInf(*x, 0) {
		return none
	}
	return minus(strconv.FormatFloat(*x, 'f', places, 64))
}

// minus writes a true minus and no minus zero.
func minus(t string) string {
	if !strings.HasPrefix(t, "-") {
		return t
	}
	if strings.Trim(t, "-0.") == "" {
		return t[1:]
	}
	return "−" + t[1:]
}

// names lists names in a sentence; past most the rest are counted.
func names(list []string, most int) string {
	n := len(list)
	switch {
	case n == 0:
		return "none"
	case n == 1:
		return list[0]
	case n > most:
		return strings.Join(list[:most], ", ") + " and " + strconv.Itoa(n-most) + " more"
	}
	return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
}

// count writes "1 reading", "2 readings".
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
