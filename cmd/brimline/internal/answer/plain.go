package answer

import (
	"strings"
	"unicode"
)

// Plain makes a text from a book fit for one line of a terminal: control characters, which could
// move the cursor or break a table, and signs that turn the direction of writing become spaces.
func Plain(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, s)
}
