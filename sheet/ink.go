package sheet

// Ink is a colour by its meaning; the zero value is black.
type Ink int

// The inks: black for everything, grey for what steps back, white to clear a ground, and the three
// state colours (M. Okabe and K. Ito, Color Universal Design, 2008).
const (
	Black Ink = iota
	Grey
	White
	Good  // bluish green: ready, good, agrees
	Open  // blue: unproven, lone, doubtful
	Wrong // vermillion: unfit, suspect, disagrees
)

// RGB of each ink, 0 to 255, in the order of the constants.
var inkRGB = [...][3]uint8{{0, 0, 0}, {110, 110, 110}, {255, 255, 255}, {0, 158, 115}, {0, 114, 178}, {213, 94, 0}}

// RGB gives red, green and blue, 0 to 255; black for an ink that is not on the list.
func (k Ink) RGB() (r, g, b uint8) {
	if k < 0 || int(k) >= len(inkRGB) {
		k = Black
	}
	c := inkRGB[k]
	return c[0], c[1], c[2]
}
