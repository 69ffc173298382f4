package answer_test

import (
	"strings"
	"testing"

	"brimline/cmd/brimline/internal/answer"
	"brimline/survey"
	"brimline/unit"
)

// slope is a made-up check line that has every figure.
func slope() survey.Measured {
	return survey.Measured{
		From: "r1", To: "r9", Length: 4, LengthSD: 0.003, Bearing: at(123.456), BearingSD: at(0.05),
		Controlled: true, Hidden: at(0.0211),
		Rise:  &survey.Rise{Rise: -0.1, RiseSD: 0.005, Slope: at(-0.025), SlopeSD: at(0.00124), OneIn: at(40), OneInSD: at(2), Sloping: 4.00125, SlopingSD: 0.003},
		Along: []survey.Along{{Line: "rim", Length: 5, LengthSD: 0.004, Opposite: at(9), OppositeSD: at(0.006)}, {Line: "wall", Length: 4.5, LengthSD: 0.005}},
		Other: []survey.Other{{Mark: "r9", X: 1, Y: -2, Length: 6.5}},
	}
}

func TestMeasuresInMetres(t *testing.T) {
	want := `r1 to r9
                                             sd  ± 95 %
  level length                  4.000 m  3.0 mm    6 mm
  bearing                       123.46°  0.050°   0.10°
  rise                         −0.100 m  5.0 mm   10 mm
  slope                         −2.50 %  0.12 %  0.25 %
                                 1:40.0     2.0     4.0
  sloping length                4.001 m  3.0 mm    6 mm
  along rim, in its direction   5.000 m  4.0 mm    8 mm
  along rim, the other way      9.000 m  6.0 mm   12 mm
  along wall                    4.500 m  5.0 mm   10 mm
- Controlled: a mistake that nothing shows could move the length by 22 mm at
  most.
- Or 6.500 m, if r9 lies at its other place, 1.000, −2.000.
`
	if got := answer.Measures([]survey.Measured{slope()}, nil, unit.M); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestMeasuresOtherwise(t *testing.T) {
	x := slope()
	x.Controlled, x.Hidden, x.Unsettled, x.Rise, x.Other = false, nil, true, nil, nil
	y := survey.Measured{From: "A", To: "rim", Length: 1.8288, LengthSD: 0.0024, Across: &survey.Across{Line: "rim", Side: "outside", Square: true, Along: 3.048}}
	got := answer.Measures([]survey.Measured{x, y}, []string{"the solution did not settle; look again"}, unit.FT)
	for _, want := range []string{
		"Use none of these figures:\n- the solution did not settle; look again.\n\nr1 to r9\n", "level length                  13′ 1 1/2″", "0.12 in", "hangs on readings in which a mistake shows",
		"\n\nA to rim\n", "shortest way  6′ 0″  0.09 in   3/16″",
		"- A lies outside rim; the way ends 10′ 0″ along it from its first mark, square\n  to it.\n", "a mistake of any size",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in\n%s", want, got)
		}
	}
	y.Across.Square, y.Across.Side = false, "left"
	if got := answer.Measures([]survey.Measured{y}, nil, unit.MM); !strings.Contains(got, "left of rim") || !strings.Contains(got, "at a\n  corner or an end") || !strings.Contains(got, "1829 mm") {
		t.Errorf("got\n%s", got)
	}
}
