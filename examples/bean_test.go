package examples_test

import (
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// bean is a kidney of four tangent arcs, taped from two pegs on the side of its back, every
// fourth mark also from a third peg beyond the waist. Another helper holds the tapes from r9 to
// r12 and takes A for B; their first mark is tied to the third peg as well.
// The seed is one with noise of ordinary size, as that of oath is.
func bean(t *testing.T) (book, truth []byte) {
	f := simulate.Kidney(2.40, 1.80, 5.000, 6.10, 1.50)
	d := begin(26037, f, []int{9, 6, 4, 9},
		plane.Point{X: -3.2, Y: -4.9}, plane.Point{X: 2.6, Y: -5.1}, plane.Point{X: 0.6, Y: 4.2})
	d.sigma, d.ppm, d.definition = 0.003, 300, 0.003

	d.say(beanHead)
	for range 3 {
		d.tie("A", "B", "")
	}
	d.tie("A", "C", "")
	d.tie("B", "C", "")
	d.say("- {side: r1, of: A B, hand: left}\n# A and B to every mark, clockwise; C to every fourth\n")
	d.who, d.date, d.clock = "Ash", "2026-05-06", 13*3600+31*60
	swapped := expected{Code: "columns"}
	for i, m := range d.order {
		if i < 8 || i > 11 {
			d.tie("A", m, "")
			d.tie("B", m, "")
		} else {
			swapped.Readings = append(swapped.Readings, d.exchanged(m)...)
		}
		if i%4 == 3 || i == 8 {
			d.tie("C", m, "")
		}
	}
	d.expected = append(d.expected, swapped)
	d.who = ""
	d.say("# across the waist, the long way, and over each lobe\n")
	for _, p := range [][2]string{{"r14", "r26"}, {"r7", "r20"}, {"r2", "r10"}, {"r17", "r24"}} {
		d.tie(p[0], p[1], "")
	}
	d.say(beanTail)
	d.say(d.arcs())
	return []byte(d.book.String()), d.truth(t, nil)
}

// exchanged adds the row of a mark with A and B exchanged by another helper, and gives the
// numbers of both readings.
func (d *day) exchanged(m string) []string {
	d.who = "Bo"
	a, b := d.typed(d.read("A", m)), d.typed(d.read("B", m))
	first, second := d.put("A", m, b, ""), d.put("B", m, a, "")
	d.note(first, "columns", a, b)
	d.note(second, "columns", b, a)
	d.who = "Ash"
	return []string{first, second}
}

// arcs writes the true runs, all tangent, as the book's.
func (d *day) arcs() string {
	text := ""
	for _, r := range d.runs {
		text += "    - " + simulate.Run{Kind: r.Kind, Marks: r.Marks, Joint: "tangent"}.Entry(true) + "\n"
	}
	return text
}

const beanHead = `# Bean Five: kidney, 28 marks from two pegs and a third. Invented.
brimline: 1
job: {name: Bean Five, ref: 26-031, measured: 2026-05-06, start: "13:20", end: "14:35", by: crew 2, alone: false, weather: "sun, light wind"}
units: {length: m}
tools:
  tape: {sigma: 3 mm, ppm: 300, serial: S-5}   # steel tape in air, one at each end
marks:
  A: {kind: peg}
  B: {kind: peg}
  C: {kind: peg, note: behind the planter at the waist}
readings:
- {note: tangent points were chalked first; the rest spaced by eye}
# the base, then the third peg
`

const beanTail = `- {note: planter stands within 0.6 m of the edge at the waist}
lines:
  rim:
    closed: true
    edge: nose
    state: found
    definition: 3 mm         # bullnose coping
    runs:                    # big lobe, waist, small lobe, back
`
