package mistake

import "brimline/unit"

// Digits is two adjacent digits swapped, also across the point: 4.63 for 4.36.
type Digits struct{}

// Lookalike is 6 and 9, or 1 and 7, taken for each other.
type Lookalike struct{}

// Code of the closed list.
func (Digits) Code() string { return "digits" }

// Code of the closed list.
func (Lookalike) Code() string { return "lookalike" }

// True is every swap of neighbours that still reads as a length.
func (Digits) True(text string, _ float64, u unit.Unit) []Was {
	var out []Was
	b := []byte(text)
	for i := range b {
		k := i + 1
		if k < len(b) && b[k] == '.' {
			k++
		}
		if k >= len(b) || !digit(b[i]) || !digit(b[k]) || b[i] == b[k] {
			continue
		}
		if b[k] == '0' && k == i+1 && leads(b, i) {
			continue // nobody writes 01.2
		}
		out = reread(out, b, i, k, b[k], b[i], u, "swapped")
	}
	return out
}

// True is every digit replaced by the one that looks like it.
func (Lookalike) True(text string, _ float64, u unit.Unit) []Was {
	var out []Was
	b := []byte(text)
	for i, c := range b {
		if j, ok := looks(c); ok {
			out = reread(out, b, i, i, j, j, u, "taken for each other")
		}
	}
	return out
}

func looks(c byte) (byte, bool) {
	switch c {
	case '6':
		return '9', true
	case '9':
		return '6', true
	case '1':
		return '7', true
	case '7':
		return '1', true
	}
	return 0, false
}

// reread parses the text with two of its bytes set, and keeps it where it is a length.
func reread(out []Was, b []byte, i, k int, bi, bk byte, u unit.Unit, word string) []Was {
	c := append([]byte(nil), b...)
	c[i], c[k] = bi, bk
	l, err := unit.ParseLength(string(c), u)
	if err != nil || l <= 0 {
		return out
	}
	return append(out, Was{l, string(b[i]) + " and " + string(other(b, i, k, bk)) + " " + word})
}

// other is the second digit of the sentence: the neighbour, or what a digit was taken for.
func other(b []byte, i, k int, bk byte) byte {
	if i == k {
		return bk
	}
	return b[k]
}

// leads says whether a digit is the first of its number.
func leads(b []byte, i int) bool { return i == 0 || !digit(b[i-1]) && b[i-1] != '.' }

func digit(c byte) bool { return c >= '0' && c <= '9' }
