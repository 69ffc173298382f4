package fieldbook

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"brimline/unit"
)

// builder reads what the leaves of the forms mean and notes what they cannot mean.
type builder struct {
	faults Faults
	unit   unit.Unit // of a bare length
	here   place     // of the name or item being built
}

// fault notes what is wrong at a place, or at the item being built where the place is not known.
func (b *builder) fault(at place, code, text, expected string) {
	if at.line == 0 {
		at = b.here
	}
	b.faults = append(b.faults, Fault{Line: at.line, Column: at.column, Code: code, Text: text, Expected: expected})
}

// sign says which figures have a meaning.
type sign int

const (
	anySign sign = iota
	notNegative
	positive
)

func (b *builder) signed(l leaf, v float64, s sign) {
	switch {
	case v < 0 && s != anySign:
		b.fault(l.at, "negative", l.text+" is negative, and a sign has no meaning here", strings.TrimLeft(l.text, "-−"))
	case v == 0 && s == positive:
		b.fault(l.at, "not-positive", l.text+" says nothing here", "a figure above zero, or no such key")
	}
}

// length is metres; 0 where the key is not there or is at fault.
func (b *builder) length(l Length, s sign) float64 {
	if !l.given() {
		return 0
	}
	v, err := unit.ParseLength(l.text, b.unit)
	if !b.understood(l.leaf, err) {
		return 0
	}
	b.signed(l.leaf, v, s)
	return v
}

// angle is radians; 0 where the key is not there or is at fault.
func (b *builder) angle(a Angle, s sign) float64 {
	if !a.given() {
		return 0
	}
	v, err := unit.ParseAngle(a.text)
	if !b.understood(a.leaf, err) {
		return 0
	}
	b.signed(a.leaf, v, s)
	return v
}

func (b *builder) understood(l leaf, err error) bool {
	var e *unit.Error
	if errors.As(err, &e) {
		b.fault(l.at, e.Code, quoted(e.Text)+" cannot be read", e.Expected)
	}
	return err == nil
}

// figure is a plain decimal number, perhaps with an exponent.
func (b *builder) figure(l leaf, s sign) float64 {
	if !l.given() {
		return 0
	}
	if i := strings.IndexByte(l.text, ','); i > 0 {
		b.fault(l.at, "decimal-comma", quoted(l.text)+" cannot be read", strings.Replace(l.text, ",", ".", 1))
		return 0
	}
	v, err := strconv.ParseFloat(l.text, 64)
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0) || l.word && strings.HasPrefix(strings.TrimLeft(l.text, "+-"), "."+"inf") || l.text == ".nan":
		b.fault(l.at, "not-finite", quoted(l.text)+" is no finite number", "a number")
		return 0
	case err != nil || strings.Trim(l.text, "0123456789+-.eE") != "":
		b.fault(l.at, "bad-number", quoted(l.text)+" is no number", "a plain number")
		return 0
	}
	b.signed(l, v, s)
	return v
}

// pair is two names that differ.
func (b *builder) pair(p Pair) [2]string {
	if !p.given() {
		return [2]string{}
	}
	f := strings.FieldsFunc(p.text, blank)
	if len(f) != 2 {
		b.fault(p.at, "bad-pair", quoted(p.text)+" is not two names", p.expects())
		return [2]string{}
	}
	if f[0] == f[1] {
		b.fault(p.at, "self", quoted(f[0])+" to itself", "two different marks")
	}
	return [2]string{f[0], f[1]}
}

// row is names that all differ, at least least of them.
func (b *builder) row(r Row, least int, expected string) []string {
	if !r.given() {
		return nil
	}
	names := strings.FieldsFunc(r.text, blank)
	if len(names) < least {
		b.fault(r.at, "count", "too few marks: "+strconv.Itoa(len(names)), expected)
	}
	for i, n := range names {
		if among(n, names[:i]) {
			b.fault(r.at, "self", quoted(n)+" stands here twice", "each mark once")
			break
		}
	}
	return names
}

// part is one value of a reading with its text.
func (b *builder) part(name string, l Length, s sign) Value {
	return Value{Part: name, Metres: b.length(l, s), Text: l.text}
}

// sigmas reads a reading's own standard deviations in metres: none, one, or one a part.
func (b *builder) sigmas(s Sigma, parts int) []float64 {
	b.counted(s, parts)
	var out []float64
	for _, l := range s.items {
		out = append(out, b.length(Length{l}, positive))
	}
	return out
}

// angleSigmas is sigmas of a kind that reads angles, in radians.
func (b *builder) angleSigmas(s AngleSigma, parts int) []float64 {
	b.counted(s.Sigma, parts)
	var out []float64
	for _, l := range s.items {
		out = append(out, b.angle(Angle{l}, positive))
	}
	return out
}

func (b *builder) counted(s Sigma, parts int) {
	n := len(s.items)
	if s.at.line == 0 || n == 1 || n == parts {
		return
	}
	want := "one"
	if parts > 1 {
		want += ", or " + strconv.Itoa(parts)
	}
	b.fault(s.at, "count", "wrong number of figures for sigma", want)
}

func texts(names []Name) []string {
	var out []string
	for _, n := range names {
		out = append(out, n.text)
	}
	return out
}
