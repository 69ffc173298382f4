package examples_test

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// moon has a segmental arc at both ends between square shoulders. A string from A to B runs along
// one long side; what it reaches is read by offsets and one tie or two, the other side by ties
// from A, B and a third peg. At the far station the offset stood 3° off square. Of the joints
// between shoulders and arcs, all kinked, the book leaves one unsaid.
func moon(t *testing.T) (book, truth []byte) {
	f := simulate.Roman(8.5, 5.0, 0.80, 1.25, 1.25)
	d := begin(26044, f, []int{5, 1, 6, 1, 5, 1, 6, 1}, plane.Point{X: -6.0, Y: -3.2}, plane.Point{X: 6.1, Y: -3.1}, plane.Point{X: 0.7, Y: 4.4})
	d.sigma, d.ppm, d.definition = 0.003, 200, 0.003

	d.say(moonHead)
	for range 3 {
		d.tie("A", "B", "")
	}
	d.tie("A", "C", "")
	d.tie("B", "C", "")
	d.say("# offsets from the string A to B, as far as the tape was handy\n")
	far := d.farStation()
	for _, m := range d.order {
		if d.at[m].Y > reach {
			continue
		}
		skew := 0.0
		if m == far {
			skew = 3 * math.Pi / 180
		}
		d.offset(m, skew)
	}
	d.say("# ties: what the string does not reach from A, B and C, the rest from A and B\n")
	for _, m := range d.order {
		d.tie("A", m, "")
		d.tie("B", m, "")
		if d.at[m].Y > reach {
			d.tie("C", m, "")
		}
	}
	d.say("# across the ends, and both diagonals of the body\n")
	for _, p := range d.corners() {
		d.tie(p[0], p[1], "")
	}
	d.say(moonTail)
	d.say(d.moonRuns())
	return []byte(d.book.String()), d.truth(t, nil)
}

// reach is the longest offset that was read, metres.
const reach = 3.0

// farStation is the mark within reach whose foot lies furthest from A.
func (d *day) farStation() string {
	best := ""
	for _, m := range d.order {
		if d.at[m].Y <= reach && d.at[m].Y > 1.5 && (best == "" || d.at[m].X > d.at[best].X) {
			best = m
		}
	}
	return best
}

// offset reads a mark from the string A to B with an optical square, the tape turned by skew from
// square: the foot then lies left·tan(skew) too far along, and the tape reads left/cos(skew).
func (d *day) offset(m string, skew float64) {
	p := d.at[m]
	along, left := math.Hypot(0.007, d.definition), math.Hypot(0.005, d.definition)
	e, f := along*d.noise.NormFloat64(), left*d.noise.NormFloat64()
	right := fmt.Sprintf("%.3f", p.X+e)
	typed := fmt.Sprintf("%.3f", p.X+p.Y*math.Tan(skew)+e)
	fmt.Fprintf(&d.book, "- {offset: %s, line: A B, at: %s, left: %.3f, sigma: [7 mm, 5 mm]}\n", m, typed, p.Y/math.Cos(skew)+f)
	if skew != 0 {
		d.plant(d.number(), "unknown", right, typed)
	}
}

// corners are pairs of marks: the corners of the body across and along, and the ends of each arc.
func (d *day) corners() [][2]string {
	var first []string // first mark of each run
	for _, r := range d.runs {
		first = append(first, r.Marks[0])
	}
	var out [][2]string
	for i, r := range d.runs {
		if r.Kind == "arc" {
			out = append(out, [2]string{r.Marks[0], r.Marks[len(r.Marks)-1]})
		}
		if r.Kind == "straight" && r.Length > 5 {
			out = append(out, [2]string{first[i], first[(i+4)%len(first)]})
		}
	}
	return out
}

// moonRuns writes the true runs; every joint is a kink, and the last one of an arc stays unsaid.
func (d *day) moonRuns() string {
	text, arcs := "", 0
	for _, r := range d.runs {
		if r.Kind == "arc" {
			arcs++
		}
		said := !(r.Kind == "arc" && arcs == 2)
		text += "    - " + simulate.Run{Kind: r.Kind, Marks: r.Marks, Joint: "kink"}.Entry(said) + "\n"
	}
	return text
}

// The skewed offset lies where three degrees put it.
func TestFarStationIsSkewed(t *testing.T) {
	s := truthOf(t, "double-moon")
	if len(s.Planted) != 1 {
		t.Fatalf("%d mistakes planted", len(s.Planted))
	}
	read, _ := strconv.ParseFloat(s.Planted[0].Read, 64)
	typed, _ := strconv.ParseFloat(s.Planted[0].Typed, 64)
	// 52 mm for each metre at 3°; the offset at the far station is 1.5 to 3 m long
	if by := typed - read; by < 0.052*1.5 || by > 0.053*reach {
		t.Errorf("the foot lies %.3f m off", by)
	}
}

const moonHead = `# Double Moon: segmental arcs at both ends, 26 marks by offsets and ties. Invented.
brimline: 1
job: {name: Double Moon, ref: 26-044, measured: 2026-06-02, start: "08:30", end: "10:10", by: crew 3, alone: false, weather: "dry, light wind"}
units: {length: m}
tools:
  tape: {sigma: 3 mm, ppm: 200, serial: S-7}   # steel tape
marks:
  A: {kind: peg}
  B: {kind: peg}
  C: {kind: peg, note: lawn on the other long side}
readings:
- {note: "string from A to B along the side; offsets with an optical square"}
# the base, then the third peg
`

const moonTail = `- {note: "slide legs and diving stand at the deep end, still to be placed"}
lines:
  rim:
    closed: true
    edge: nose
    state: found
    definition: 3 mm
    runs:
`
