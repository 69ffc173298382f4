package examples_test

import (
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// oath is an oval of four arcs that its owner calls an ellipse, taped with a glass-fibre tape
// from two pegs that have the pool on their right. In the column of B r15 was missed.
// The seed is one with noise of ordinary size: a demonstration should not begin with a rare day.
func oath(t *testing.T) (book, truth []byte) {
	f := simulate.Oval(9.60, 5.10, 2.200)
	d := begin(26051, f, []int{6, 6, 6, 6}, plane.Point{X: 3.1, Y: -4.3}, plane.Point{X: -2.8, Y: -4.2})
	d.sigma, d.ppm, d.definition = 0.004, 500, 0.003

	d.say(oathHead)
	for range 2 {
		d.tie("A", "B", "")
	}
	d.say("- {side: r1, of: A B, hand: right}   # A is at the right hand, facing the pool\n# all from A, then all from B\n")
	for _, m := range d.order {
		d.tie("A", m, "")
	}
	d.slipped("B", 14)
	d.say("# the base once more on leaving\n")
	d.tie("A", "B", "")
	d.say("# check tapes: long axis, short axis, both diagonals, across each end, beside the short and the long axis\n")
	for _, p := range [][2]string{{"r9", "r21"}, {"r3", "r15"}, {"r6", "r18"}, {"r12", "r24"}, {"r6", "r12"}, {"r18", "r24"}, {"r2", "r14"}, {"r7", "r23"}} {
		d.tie(p[0], p[1], "")
	}
	d.say(oathTail)
	d.say("    - {any: [" + strings.Join(append(append([]string(nil), d.order...), "r1"), ", ") + "], joint: tangent}\n")
	return []byte(d.book.String()), d.truth(t, nil)
}

// slipped adds the column of a peg in which the mark number row (counted from 0) was missed: from
// there on each row holds the reading of the next mark, and the last has none.
func (d *day) slipped(peg string, row int) {
	var texts []string
	for _, m := range d.order {
		texts = append(texts, d.typed(d.read(peg, m)))
	}
	slip := expected{Code: "slip"}
	for i, m := range d.order[:len(d.order)-1] {
		if i < row {
			d.put(peg, m, texts[i], "")
			continue
		}
		n := d.put(peg, m, texts[i+1], "")
		d.note(n, "slip", texts[i], texts[i+1])
		slip.Readings = append(slip.Readings, n)
	}
	d.expected = append(d.expected, slip)
}

const oathHead = `# Oval Oath: oval, 24 marks from two pegs. Invented.
brimline: 1
job: {name: Oval Oath, ref: 26-047, measured: 2026-06-11, start: "10:05", end: "11:00", by: crew 1, alone: true, weather: overcast}
units: {length: m}
tools:
  tape: {sigma: 4 mm, ppm: 500, serial: G-1}   # glass-fibre tape, 30 m
marks:
  A: {kind: peg}
  B: {kind: peg}
readings:
- {note: the owner says it is an ellipse}
# the base
`

const oathTail = `- {note: deck only 0.55 m wide beside the hedge}
lines:
  rim:
    closed: true
    edge: nose
    state: found
    definition: 3 mm
    runs:                    # nobody knows what the edge is made of
`
