package examples_test

import (
	"math"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// claim is a rectangle as built, the first of two measurings: two pegs, and three lasting marks
// that a later measuring can find again. No mistakes are planted.
func claim(t *testing.T) (book, truth []byte) {
	f := simulate.Rounded(simulate.Box4(8.0, 4.0, 0), []float64{0, 0, 0, 0})
	d := begin(26101, f, []int{4, 3, 4, 3}, plane.Point{X: -2.7, Y: -4.0}, plane.Point{X: 2.9, Y: -3.9})
	d.sigma, d.ppm, d.definition = 0.0025, 100, 0.002
	lasting := map[string]plane.Point{"k1": {X: -5.6, Y: 3.1}, "k2": {X: 0.4, Y: 4.2}, "k3": {X: 6.2, Y: 2.2}}
	stable := []string{"k1", "k2", "k3"}
	a, b := plane.Point{X: -2.7, Y: -4.0}, plane.Point{X: 2.9, Y: -3.9}
	turn := -plane.Angle(b.Sub(a))
	for _, k := range stable {
		d.at[k] = lasting[k].Sub(a).Turn(turn)
	}

	d.say(claimHead)
	for range 3 {
		d.tie("A", "B", "")
	}
	d.say("# the lasting marks, from both pegs and from each other\n")
	for i, k := range stable {
		d.tie("A", k, "")
		d.tie("B", k, "")
		d.tie(k, stable[(i+1)%3], "")
	}
	d.say("# round the rim, from both pegs and from the nearest lasting mark\n")
	for _, m := range d.order {
		d.tie("A", m, "")
		d.tie("B", m, "")
		d.tie(d.nearest(stable, m), m, "")
	}
	d.say("# both diagonals, and the base once more\n")
	d.tie(d.runs[0].Marks[0], d.runs[2].Marks[0], "")
	d.tie(d.runs[1].Marks[0], d.runs[3].Marks[0], "")
	d.tie("A", "B", "")
	d.say(claimTail)
	for _, r := range d.runs {
		d.say("    - " + simulate.Run{Kind: r.Kind, Marks: r.Marks, Joint: "kink"}.Entry(true) + "\n")
	}
	d.planted, d.expected = []planted{}, []expected{}
	return []byte(d.book.String()), d.truth(t, nil)
}

// nearest is the one of the names that lies nearest to a mark.
func (d *day) nearest(names []string, m string) string {
	best, least := "", math.Inf(1)
	for _, k := range names {
		if by := d.at[k].Dist(d.at[m]); by < least {
			best, least = k, by
		}
	}
	return best
}

const claimHead = `# Cold Claim, first measuring: a rectangle as built, 14 marks, three lasting marks. Invented.
brimline: 1
job: {name: "Cold Claim, first measuring", ref: 26-101, measured: 2026-03-24, start: "13:05", end: "14:30", by: crew 1, alone: false, weather: "overcast, 6 degrees"}
units: {length: m}
tools:
  tape: {sigma: 2.5 mm, ppm: 100, serial: S-2}   # steel tape, both ends held
marks:
  A: {kind: peg}
  B: {kind: peg}
  k1: {kind: benchmark, lasting: screw in the garage wall}
  k2: {kind: benchmark, lasting: bolt in the drain cover}
  k3: {kind: benchmark, lasting: screw in the gate post}
readings:
- {note: "measured as built, before the frost; to be compared with a later day"}
# the base, taped three times
`

const claimTail = `- {note: no movement seen at the coping}
lines:
  rim:
    closed: true
    edge: nose
    state: found
    definition: 2 mm
    runs:
`
