package examples_test

import (
	"math"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// plum is a rectangle of 30 by 15 feet, leaning by 0.2°, taped in feet and inches from two pegs
// 20 feet apart. Its corners are marked where the straights would meet; the corners themselves
// are rounded by some 50 mm. One reading is a foot short, and of one the inches lost a digit.
func plum(t *testing.T) (book, truth []byte) {
	const length, width, radius = 9.144, 4.572, 0.05
	lean := 0.2 * math.Pi / 180
	f := simulate.Rounded(simulate.Box4(length, width, lean), []float64{0, 0, 0, 0})
	d := begin(26014, f, []int{5, 3, 5, 3}, plane.Point{X: -3.048, Y: -4.1}, plane.Point{X: 3.048, Y: -4.1})
	d.sigma, d.ppm, d.definition, d.feet = 0.003, 300, 0.003, true

	d.say(plumHead)
	for range 3 {
		d.tie("A", "B", "")
	}
	d.say("- {side: r1, of: A B, hand: left}   # facing the pool from the pegs, A is at the left hand\n")
	d.say("# round the rim, clockwise from the mark nearest to A\n")
	for _, m := range d.order {
		if m == "r14" { // 19' 10 3/4 typed 19' 1 3/4
			d.wrong("A", m, "", "unknown", func(text string) string { return strings.Replace(text, " 10 ", " 1 ", 1) })
		} else {
			d.tie("A", m, "")
		}
		if m == "r5" {
			d.wrong("B", m, "", "foot", func(text string) string { return strings.Replace(text, "32'", "31'", 1) })
		} else {
			d.tie("B", m, "")
		}
	}
	d.say("# tapes between marks, to see whether it closes\n")
	for _, p := range [][2]string{
		{"r2", "r10"}, {"r5", "r13"}, {"r3", "r12"}, {"r4", "r11"}, {"r1", "r6"}, {"r15", "r8"}, {"r2", "r5"}, {"r13", "r10"},
		{"r16", "r9"}, {"r14", "r7"}, {"r14", "r5"}, {"r14", "r10"},
	} {
		d.tie(p[0], p[1], "")
	}
	d.say(plumTail)
	round := map[string]any{
		"radius":    radius,
		"perimeter": rounded(d.outline.Length() - (8-2*math.Pi)*radius),
		"area":      rounded(d.outline.Area() - (4-math.Pi)*radius*radius),
		"note":      "with the corners rounded as built (formula of a right angle), which the book does not say",
	}
	return []byte(d.book.String()), d.truth(t, map[string]any{"rounded_corners": round})
}

const plumHead = `# Plain Plum: rectangle, 16 marks from two pegs. Invented.
brimline: 1
job: {name: Plain Plum, ref: 26-014, measured: 2026-04-18, start: "09:10", end: "09:55", by: crew 1, alone: true, weather: "dry, still"}
units: {length: ft}          # read as feet' inches, to the sixteenth
place: {shallow: r3, deep: r11}
tools:
  tape: {sigma: 3 mm, ppm: 300, serial: S-2}   # steel tape in air, pulled by hand
marks:
  A: {kind: peg, note: 6 ft back from the long side}
  B: {kind: peg, note: in line with A along the terrace}
readings:
# the base, taped three times
`

const plumTail = `- {note: "corners are rounded by about 2 in; marked where two straight edges laid along the sides meet", of: r2}
- {note: "ladder and two rails at the deep end, still to be placed"}
lines:
  rim:
    closed: true
    edge: nose
    state: found
    definition: 3 mm         # bullnose, plumbed with a small square
    runs:
    - {straight: [r2, r3, r4, r5], joint: kink}
    - {straight: [r5, r6, r7, r8, r9, r10], joint: kink}
    - {straight: [r10, r11, r12, r13], joint: kink}
    - {straight: [r13, r14, r15, r16, r1, r2], joint: kink}
`
