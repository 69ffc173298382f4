package fieldbook

import "strconv"

// Square is a corner that is said to be square: {square: A r1 r2, sigma: 0.05}, a right angle, on
// either hand, at the middle mark. Sigma is that of the angle.
type Square struct{}

// SquareForm is the item as the file writes it; sigma is in degrees.
type SquareForm struct {
	Square Row        `book:"square" jsonschema:"required"`
	Sigma  AngleSigma `book:"sigma"`
	Common
}

// Name of the kind.
func (Square) Name() string { return "square" }

// Form of the item.
func (Square) Form() ItemForm { return &SquareForm{} }

func (f *SquareForm) build(b *builder) Body {
	const expected = "three marks, the corner in the middle"
	r := Reading{Kind: "square", Marks: b.row(f.Square, 3, expected)}
	if n := len(r.Marks); n > 3 {
		b.fault(f.Square.at, "count", "too many marks: "+strconv.Itoa(n), expected)
	}
	r.Sigma = b.angleSigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (Square) write(w *writer, body Body) bool { return w.asserted("square", 3, body) }
