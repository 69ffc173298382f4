package sheet

import (
	"math"
	"strconv"
)

// Scale is the number N of a scale 1:N.
type Scale float64

// steps of ISO 5455:1979, 5.1: 1, 2 and 5 times whole powers of ten.
var steps = []float64{1, 2, 5}

// feetScales are the reductions of feet-and-inch drawings: 3 in, 1 1/2 in, 1 in, 3/4 in, 1/2 in,
// 3/8 in, 1/4 in, 3/16 in, 1/8 in, 3/32 in and 1/16 in to the foot, then whole tens of feet to the inch
// (common practice in countries that draw in feet, no source).
var feetScales = []Scale{1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 240, 360, 480, 600, 1200, 2400, 4800, 12000, 24000}

// Scales lists the preferred reductions from full size to 1:50000 or smaller, the largest first.
func Scales(feet bool) []Scale {
	if feet {
		return append([]Scale(nil), feetScales...)
	}
	var out []Scale
	for p := 1.0; p <= 1e4; p *= 10 {
		for _, s := range steps {
			out = append(out, Scale(s*p))
		}
	}
	return out
}

// PerMetre is millimetres of paper for a metre of the model.
func (s Scale) PerMetre() float64 { return 1000 / float64(s) }

// String prints 1:50.
func (s Scale) String() string { return "1:" + strconv.FormatFloat(float64(s), 'f', -1, 64) }

// Round is the largest of 1, 2, 5 times a power of ten that does not exceed x; 0 for x not above 0.
func Round(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 1) {
		return 0
	}
	p := math.Pow(10, math.Floor(math.Log10(x)))
	best := p
	for _, s := range []float64{1, 2, 5, 10} {
		if s*p <= x*(1+1e-9) {
			best = s * p
		}
	}
	return best
}
