package sheet

import (
	_ "embed"
	"strings"
)

// Family is the name of the one family on all sheets.
const Family = "Brim Sans"

// RegularTTF and BoldTTF are the font files, TrueType outlines without kerning; licence in
// font/OFL.txt.
var (
	//go:embed font/BrimSans-Regular.ttf
	RegularTTF []byte
	//go:embed font/BrimSans-Bold.ttf
	BoldTTF []byte
)

// capHeight is the height of the capitals over the em, from the font's OS/2 table (1433 and 1446
// of 2000); the mean serves both weights within half a percent.
const capHeight = 0.72

// Em is the font size whose capitals are h high.
func Em(h float64) float64 { return h / capHeight }

// Width of a text whose capitals are h high, in the unit of h: the sum of its letters' advances.
func Width(s string, h float64, bold bool) float64 {
	table := regularWidths
	if bold {
		table = boldWidths
	}
	n := 0
	for _, r := range s {
		w, ok := table[r]
		if !ok {
			w = table[missing]
		}
		n += int(w)
	}
	return float64(n) / 1000 * Em(h)
}

// missing stands for a letter that the font does not have.
const missing = '◊'

// Covers says that the font has the letter.
func Covers(r rune) bool { return regularWidths[r] != 0 }

// Clean drops control characters, makes line ends and tabs spaces, and puts ◊ for what the font
// does not have.
func Clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case r < 0x20 || r >= 0x7f && r < 0xa0 || r == 0xad || r >= 0x200b && r <= 0x200f || r == 0xfeff:
			return -1
		case !Covers(r):
			return missing
		}
		return r
	}, strings.ToValidUTF8(s, string(missing)))
}

// Glue is the space at which a line is never broken; it prints as an ordinary one.
const Glue = "\u00a0"

// Wrap breaks a text into lines no wider than width at its spaces, not at Glue; a longer word stands
// alone.
func Wrap(s string, h float64, bold bool, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Split(s, " ") {
		if word == "" {
			continue
		}
		word = strings.ReplaceAll(word, Glue, " ")
		next := word
		if line != "" {
			next = line + " " + word
		}
		if line != "" && Width(next, h, bold) > width {
			lines = append(lines, line)
			next = word
		}
		line = next
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
