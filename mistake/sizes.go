package mistake

import "brimline/unit"

// Metre is a whole metre misread: a tape shows only centimetres between its metre marks.
type Metre struct{}

// Tenth is 100 mm misread.
type Tenth struct{}

// Foot is a whole foot misread.
type Foot struct{}

// Inch is a whole inch misread.
type Inch struct{}

// Code of the closed list.
func (Metre) Code() string { return "metre" }

// Code of the closed list.
func (Tenth) Code() string { return "tenth" }

// Code of the closed list.
func (Foot) Code() string { return "foot" }

// Code of the closed list.
func (Inch) Code() string { return "inch" }

// True is one metre more and one less.
func (Metre) True(_ string, v float64, _ unit.Unit) []Was { return both(v, 1, "one metre") }

// True is 100 mm more and less.
func (Tenth) True(_ string, v float64, _ unit.Unit) []Was { return both(v, 0.1, "100 mm") }

// True is one foot more and one less.
func (Foot) True(_ string, v float64, _ unit.Unit) []Was { return both(v, 0.3048, "one foot") }

// True is one inch more and one less.
func (Inch) True(_ string, v float64, _ unit.Unit) []Was { return both(v, 0.0254, "one inch") }

func both(v, size float64, word string) []Was {
	return []Was{{v - size, word + " long"}, {v + size, word + " short"}}
}
