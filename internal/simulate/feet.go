package simulate

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

const (
	foot = 0.3048 // metres, exactly
	inch = foot / 12
)

// feetText writes a length as feet and inches to the nearest sixteenth, and gives what was
// written, in metres: 17' 1 1/4.
func feetText(value float64) (text string, typed float64) {
	n := int(math.Round(value / inch * 16))
	return feetOf(n/192, n%192), float64(n) * inch / 16
}

// feetOf writes feet and sixteenths of an inch.
func feetOf(feet, sixteenths int) string {
	text := fmt.Sprintf("%d' %d", feet, sixteenths/16)
	part, den := sixteenths%16, 16
	if part == 0 {
		return text
	}
	for part%2 == 0 {
		part, den = part/2, den/2
	}
	return text + fmt.Sprintf(" %d/%d", part, den)
}

// feetValue is the length that feetText writes, in metres. Inches may have two digits, the first
// of them 0.
func feetValue(text string) float64 {
	feet, rest, _ := strings.Cut(text, "' ")
	whole, part, _ := strings.Cut(rest, " ")
	inches := number(whole)
	if top, bottom, ok := strings.Cut(part, "/"); ok {
		inches += number(top) / number(bottom)
	}
	return number(feet)*foot + inches*inch
}

func number(text string) float64 {
	f, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("simulate: typed a figure that cannot be read: " + text)
	}
	return f
}
