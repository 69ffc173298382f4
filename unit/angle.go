package unit

import (
	"math"
	"math/big"
	"strings"
)

const (
	angleExpected = `decimal degrees or degrees, minutes and seconds such as 42°15'07"`
	slopeExpected = "a slope such as 1:60, 2 % or 1.5°"
	mostDegrees   = 3600
)

// ParseAngle reads decimal degrees (42.2519, 42.2519°, 42.2519 deg) or degrees, minutes and
// seconds (42°15'07", 42° 15.1') and gives radians. The error is an *Error.
func ParseAngle(text string) (float64, error) {
	toks, negative, err := start(text, angleExpected)
	if err != nil {
		return 0, err
	}
	text = strings.TrimSpace(text)
	deg, rest, ok := degrees(toks)
	if ok && len(rest) > 0 {
		deg, err = arcParts(deg, rest, text)
		if err != nil {
			return 0, err
		}
	}
	if !ok {
		return 0, fail(Unreadable, text, angleExpected)
	}
	if deg.Cmp(big.NewRat(mostDegrees, 1)) > 0 {
		return 0, fail(TooLarge, text, "at most 3600 degrees")
	}
	v := radians(deg)
	if negative && v != 0 {
		v = -v
	}
	return v, nil
}

// radians multiplies by π/180 with far more digits than a float64 holds and rounds once.
func radians(deg *big.Rat) float64 {
	x := new(big.Float).SetPrec(precise).SetRat(deg)
	x.Quo(x.Mul(x, pi()), big.NewFloat(180))
	v, _ := x.Float64()
	return v
}

// precise is the number of bits of an angle on its way, 60 decimal digits.
const precise = 200

// pi with 60 digits: DLMF 3.12.
func pi() *big.Float {
	x, _, err := big.ParseFloat("3.14159265358979323846264338327950288419716939937510582097494459", 10, precise, big.ToNearestEven)
	if err != nil {
		panic(err) // the digits above are no number
	}
	return x
}

// Degrees spells radians as the shortest decimal degrees that ParseAngle reads back to the same
// float64. NaN and angles beyond 3600 degrees print as a dash.
func Degrees(rad float64) string {
	if math.IsNaN(rad) || math.Abs(rad) > mostDegrees*math.Pi/180 {
		return nothing
	}
	x := new(big.Float).SetPrec(precise).SetFloat64(rad)
	x.Quo(x.Mul(x, big.NewFloat(180)), pi())
	for places := 0; places < 40; places++ {
		text := x.Text('f', places)
		if back, err := ParseAngle(text); err == nil && back == rad {
			return text
		}
	}
	return x.Text('f', 40)
}

// degrees reads the first number and its sign, which may only be missing at the end.
func degrees(toks []token) (*big.Rat, []token, bool) {
	if toks[0].kind != 'n' {
		return nil, nil, false
	}
	v, rest := toks[0].rat(), toks[1:]
	if len(rest) == 0 {
		return v, nil, true
	}
	if t := rest[0]; t.kind == 'd' || t.kind == 'w' && (t.text == "deg" || t.text == "degrees") {
		rest = rest[1:]
		return v, rest, len(rest) == 0 || toks[0].whole()
	}
	return nil, nil, false
}

// arcParts adds minutes and seconds; only the last part may have decimals.
func arcParts(deg *big.Rat, toks []token, text string) (*big.Rat, error) {
	for _, part := range []struct {
		sign byte
		per  int64
	}{{'\'', 60}, {'"', 3600}} {
		if len(toks) == 0 {
			break
		}
		if len(toks) < 2 || toks[0].kind != 'n' || toks[1].kind != part.sign {
			continue
		}
		v := toks[0].rat()
		if v.Cmp(big.NewRat(60, 1)) >= 0 {
			return nil, fail(MinutesOver, text, "minutes and seconds below 60")
		}
		if !toks[0].whole() && len(toks) > 2 {
			return nil, fail(Unreadable, text, angleExpected)
		}
		deg = new(big.Rat).Add(deg, v.Mul(v, big.NewRat(1, part.per)))
		toks = toks[2:]
	}
	if len(toks) > 0 {
		return nil, fail(Unreadable, text, angleExpected)
	}
	return deg, nil
}

// ParseSlope reads a slope and gives rise over run: 1:60 is one up in sixty along, 2 % is 0.02,
// 1.5° is its tangent. A bare number other than 0 could be either and is asked about. The error
// is an *Error.
func ParseSlope(text string) (float64, error) {
	toks, negative, err := start(text, slopeExpected)
	if err != nil {
		return 0, err
	}
	text = strings.TrimSpace(text)
	v, err := slope(toks, text)
	if err != nil {
		return 0, err
	}
	if v > 1000 {
		return 0, fail(TooLarge, text, slopeExpected)
	}
	if negative && v != 0 {
		v = -v
	}
	return v, nil
}

func slope(toks []token, text string) (float64, error) {
	bad := fail(Unreadable, text, slopeExpected)
	if toks[0].kind != 'n' {
		return 0, bad
	}
	first := toks[0].rat()
	switch {
	case len(toks) == 1 && first.Sign() == 0:
		return 0, nil
	case len(toks) == 1:
		return 0, fail(Ambiguous, text, toks[0].text+" % or "+toks[0].text+"°")
	case len(toks) == 2 && toks[1].kind == '%':
		v, _ := first.Mul(first, big.NewRat(1, 100)).Float64()
		return v, nil
	case len(toks) == 3 && toks[1].kind == ':' && toks[2].kind == 'n' && toks[2].rat().Sign() > 0:
		v, _ := first.Quo(first, toks[2].rat()).Float64()
		return v, nil
	}
	deg, rest, ok := degrees(toks)
	if !ok || len(rest) > 0 {
		return 0, bad
	}
	v, _ := deg.Float64()
	if v >= 89.9 {
		return 0, fail(TooLarge, text, "less than 89.9 degrees")
	}
	return math.Tan(v * math.Pi / 180), nil
}
