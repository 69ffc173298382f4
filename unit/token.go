package unit

import (
	"math/big"
	"strings"
	"unicode/utf8"
)

// longest is the most bytes that a length, an angle or a slope can have; more is no figure.
const longest = 64

// plain spells typographic signs as the ones on every keyboard.
var plain = strings.NewReplacer(
	"′", "'", "’", "'", "‘", "'", "ʹ", "'", "´", "'", "`", "'",
	"″", `"`, "”", `"`, "“", `"`, "‟", `"`, "„", `"`, "ʺ", `"`,
	"−", "-", "–", "-", "‐", "-", "‑", "-", "⁄", "/", "º", "°",
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// token is a number, a word of letters, or one sign. gap: white space stands before it.
type token struct {
	kind byte // 'n' number, 'w' word, else the sign itself; 0 at the end
	text string
	gap  bool
}

// split cuts typed text into tokens; ok is false where a sign is not one of ours.
func split(text string) (out []token, ok bool) {
	s := strings.ReplaceAll(plain.Replace(text), "''", `"`)
	gap := false
	for len(s) > 0 {
		if s[0] == ' ' {
			gap, s = true, s[1:]
			continue
		}
		t := token{gap: gap}
		gap = false
		switch n := numeral(s); {
		case n > 0:
			t.kind, t.text = 'n', s[:n]
		case letters(s) > 0:
			t.kind, t.text = 'w', strings.ToLower(s[:letters(s)])
			s = s[letters(s):]
			out = append(out, t)
			continue
		case strings.HasPrefix(s, "°"):
			t.kind, t.text = 'd', "°"
		case strings.IndexByte(`'"-+/:%`, s[0]) >= 0:
			t.kind, t.text = s[0], s[:1]
		default:
			return nil, false
		}
		s = s[len(t.text):]
		out = append(out, t)
	}
	return out, true
}

// numeral is the length of the decimal number at the head of s: digits, a point, digits.
func numeral(s string) int {
	digits, i := 0, 0
	for point := false; i < len(s); i++ {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
			digits++
		case c == '.' && !point:
			point = true
		default:
			if digits == 0 {
				return 0
			}
			return i
		}
	}
	if digits == 0 {
		return 0
	}
	return i
}

func letters(s string) int {
	i := 0
	for i < len(s) && (s[i]|0x20) >= 'a' && (s[i]|0x20) <= 'z' {
		i++
	}
	return i
}

// whole says that a numeral has no decimal point.
func (t token) whole() bool { return t.kind == 'n' && !strings.Contains(t.text, ".") }

// rat is the exact value of a numeral.
func (t token) rat() *big.Rat {
	r, ok := new(big.Rat).SetString(t.text)
	if !ok {
		return new(big.Rat)
	}
	return r
}

// start checks what every kind of figure must be: some text, valid, not too long, no decimal
// comma, not a name for "no number". It gives the tokens without their sign.
func start(text, expected string) (toks []token, negative bool, err error) {
	trimmed := strings.TrimSpace(text)
	switch low := strings.ToLower(strings.TrimLeft(trimmed, "+-−.")); {
	case trimmed == "":
		return nil, false, fail(Empty, text, expected)
	case len(trimmed) > longest || !utf8.ValidString(trimmed):
		return nil, false, fail(Unreadable, strings.ToValidUTF8(trimmed, "?"), expected)
	case low == "nan" || low == "inf" || low == "infinity":
		return nil, false, fail(NotFinite, trimmed, "a finite number")
	}
	if better, found := decimalComma(trimmed); found {
		return nil, false, fail(DecimalComma, trimmed, better)
	}
	toks, ok := split(trimmed)
	if !ok || len(toks) == 0 {
		return nil, false, fail(Unreadable, trimmed, expected)
	}
	if toks[0].kind == '-' || toks[0].kind == '+' {
		negative, toks = toks[0].kind == '-', toks[1:]
	}
	if len(toks) == 0 {
		return nil, false, fail(Unreadable, trimmed, expected)
	}
	return toks, negative, nil
}

// decimalComma finds a comma beside a digit and writes the text with a point. Where a point is
// there already, or there are several commas, the commas group thousands and go.
func decimalComma(s string) (string, bool) {
	i := strings.IndexByte(s, ',')
	if i <= 0 || i+1 >= len(s) || !digit(s[i-1]) || !digit(s[i+1]) {
		return "", false
	}
	if strings.Count(s, ",") > 1 || strings.Contains(s, ".") {
		return strings.ReplaceAll(s, ",", ""), true
	}
	return s[:i] + "." + s[i+1:], true
}

func digit(c byte) bool { return c >= '0' && c <= '9' }
