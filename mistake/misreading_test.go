package mistake_test

import (
	"math"
	"sort"
	"testing"

	"brimline/mistake"
	"brimline/unit"
)

// What each text may have been, by hand: in feet where u is feet, else in metres. A misreading that
// is not listed has nothing to say of the text.
func TestMisreadingsByHand(t *testing.T) {
	ft := func(feet, inches float64) float64 { return (feet + inches/12) * 0.3048 }
	for _, c := range []struct {
		text string
		u    unit.Unit
		code string
		want []float64
	}{
		{"4.63", unit.M, "digits", []float64{4.36, 6.43}},
		{"4.36", unit.M, "digits", []float64{4.63, 3.46}},
		{"5.50", unit.M, "digits", []float64{5.05}},
		{"5.5", unit.M, "digits", nil},
		{"7", unit.M, "digits", nil},
		{"12.345", unit.M, "digits", []float64{21.345, 13.245, 12.435, 12.354}},
		{"9.083", unit.M, "digits", []float64{0.983, 9.803, 9.038}},
		{"5214 mm", unit.M, "digits", []float64{2.514, 5.124, 5.241}},
		{"17' 1 1/4\"", unit.FT, "digits", []float64{ft(71, 1.25)}},
		{"6.19", unit.M, "lookalike", []float64{9.19, 6.79, 6.16}},
		{"9.083", unit.M, "lookalike", []float64{6.083}},
		{"1.77", unit.M, "lookalike", []float64{7.77, 1.17, 1.71}},
		{"4.802", unit.M, "lookalike", nil},
		{"16' 9\"", unit.FT, "lookalike", []float64{ft(76, 9), ft(19, 9), ft(16, 6)}},
		{"4.63", unit.M, "metre", []float64{3.63, 5.63}},
		{"4.63", unit.M, "tenth", []float64{4.53, 4.73}},
		{"4.63", unit.M, "foot", []float64{4.3252, 4.9348}},
		{"4.63", unit.M, "inch", []float64{4.6046, 4.6554}},
		{"5' 8\"", unit.FT, "feet-tenths", []float64{5.8 * 0.3048}},
		{"5' 10\"", unit.FT, "feet-tenths", []float64{5.10 * 0.3048}},
		{"5' 11\"", unit.M, "feet-tenths", []float64{5.11 * 0.3048}},
		{"5' 8 1/2\"", unit.FT, "feet-tenths", nil},
		{"5'", unit.FT, "feet-tenths", nil},
		{"5.8 ft", unit.FT, "feet-tenths", []float64{ft(5, 8)}},
		{"5.10 ft", unit.FT, "feet-tenths", []float64{ft(5, 10)}},
		{"9.083 ft", unit.FT, "feet-tenths", nil},
		{"5.8 ft", unit.M, "feet-tenths", []float64{ft(5, 8)}},
		{"5.8", unit.M, "feet-tenths", nil},
		{"5.25 ft", unit.FT, "feet-tenths", nil},
		{"6.1", unit.M, "feet-metres", []float64{6.1 * 0.3048}},
		{"20 ft", unit.FT, "feet-metres", []float64{20}},
	} {
		v, err := unit.ParseLength(c.text, c.u)
		if err != nil {
			t.Fatalf("%q: %v", c.text, err)
		}
		var got []float64
		for _, k := range mistake.Misreadings {
			if k.Code() != c.code {
				continue
			}
			for _, w := range k.True(c.text, v, c.u) {
				if w.Cause == "" {
					t.Errorf("%q, %s: %g without a word", c.text, c.code, w.Metres)
				}
				got = append(got, w.Metres)
			}
		}
		same(t, c.text+" as "+c.code, got, c.want)
	}
}

// same compares two lists of lengths whatever their order.
func same(t *testing.T, what string, got, want []float64) {
	t.Helper()
	got, want = append([]float64(nil), got...), append([]float64(nil), want...)
	sort.Float64s(got)
	sort.Float64s(want)
	ok := len(got) == len(want)
	for k := 0; ok && k < len(got); k++ {
		ok = math.Abs(got[k]-want[k]) < 1e-9
	}
	if !ok {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// Swapping digits and taking a digit for its like are undone by doing them once more: what a true
// length was written as may be that length again.
func TestMisreadingsTurnBack(t *testing.T) {
	for _, k := range []mistake.Misreading{mistake.Digits{}, mistake.Lookalike{}} {
		tried := 0
		for mm := 1013; mm < 19990; mm += 89 {
			if mm/1000 == 10 {
				continue // the swap 01.234 is no way to write a length
			}
			text := length(float64(mm) / 1000)
			v, _ := unit.ParseLength(text, unit.M)
			for _, w := range k.True(text, v, unit.M) {
				if w.Metres < 1 {
					continue // written with another number of digits
				}
				tried++
				back := false
				for _, u := range k.True(length(w.Metres), w.Metres, unit.M) {
					back = back || math.Abs(u.Metres-v) < 1e-9
				}
				if !back {
					t.Errorf("%s: %s may have been %g, which cannot be written as %s", k.Code(), text, w.Metres, text)
				}
			}
		}
		if tried < 200 {
			t.Errorf("%s: only %d tried", k.Code(), tried)
		}
	}
}
