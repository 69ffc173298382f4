package fieldbook

import (
	"math"

	"brimline/unit"
)

// Turn is a horizontal angle at a mark, clockwise from one mark to another:
// {turn: A r5, at: k1, is: 42.2519}. Its marks are from, at, to; its value is in radians.
type Turn struct{}

// TurnForm is the item as the file writes it; sigma is in degrees.
type TurnForm struct {
	Turn  Pair       `book:"turn" jsonschema:"required"`
	At    Name       `book:"at" jsonschema:"required"`
	Is    Angle      `book:"is" jsonschema:"required"`
	Sigma AngleSigma `book:"sigma"`
	Common
}

// Name of the kind.
func (Turn) Name() string { return "turn" }

// Form of the item.
func (Turn) Form() ItemForm { return &TurnForm{} }

func (f *TurnForm) build(b *builder) Body {
	ends := b.pair(f.Turn)
	if f.At.given() && (f.At.text == ends[0] || f.At.text == ends[1]) {
		b.fault(f.At.at, "self", "an angle at "+quoted(f.At.text)+" to itself", "the mark at which it was read")
	}
	v := Value{Part: "is", Metres: b.angle(f.Is, notNegative), Text: f.Is.text}
	if v.Metres > 2*math.Pi {
		b.fault(f.Is.at, "too-large", quoted(f.Is.text)+" is more than a whole turn", "at most 360 degrees")
	}
	r := Reading{Kind: "turn", Marks: []string{ends[0], f.At.text, ends[1]}, Values: []Value{v}}
	r.Sigma = b.angleSigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (Turn) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "turn" || len(r.Marks) != 3 || len(r.Values) != 1 {
		return false
	}
	w.text("turn", r.Marks[0]+" "+r.Marks[2])
	w.text("at", r.Marks[1])
	w.angle("is", r.Values[0])
	r.write(w)
	return true
}

// angle writes the text as typed where it reads back to the value, else decimal degrees.
func (w *writer) angle(k string, v Value) {
	text := v.Text
	if got, err := unit.ParseAngle(text); err != nil || got != v.Metres {
		text = unit.Degrees(v.Metres)
	}
	w.raw(k, w.scalar(text))
}
