package sheet

import "strings"

// superior and inferior figures, for the two halves of a fraction.
const (
	superior = "⁰¹²³⁴⁵⁶⁷⁸⁹"
	inferior = "₀₁₂₃₄₅₆₇₈₉"
)

// Typeset turns the typed forms of a length into print: 17' 1 1/4" becomes 17′ 1¹⁄₄″, with a true
// fraction; a hyphen before a figure becomes a minus. Other text stays as it is.
func Typeset(s string) string {
	r := []rune(s)
	var b strings.Builder
	for i := 0; i < len(r); {
		n, d, end := fractionAt(r, i)
		switch {
		case end > i:
			b.WriteString(figures(n, superior) + "⁄" + figures(d, inferior))
			i = end
			continue
		case r[i] == ' ' && i > 0 && digit(r[i-1]):
			if _, _, end := fractionAt(r, i+1); end > i+1 {
				i++
				continue
			}
			b.WriteRune(' ')
		case r[i] == '\'' && i > 0 && digit(r[i-1]):
			b.WriteRune('′')
		case r[i] == '"' && i > 0 && (digit(r[i-1])):
			b.WriteRune('″')
		case r[i] == '-' && i+1 < len(r) && digit(r[i+1]) && (i == 0 || r[i-1] == ' '):
			b.WriteRune('−')
		default:
			b.WriteRune(r[i])
		}
		i++
	}
	return b.String()
}

// fractionAt reads digits, a slash and digits that stand free at i; end is i when there are none.
func fractionAt(r []rune, i int) (num, den string, end int) {
	if i > 0 && (digit(r[i-1]) || r[i-1] == '/' || r[i-1] == '.') {
		return "", "", i
	}
	slash := i
	for slash < len(r) && digit(r[slash]) {
		slash++
	}
	stop := slash + 1
	for stop < len(r) && digit(r[stop]) {
		stop++
	}
	wrong := slash == i || slash >= len(r) || r[slash] != '/' || stop == slash+1
	if wrong || stop < len(r) && (r[stop] == '/' || r[stop] == '.') {
		return "", "", i
	}
	return string(r[i:slash]), string(r[slash+1 : stop]), stop
}

func digit(r rune) bool { return r >= '0' && r <= '9' }

// figures writes digits with those of another set.
func figures(digits, set string) string {
	to := []rune(set)
	return strings.Map(func(r rune) rune { return to[r-'0'] }, digits)
}
