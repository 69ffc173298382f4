package unit

import (
	"fmt"
	"math/big"
	"strings"
)

// lengthExpected is shown where a length cannot be read at all.
const lengthExpected = `a length such as 5.214 m, 5214 mm or 17' 1 1/4"`

// farthest is the largest length taken, in metres: more than any coordinate on the earth.
const farthest = 1e8

// ParseLength reads a length and gives metres. bare is the meaning of a number without a unit.
//
// It takes 5.214 m, 521.4 cm, 5214 mm, 17.1 ft, 205.25 in, 17' 1 1/4", 17'-1.25",
// 17 ft 1 1/4 in, 12'6 1/2, 17', 1 1/4"; where bare is FT also 12-6-1/2 and 12 6.5; where it is
// IN also 6 1/2. Typographic primes, quotes, minus signs and white space are as good as plain
// ones. In a feet job a whole bare number is feet, a bare decimal such as 12.6 is asked about.
//
// The error is an *Error. A sign is read; whether it has a meaning is the caller's to say.
func ParseLength(text string, bare Unit) (float64, error) {
	toks, negative, err := start(text, lengthExpected)
	if err != nil {
		return 0, err
	}
	p := &lengthReader{toks: toks, text: strings.TrimSpace(text), bare: bare}
	r, err := p.read()
	if err != nil {
		return 0, err
	}
	v, _ := r.Mul(r, big.NewRat(1, 10000)).Float64()
	if v > farthest {
		return 0, fail(TooLarge, p.text, "at most 100000 km")
	}
	if negative && v != 0 {
		v = -v
	}
	return v, nil
}

// lengthReader walks the tokens of one length. Values are exact, in units of 0.1 mm.
type lengthReader struct {
	toks []token
	text string
	bare Unit
}

func (p *lengthReader) peek(i int) token {
	if i < len(p.toks) {
		return p.toks[i]
	}
	return token{}
}

func (p *lengthReader) take(n int) { p.toks = p.toks[n:] }

func (p *lengthReader) unreadable() error { return fail(Unreadable, p.text, lengthExpected) }

// read decides by what follows the first number.
func (p *lengthReader) read() (*big.Rat, error) {
	first, next := p.peek(0), p.peek(1)
	if first.kind != 'n' {
		return nil, p.unreadable()
	}
	if u, ok := unitOf(next); ok && u != FT && u != IN {
		p.take(2)
		return p.end(scale(first.rat(), u))
	}
	if u, ok := unitOf(next); ok && u == FT {
		p.take(2)
		return p.feet(first)
	}
	if len(p.toks) == 1 {
		return p.number(first)
	}
	if v, ok := p.exponent(); ok {
		return v, nil
	}
	if p.bare == FT && first.whole() && !p.marked() {
		return p.bareFeet(first)
	}
	in, err := p.inches()
	if err != nil {
		return nil, err
	}
	if u, ok := unitOf(p.peek(0)); ok && u == IN {
		p.take(1)
	} else if p.bare != IN {
		return nil, p.unreadable()
	}
	return p.end(scale(in, IN))
}

// number is a bare number.
func (p *lengthReader) number(t token) (*big.Rat, error) {
	if p.bare == FT && !t.whole() {
		return nil, fail(Ambiguous, p.text, bothMeanings(t))
	}
	if !p.bare.Known() {
		return nil, fail(Unreadable, p.text, "a length with its unit, such as 5.214 m")
	}
	return scale(t.rat(), p.bare), nil
}

// bothMeanings spells a bare decimal of a feet job as feet, and as feet and inches where what
// stands behind the point can be inches.
func bothMeanings(t token) string {
	feet, decimals, _ := strings.Cut(t.text, ".")
	if feet == "" {
		feet = "0"
	}
	inches := strings.TrimLeft(decimals, "0")
	if in := (token{text: "0" + inches}); t.rat().Sign() == 0 || inches == "" || in.rat().Cmp(big.NewRat(12, 1)) >= 0 {
		return t.text + " ft"
	}
	return fmt.Sprintf(`%s ft or %s' %s"`, t.text, feet, inches)
}

// exponent reads 5e-3, as programs write small numbers, and nothing beyond 15 places.
func (p *lengthReader) exponent() (*big.Rat, bool) {
	e, i := p.peek(1), 2
	if e.kind != 'w' || e.text != "e" || e.gap || !p.bare.Known() || p.bare == FT {
		return nil, false
	}
	if k := p.peek(i).kind; k == '-' || k == '+' {
		i++
	}
	x := p.peek(i)
	if !x.whole() || x.gap || len(x.text) > 2 || x.text > "15" && len(x.text) == 2 || len(p.toks) != i+1 {
		return nil, false
	}
	sign := ""
	if i == 3 {
		sign = p.peek(2).text
	}
	r, ok := new(big.Rat).SetString(p.toks[0].text + "e" + sign + x.text)
	if !ok {
		return nil, false
	}
	return scale(r, p.bare), true
}

// end says that nothing may follow.
func (p *lengthReader) end(v *big.Rat) (*big.Rat, error) {
	if len(p.toks) > 0 {
		return nil, p.unreadable()
	}
	return v, nil
}

func scale(r *big.Rat, u Unit) *big.Rat {
	return new(big.Rat).Mul(r, new(big.Rat).SetInt64(u.micro()))
}

// unitOf names the unit that a word or a sign stands for.
func unitOf(t token) (Unit, bool) {
	switch t.kind {
	case '\'':
		return FT, true
	case '"':
		return IN, true
	case 'w':
		switch t.text {
		case "m", "metre", "metres", "meter", "meters":
			return M, true
		case "cm":
			return CM, true
		case "mm":
			return MM, true
		case "ft", "foot", "feet":
			return FT, true
		case "in", "inch", "inches":
			return IN, true
		}
	}
	return "", false
}
