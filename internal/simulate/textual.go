package simulate

import (
	"strconv"
	"strings"
)

// swaps are the texts with two neighbouring digits exchanged that differ from the text. A
// decimal point may stand between the two. Of feet and inches the inches 10 become 01, which is
// typed 1; fractions stay.
func swaps(text string) []string {
	if strings.Contains(text, "'") {
		return feetSwaps(text)
	}
	var out []string
	for i := range len(text) - 1 {
		k := i + 1
		if text[k] == '.' && k+1 < len(text) {
			k++
		}
		if isDigit(text[i]) && isDigit(text[k]) && text[i] != text[k] {
			b := []byte(text)
			b[i], b[k] = b[k], b[i]
			out = append(out, string(b))
		}
	}
	return natural(out)
}

func feetSwaps(text string) []string {
	feet, rest, _ := strings.Cut(text, "' ")
	whole, part, _ := strings.Cut(rest, " ")
	if part != "" {
		part = " " + part
	}
	var out []string
	for _, f := range swaps(feet) {
		out = append(out, f+"' "+rest)
	}
	if whole == "10" {
		out = append(out, feet+"' 1"+part)
	}
	return out
}

// lookalikes are the texts with one 6 and 9, or one 1 and 7, taken for each other.
func lookalikes(text string) []string {
	if feet, rest, ok := strings.Cut(text, "' "); ok {
		var out []string
		for _, f := range lookalikes(feet) {
			out = append(out, f+"' "+rest)
		}
		whole, part, _ := strings.Cut(rest, " ")
		for _, w := range lookalikes(whole) {
			if n, err := strconv.Atoi(w); err == nil && n < 12 {
				out = append(out, strings.TrimSpace(feet+"' "+w+" "+part))
			}
		}
		return out
	}
	var out []string
	for i := range len(text) {
		if k := strings.IndexByte("6917", text[i]); k >= 0 {
			out = append(out, text[:i]+string("9671"[k])+text[i+1:])
		}
	}
	return natural(out)
}

// natural leaves out texts that begin with a needless 0.
func natural(texts []string) []string {
	var out []string
	for _, t := range texts {
		if p := strings.TrimPrefix(t, "-"); len(p) < 2 || p[0] != '0' || p[1] == '.' {
			out = append(out, t)
		}
	}
	return out
}
