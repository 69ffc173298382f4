package examples_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// How well the joints of round corners are found along the edge, and the edge of the planting at
// all, metres.
const catSlide, catSoft = 0.030, 0.020

// cornerCat is an L with round corners, taped from two pegs and a third in its elbow. Two corners
// cannot be reached: one behind the raised wall, like the others; one under the spa, whose radius a
// template told.
func cornerCat(t *testing.T) (book, truth []byte) {
	f := simulate.Ell(12.0, 4.0, 5.0, 7.5, 0.60, 0.30)
	d := begin(26064, f, []int{8, 2, 3, 2, 4, 2, 3, 2, 4, 2, 6, 2},
		plane.Point{X: -4.4, Y: -5.9}, plane.Point{X: 4.2, Y: -6.1}, plane.Point{X: 2.1, Y: 2.6})
	d.sigma, d.ppm, d.definition = 0.003, 200, 0.003
	for _, c := range []string{"c1", "c2"} {
		d.unreached(d.arcAt(catPlaces[c]), c)
	}
	for name, p := range catPlaces {
		d.at[name] = d.frame.Apply(p)
	}
	arcs := d.roundCorners()
	for _, a := range arcs {
		d.slid(catSlide, a[0], a[2])
	}
	d.planting()

	d.say(catHead)
	for range 3 {
		d.tie("A", "B", "")
	}
	d.tie("A", "C", "")
	d.tie("B", "C", "")
	d.say("- {side: r1, of: A B, hand: left}\n")
	d.catTies()
	d.say("# diagonals: between the middles of the round corners\n")
	for i := range arcs {
		for j := i + 1; j < len(arcs); j++ {
			if d.at[arcs[i][1]].Dist(d.at[arcs[j][1]]) > 4.5 {
				d.tie(arcs[i][1], arcs[j][1], "")
			}
		}
	}
	free := d.catTapes()
	d.planted, d.expected = []planted{}, []expected{}
	d.catLevels()
	d.say(catTail)
	d.say(d.catRuns())
	d.say(fmt.Sprintf(catEnd, catBuiltSays, d.meets("c1"), arcs[0][1], arcs[1][1], d.meets("c2")))
	more := d.heights()
	more["outline"], more["free"], more["volume"] = d.outlined(), free, math.Round(catVolume(f.Path())*1e3)/1e3
	return []byte(d.book.String()), d.truth(t, more)
}

// catPlaces are in the frame of the figure: the corners out of reach, the feet of a handrail, the
// edge of the planting.
var catPlaces = map[string]plane.Point{
	"c1": {X: -6, Y: 3.75}, "c2": {X: 6, Y: -3.75},
	"h1": {X: -4.62, Y: -3.93}, "h2": {X: -4.05, Y: -3.93},
	"p1": {X: 0.4, Y: 1.12}, "p2": {X: 1.9, Y: 1.05}, "p3": {X: 3.6, Y: 1.08}, "p4": {X: 5.3, Y: 1.18},
}

// arcAt is the run whose middle lies nearest to a corner.
func (d *day) arcAt(corner plane.Point) int {
	best, least := 0, math.Inf(1)
	for i, r := range d.runs {
		by := d.at[r.Marks[len(r.Marks)/2]].Dist(d.frame.Apply(corner))
		if r.Kind == "arc" && by < least {
			best, least = i, by
		}
	}
	return best
}

// roundCorners are the marks of each arc that was reached: start, middle, end. First come those of
// the outward corners.
func (d *day) roundCorners() [][]string {
	var out, in [][]string
	for _, r := range d.runs {
		switch {
		case r.Kind != "arc" || len(r.Marks) != 3:
		case r.Sweep < 0:
			out = append(out, r.Marks)
		default:
			in = append(in, r.Marks)
		}
	}
	return append(out, in...)
}

// planting moves the marks of the planting's edge off it, as far as nobody can tell.
func (d *day) planting() {
	for _, m := range []string{"p1", "p2", "p3", "p4"} {
		d.at[m] = d.at[m].Add(d.frame.Apply(plane.Point{Y: catSoft * d.noise.NormFloat64()}).Sub(d.frame.Apply(plane.Point{})))
	}
}

// catTies reads the marks of the rim from A and B, from C what it sees, then what stands on the deck.
func (d *day) catTies() {
	d.say("# A, B and C to every mark of the nose, clockwise\n")
	for _, m := range d.order {
		d.tie("A", m, "")
		d.tie("B", m, "")
		d.tie("C", m, "")
	}
	d.say("# the edge of the planting, then the feet of the handrail\n")
	for _, m := range []string{"p1", "p2", "p3", "p4", "h1", "h2"} {
		d.tie("A", m, "")
		d.tie("B", m, "")
		d.tie("C", m, "")
	}
}

// catTapes reads what lies beside the rim, and the tape along its nose; it gives the free deck read.
func (d *day) catTapes() map[string]float64 {
	rim := d.outline
	d.say("# from the rail to the rim; the deck that is free before the planting\n")
	for _, m := range []string{"h1", "h2"} {
		d.line("clear: "+m+", line: rim", "", math.Abs(rim.Foot(d.at[m]).Right), clearSD, m)
	}
	free := map[string]float64{}
	bed := plane.Polyline([]plane.Point{d.at["p1"], d.at["p2"], d.at["p3"], d.at["p4"]}, false)
	for _, m := range d.order {
		if f := bed.Foot(d.at[m]); math.Abs(f.Right) < 1 && f.Past == 0 && f.Share > 0 && f.Share < 1 {
			free[m] = rounded(math.Abs(f.Right))
			d.line("clear: "+m+", until: planting", "", free[m], clearSD, m)
		}
	}
	d.say("# the tape laid along the nose, past the corner before the wall, as a check\n")
	from, to := d.pastCorner()
	length, _ := rim.Reverse().Between(d.at[from], d.at[to])
	d.line(fmt.Sprintf("along: %s %s, line: rim", from, to), ", check: true", length, alongDefault(length), from, to)
	return free
}

// pastCorner are marks on both sides of the first outward corner that was reached.
func (d *day) pastCorner() (from, to string) {
	corner := d.roundCorners()[0]
	for i, r := range d.runs {
		if r.Kind == "arc" && r.Marks[0] == corner[0] {
			n := len(d.runs)
			before, after := d.runs[(i+n-1)%n].Marks, d.runs[(i+1)%n].Marks
			return before[len(before)/2], after[len(after)/2]
		}
	}
	return corner[0], corner[2]
}

// catRuns are the runs of the rim; a corner out of reach is no run of its own.
func (d *day) catRuns() string {
	text := ""
	for _, r := range d.runs {
		marks := strings.Join(r.Marks, ", ")
		switch {
		case len(r.Marks) == 1:
		case r.Kind == "arc":
			text += fmt.Sprintf("    - {arc: [%s], joint: tangent, slide: 30 mm}\n", marks)
		case r.Marks[0][0] == 'c':
			text += fmt.Sprintf("    - {straight: [%s]}\n", marks)
		default:
			text += fmt.Sprintf("    - {straight: [%s], joint: tangent}\n", marks)
		}
	}
	return text
}

// meets are the marks of the sides that meet at a corner, two on each, the outermost.
func (d *day) meets(corner string) string {
	var in, on string
	for _, r := range d.runs {
		n := len(r.Marks)
		switch {
		case n < 3 || r.Kind == "arc":
		case r.Marks[n-1] == corner:
			in = r.Marks[1] + ", " + r.Marks[n-2]
		case r.Marks[0] == corner:
			on = r.Marks[1] + ", " + r.Marks[n-2]
		}
	}
	return "[[" + in + "], [" + on + "]]"
}

const catHead = `# Corner Cat: L with round corners, two of them out of reach, from two pegs and a third. Invented.
brimline: 1
job: {name: Corner Cat, ref: 26-064, measured: 2026-06-23, start: "07:40", end: "10:40", by: crew 3, alone: false, weather: "sun, still"}
units: {length: m}
tools:
  tape: {sigma: 3 mm, ppm: 200, serial: S-3}   # steel tape, both ends held
  level: {sigma: 1 mm, serial: L-2}
marks:
  A: {kind: peg}
  B: {kind: peg}
  C: {kind: peg, note: in the elbow behind the planting}
  h1: {kind: feature, note: handrail}
  h2: {kind: feature, note: handrail}
readings:
- {note: "joints of corner and side by eye, with a straight edge laid along the side"}
# the base, then the third peg
`

const catTail = `lines:
  rim:
    closed: true
    edge: nose
    state: found
    definition: 3 mm
    runs:
`

const catEnd = `  bed:
    edge: other                # where the planting begins, as well as one can say
    runs:
    - {soft: [p1, p2, p3, p4], sigma: 20 mm}
%sunreached:
  c1: {meet: %s, like: [%s, %s], sigma: 5 mm}   # behind the end of the wall
  c2: {meet: %s, round: 0.60, sigma: 5 mm}        # under the spa, by a template
`
