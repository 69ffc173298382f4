package simulate

import "math/rand/v2"

// Shape is a family of pools. Draw gives one of it, counter-clockwise, its length along x,
// about the origin.
type Shape interface {
	Name() string
	Draw(r *rand.Rand) Figure
}

// Shapes is the list of families.
var Shapes = []Shape{
	rectangle{},
	stadium{},
	roman{},
	ell{},
	kidney{},
	oval{},
	freeform{},
}
