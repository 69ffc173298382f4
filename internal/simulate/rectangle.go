package simulate

import "math/rand/v2"

// rectangle has straight sides and four corners of one radius, a little out of square.
type rectangle struct{}

func (rectangle) Name() string { return "rounded rectangle" }

func (rectangle) Draw(r *rand.Rand) Figure {
	length := between(r, 6, 13)
	width := length * between(r, 0.40, 0.60)
	radius := between(r, 0.25, 1.2)
	skew := degrees(between(r, -0.4, 0.4))
	return Rounded(Box4(length, width, skew), []float64{radius, radius, radius, radius})
}
