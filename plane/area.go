package plane

import "math"

// PolygonArea is the area inside the corners, positive when they run counter-clockwise; 0 for
// fewer than three. Gauss's formula, taken about the first corner so that far coordinates lose
// nothing.
func PolygonArea(corners []Point) float64 {
	sum := 0.0
	for i := 2; i < len(corners); i++ {
		sum += corners[i-1].Sub(corners[0]).Cross(corners[i].Sub(corners[0]))
	}
	return sum / 2
}

// TrapezoidArea is the area between a base line and offsets from it at equal steps; 0 for
// fewer than two offsets.
func TrapezoidArea(offsets []float64, step float64) float64 {
	n := len(offsets)
	if n < 2 {
		return 0
	}
	sum := (offsets[0] + offsets[n-1]) / 2
	for _, o := range offsets[1 : n-1] {
		sum += o
	}
	return sum * step
}

// SimpsonArea is the same by Simpson's rule (s/3)(o₀ + 4Σodd + 2Σeven + oₙ). ok is false when
// the number of steps is odd or none, where the rule says nothing.
func SimpsonArea(offsets []float64, step float64) (area float64, ok bool) {
	n := len(offsets)
	if n < 3 || n%2 == 0 {
		return 0, false
	}
	sum := offsets[0] + offsets[n-1]
	for i, o := range offsets[1 : n-1] {
		sum += o * float64(4-2*(i%2))
	}
	return sum * step / 3, true
}

// EllipsePerimeter is the perimeter of the ellipse with half axes a and b, to the last digits,
// by the arithmetic-geometric mean (NIST Digital Library of Mathematical Functions, 19.8.6 and
// 19.9.9). A half axis of 0 gives the double line; negative ones count as positive.
func EllipsePerimeter(a, b float64) float64 {
	a, b = math.Abs(a), math.Abs(b)
	if a < b {
		a, b = b, a
	}
	if b == 0 {
		return 4 * a
	}
	sum, weight := a*a, 0.5
	sum -= weight * (a - b) * (a + b)
	for c := a; c > 1e-9*a; { // the distance left is about c² of the last step
		c = (a - b) / 2
		a, b = (a+b)/2, math.Sqrt(a*b)
		weight *= 2
		sum -= weight * c * c
	}
	return 2 * math.Pi * sum / a
}
