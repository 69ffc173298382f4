package draft

import (
	"cmp"
	"slices"
	"strings"

	"brimline/survey"
)

// inTable puts marks in the order of tables: pegs and lasting marks as they came, then the others
// by name, r2 before r10, so that one is found without searching.
func inTable(r *survey.Result, marks []string) []string {
	rank := func(m string) int {
		if k := r.Marks[m].Kind; k == peg || k == benchmark {
			return 0
		}
		return 1
	}
	out := slices.Clone(marks)
	slices.SortStableFunc(out, func(a, b string) int {
		if c := cmp.Compare(rank(a), rank(b)); c != 0 || rank(a) == 0 {
			return c
		}
		return byNumber(a, b)
	})
	return out
}

// byNumber compares names with the figures in them as numbers.
func byNumber(a, b string) int {
	for a != "" && b != "" {
		wordA, numA, restA := head(a)
		wordB, numB, restB := head(b)
		if c := cmp.Or(cmp.Compare(wordA, wordB), cmp.Compare(len(numA), len(numB)), cmp.Compare(numA, numB)); c != 0 {
			return c
		}
		a, b = restA, restB
	}
	return cmp.Compare(len(a), len(b))
}

// head takes the letters that a name begins with and the number after them, without leading zeros.
func head(s string) (word, number, rest string) {
	i := strings.IndexAny(s, "0123456789")
	if i < 0 {
		return s, "", ""
	}
	k := i
	for k < len(s) && s[k] >= '0' && s[k] <= '9' {
		k++
	}
	return s[:i], strings.TrimLeft(s[i:k], "0"), s[k:]
}
