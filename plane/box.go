package plane

import "math"

// Box is an upright rectangle; Min is its lower left corner.
type Box struct{ Min, Max Point }

// EmptyBox holds nothing: any box joined to it stays as it is.
func EmptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf}, Point{-inf, -inf}}
}

// BoundsOf is the smallest box round the points.
func BoundsOf(pts ...Point) Box {
	b := EmptyBox()
	for _, p := range pts {
		b = b.Join(Box{p, p})
	}
	return b
}

// Join is the smallest box round both.
func (b Box) Join(o Box) Box {
	return Box{
		Point{min(b.Min.X, o.Min.X), min(b.Min.Y, o.Min.Y)},
		Point{max(b.Max.X, o.Max.X), max(b.Max.Y, o.Max.Y)},
	}
}

// Meets says that the boxes share a point when each is widened by half of slack.
func (b Box) Meets(o Box, slack float64) bool {
	return b.Min.X <= o.Max.X+slack && o.Min.X <= b.Max.X+slack &&
		b.Min.Y <= o.Max.Y+slack && o.Min.Y <= b.Max.Y+slack
}

// Empty says that the box holds no point.
func (b Box) Empty() bool { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y }

// Diagonal is the length of the box's diagonal, 0 for an empty box.
func (b Box) Diagonal() float64 {
	if b.Empty() {
		return 0
	}
	return b.Min.Dist(b.Max)
}
