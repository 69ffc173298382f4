package unit

import (
	"fmt"
	"math/big"
)

// feet reads what may follow a number of feet: nothing, or inches with or without their sign.
func (p *lengthReader) feet(feet token) (*big.Rat, error) {
	if len(p.toks) == 0 {
		return scale(feet.rat(), FT), nil
	}
	if !feet.whole() {
		return nil, fail(Ambiguous, p.text, feet.text+" ft, or whole feet and inches")
	}
	if p.peek(0).kind == '-' {
		p.take(1)
	}
	in, err := p.inches()
	if err != nil {
		return nil, err
	}
	if u, ok := unitOf(p.peek(0)); ok && u == IN {
		p.take(1)
	}
	return p.together(feet, in)
}

// together adds feet and inches, and refuses twelve inches and more.
func (p *lengthReader) together(feet token, in *big.Rat) (*big.Rat, error) {
	if _, err := p.end(in); err != nil {
		return nil, err
	}
	if twelve := big.NewRat(12, 1); in.Cmp(twelve) >= 0 {
		over := new(big.Rat).Quo(in, twelve)
		more := new(big.Int).Quo(over.Num(), over.Denom())
		f := new(big.Int).Add(feet.rat().Num(), more)
		rest := new(big.Rat).Sub(in, new(big.Rat).Mul(twelve, new(big.Rat).SetInt(more)))
		return nil, fail(InchesOver, p.text, fmt.Sprintf(`%s' %s"`, f, inchText(rest)))
	}
	return new(big.Rat).Add(scale(feet.rat(), FT), scale(in, IN)), nil
}

// inchText prints exact inches: a whole number and a fraction where the denominator is a power
// of two of a rule's kind, else decimals.
func inchText(r *big.Rat) string {
	whole := new(big.Int).Quo(r.Num(), r.Denom())
	part := new(big.Rat).Sub(r, new(big.Rat).SetInt(whole))
	switch {
	case part.Sign() == 0:
		return whole.String()
	case part.Denom().IsInt64() && ruled(part.Denom().Int64()) && whole.Sign() == 0:
		return part.String()
	case part.Denom().IsInt64() && ruled(part.Denom().Int64()):
		return whole.String() + " " + part.String()
	}
	n, _ := r.FloatPrec()
	return r.FloatString(n)
}

// inches reads 1.25, 1 1/4, 1-1/4, 1/4.
func (p *lengthReader) inches() (*big.Rat, error) {
	t := p.peek(0)
	if t.kind != 'n' {
		return nil, p.unreadable()
	}
	if p.peek(1).kind == '/' {
		return p.fraction()
	}
	p.take(1)
	whole := t.rat()
	skip := 0
	if p.peek(0).kind == '-' {
		skip = 1
	}
	if p.peek(skip).kind == 'n' && p.peek(skip+1).kind == '/' && t.whole() {
		p.take(skip)
		part, err := p.fraction()
		if err != nil {
			return nil, err
		}
		return whole.Add(whole, part), nil
	}
	return whole, nil
}

// fraction reads 1/4: less than one, and halves, quarters, eighths and so on.
func (p *lengthReader) fraction() (*big.Rat, error) {
	n, d := p.peek(0), p.peek(2)
	if !n.whole() || !d.whole() || len(n.text) > 6 || len(d.text) > 6 {
		return nil, p.unreadable()
	}
	p.take(3)
	num, den := n.rat().Num().Int64(), d.rat().Num().Int64()
	if den == 0 {
		return nil, p.unreadable()
	}
	if !ruled(den) {
		return nil, fail(Fraction, p.text, "the inches in "+near(num, den))
	}
	if num >= den {
		return nil, fail(Fraction, p.text, "the fraction as "+inchText(big.NewRat(num, den)))
	}
	return big.NewRat(num, den), nil
}

// ruled says that a rule may be divided so: halves to hundred-and-twenty-eighths.
func ruled(d int64) bool { return d >= 2 && d <= 128 && d&(d-1) == 0 }

// near spells a fraction that no rule shows by its decimals and by the nearest sixteenth.
func near(num, den int64) string {
	f := big.NewRat(num, den)
	sixteenths := new(big.Rat).Mul(f, big.NewRat(16, 1))
	n := new(big.Rat).Add(sixteenths, big.NewRat(1, 2))
	k := new(big.Int).Quo(n.Num(), n.Denom())
	return fmt.Sprintf("decimals (%s) or sixteenths (%s)", f.FloatString(3), inchText(new(big.Rat).SetFrac(k, big.NewInt(16))))
}

// marked says that an inch sign or word ends the text and only inches stand before it, as in
// 1 1/4", so that the first number is not feet; in 12-6 1/2" and 12 6" it is.
func (p *lengthReader) marked() bool {
	whole := 0
	for i, t := range p.toks {
		inFraction := p.peek(i+1).kind == '/' || i > 0 && p.peek(i-1).kind == '/'
		if t.kind == 'n' && !inFraction {
			whole++
		}
	}
	u, ok := unitOf(p.toks[len(p.toks)-1])
	return ok && u == IN && whole < 2
}

// bareFeet reads 12-6-1/2, 12 6.5 and 12 6 in a feet job, where the first number is feet.
func (p *lengthReader) bareFeet(feet token) (*big.Rat, error) {
	if p.peek(1).kind == '/' || p.peek(1).kind == 'n' && p.peek(2).kind == '/' {
		return nil, fail(Ambiguous, p.text, `the inches with their sign, such as 0' 1/2" or 12' 0 1/2"`)
	}
	p.take(1)
	switch {
	case p.peek(0).kind == '-':
		p.take(1)
	case p.peek(0).kind != 'n':
		return nil, p.unreadable()
	}
	if p.peek(1).kind == '/' {
		return nil, fail(Ambiguous, p.text, fmt.Sprintf(`%s' 0 %s/%s" or %s %s/%s in`,
			feet.text, p.peek(0).text, p.peek(2).text, feet.text, p.peek(0).text, p.peek(2).text))
	}
	in, err := p.inches()
	if err != nil {
		return nil, err
	}
	if u, ok := unitOf(p.peek(0)); ok && u == IN {
		p.take(1)
	}
	return p.together(feet, in)
}
