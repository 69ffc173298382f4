package answer

import (
	"math"
	"strconv"
	"strings"

	"brimline/unit"
)

// nothing stands where the result has no figure.
const nothing = "–"

// measure prints figures in the job's own units. Everything it takes is in metres.
type measure struct{ style unit.Style }

// Length prints metres in a sentence as the unit's jobs have it: for the sentences of findings.
func Length(u unit.Unit) func(metres float64) string {
	return measure{style: unit.StyleFor(u)}.smallUnit
}

func (m measure) feet() bool {
	return m.style.Form == unit.FeetInches || m.style.Form == unit.DecimalFeet
}

// place is a coordinate or a length in a column, without its unit.
func (m measure) place(v *float64) string {
	if v == nil {
		return nothing
	}
	return m.style.Length(*v)
}

// small is a difference: millimetres in a metric job, fractions of an inch in the others.
func (m measure) small(v float64) string {
	if m.feet() {
		return m.style.Length(v)
	}
	return unit.Style{Form: unit.Millimetres}.Length(v)
}

// smallUnit is small with its unit, for sentences.
func (m measure) smallUnit(v float64) string {
	if m.feet() {
		return m.style.LengthUnit(v)
	}
	if math.Abs(v) >= 1 {
		return m.style.LengthUnit(v)
	}
	return unit.Style{Form: unit.Millimetres}.LengthUnit(v)
}

// tenth is a small length to a tenth of a millimetre, where halves of a tolerance stand.
func (m measure) tenth(v float64) string {
	if m.feet() {
		return m.style.Length(v)
	}
	return strings.TrimSuffix(decimal(v*1000, 1), ".0")
}

func (m measure) tenthUnit(v float64) string {
	if m.feet() {
		return m.style.LengthUnit(v)
	}
	return m.tenth(v) + " mm"
}

// plus is a ± in a column, rounded up to the step of the unit: a promise is never rounded away.
func (m measure) plus(v *float64) string {
	if v == nil {
		return nothing
	}
	return m.small(m.up(*v))
}

func (m measure) up(v float64) float64 {
	step := m.style.Step()
	return math.Ceil(v/step-1e-9) * step
}

// smallName heads a column of small lengths.
func (m measure) smallName() string {
	if m.feet() {
		return "inches"
	}
	return "mm"
}

// squareFoot in m² (exact).
const squareFoot = 0.3048 * 0.3048

// area prints m², or square feet in jobs of feet and inches, with its unit.
func (m measure) area(v float64) string {
	if m.feet() {
		return decimal(v/squareFoot, 1) + " ft²"
	}
	return decimal(v, 2) + " m²"
}

// areaPlus is a ± of an area, rounded up, with its unit.
func (m measure) areaPlus(v float64) string {
	if m.feet() {
		return decimal(math.Ceil(v/squareFoot*10-1e-9)/10, 1) + " ft²"
	}
	return decimal(math.Ceil(v*100-1e-9)/100, 2) + " m²"
}

// decimal prints with a real minus, never "−0.0".
func decimal(v float64, places int) string {
	s := strconv.FormatFloat(math.Abs(v), 'f', places, 64)
	if v < 0 && s != strconv.FormatFloat(0, 'f', places, 64) {
		return "−" + s
	}
	return s
}

// normal95 is the two-sided 95 % quantile of the normal distribution.
const normal95 = 1.959964
