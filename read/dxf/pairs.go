package dxf

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// pair is a group code with its value and the line that the value stands on.
type pair struct {
	code  int
	value string
	line  int
}

// pairs splits a file into its pairs.
func pairs(src []byte) ([]pair, error) {
	lines := strings.Split(strings.TrimRight(string(src), "\r\n"), "\n")
	if len(lines)%2 != 0 {
		return nil, fmt.Errorf("dxf: %d lines do not make pairs of code and value", len(lines))
	}
	out := make([]pair, 0, len(lines)/2)
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			return nil, fmt.Errorf("dxf: line %d: %q is no group code", i+1, clip(lines[i]))
		}
		out = append(out, pair{code, strings.TrimRight(lines[i+1], "\r"), i + 2})
	}
	return out, nil
}

func clip(s string) string {
	s = strings.TrimRight(s, "\r")
	return s[:min(len(s), 40)]
}

// number is the value as one that is finite.
func (p pair) number() (float64, error) {
	x, err := strconv.ParseFloat(strings.TrimSpace(p.value), 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, fmt.Errorf("dxf: line %d: %q is no number", p.line, clip(p.value))
	}
	return x, nil
}

// whole is the value as a whole number.
func (p pair) whole() (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(p.value))
	if err != nil {
		return 0, fmt.Errorf("dxf: line %d: %q is no whole number", p.line, clip(p.value))
	}
	return n, nil
}
