// Package unit reads and prints lengths, angles and slopes as people of the trade type them.
// Inside the program lengths are metres and angles radians; this is the border.
//
// Reading is exact: text becomes a fraction of whole numbers and is rounded once, to the nearest
// float64, so that 12' 6 1/2" is 3.8227. Whatever could mean two things is refused with the
// spellings that would settle it. The foot is the international one, 0.3048 m exactly
// (NIST and NOAA, Federal Register 85 FR 62698, 2020).
//
// Printing rounds to a Style's step and nowhere else is anything rounded. A minus is U+2212.
package unit

// Unit is the meaning of a bare number.
type Unit string

// The units a book may choose.
const (
	M  Unit = "m"
	CM Unit = "cm"
	MM Unit = "mm"
	FT Unit = "ft"
	IN Unit = "in"
)

// Units is the list of them, for messages and tables.
var Units = []Unit{M, CM, MM, FT, IN}

// Known says whether u is one of Units.
func (u Unit) Known() bool {
	for _, x := range Units {
		if u == x {
			return true
		}
	}
	return false
}

// micro is the unit in units of 0.1 mm: whole for every unit of the list. 0 for an unknown one.
func (u Unit) micro() int64 {
	switch u {
	case M:
		return 10000
	case CM:
		return 100
	case MM:
		return 10
	case FT:
		return 3048
	case IN:
		return 254
	}
	return 0
}

// Metres is the length of one unit in metres, 0 for an unknown one.
func (u Unit) Metres() float64 { return float64(u.micro()) / 10000 }
