package fieldbook

import (
	"strconv"
	"strings"
	"unicode"
)

// blank says what cannot stand in a name: white space and signs that do not print.
func blank(r rune) bool { return unicode.IsSpace(r) || !unicode.IsPrint(r) }

func among(word string, list []string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// digits says that a word is digits and nothing else.
func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

// quoted shows typed text in a message, shortened.
func quoted(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return strconv.Quote(s)
}

// nearest is the known word at most two slips (one in words of up to four letters) from a
// mistyped one; "" if there is none. A slip is a letter too many, missing, wrong or swapped with
// its neighbour: the restricted edit distance of F. J. Damerau, Communications of the ACM 7
// (1964) 171–176.
func nearest(word string, list []string) string {
	if len(word) > 30 {
		return ""
	}
	best, at := "", 3
	if len(word) <= 4 {
		at = 2
	}
	for _, w := range list {
		if n := slips(strings.ToLower(word), w); n < at {
			best, at = w, n
		}
	}
	return best
}

func slips(a, b string) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			wrong := 1
			if a[i-1] == b[j-1] {
				wrong = 0
			}
			n := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+wrong)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				n = min(n, rows[i-2][j-2]+1)
			}
			rows[i][j] = n
		}
	}
	return rows[len(a)][len(b)]
}
