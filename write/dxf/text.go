package dxf

import (
	"fmt"
	"strings"
	"unicode/utf16"
)

// text is a line of letters as the release can hold it. R2000 takes every letter beyond ASCII as
// \U+ and four hexadecimal figures, letters beyond the first plane as two of them; a caret is
// written with a space after it, and two percent signs that would begin a code are taken apart. R12
// has codes for degree, plus-minus and diameter, plain letters for what resembles one, and a
// question mark for the rest.
func (p *printer) text(s string) string {
	if !p.modern() {
		return plainText(s)
	}
	codes := strings.Contains(s, "%%")
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '^':
			b.WriteString("^ ")
		case r == '%' && codes:
			b.WriteString("%%%")
		case r == '\\' || r > 0xffff:
			for _, u := range utf16.Encode([]rune{r}) {
				fmt.Fprintf(&b, `\U+%04X`, u)
			}
		case r > 0x7e:
			fmt.Fprintf(&b, `\U+%04X`, r)
		case r >= 0x20:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// alike are plain spellings of the letters that drawings use.
var alike = map[rune]string{
	'°': "%%d", '±': "%%p", 'Ø': "%%c", '⌀': "%%c",
	'−': "-", '–': "-", '—': "-", '×': "x", '·': ".", '′': "'", '″': `"`, '’': "'", '‘': "'", '“': `"`, '”': `"`,
	'⁄': "/", '²': "2", '³': "3", '…': "...", '\u00a0': " ",
}

// plainText is a text in the letters of R12. The figures of a fraction become plain ones, parted from
// the whole number before them.
func plainText(s string) string {
	const superior, inferior = "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉"
	var b strings.Builder
	last, codes := rune(0), strings.Contains(s, "%%")
	for i, r := range s {
		switch {
		case strings.ContainsRune(superior, r) && fraction(s[i:]):
			if last >= '0' && last <= '9' {
				b.WriteByte(' ')
			}
			b.WriteRune(figure(superior, r))
		case strings.ContainsRune(inferior, r):
			b.WriteRune(figure(inferior, r))
		case r == '%' && codes:
			b.WriteString("%%%")
		case alike[r] != "":
			b.WriteString(alike[r])
		case r < 0x20 || r > 0x7e:
			b.WriteByte('?')
		default:
			b.WriteRune(r)
		}
		last = r
	}
	return b.String()
}

// fraction says that a text begins with the upper figures of a fraction.
func fraction(s string) bool {
	rest := strings.TrimLeft(s, "⁰¹²³⁴⁵⁶⁷⁸⁹")
	return strings.HasPrefix(rest, "⁄")
}

// figure is the plain figure of one in a set.
func figure(set string, r rune) rune {
	for i, x := range []rune(set) {
		if x == r {
			return '0' + rune(i)
		}
	}
	return '?'
}
