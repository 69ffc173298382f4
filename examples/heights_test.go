package examples_test

import (
	"fmt"
	"math"

	"brimline/plane"
)

// Standard deviations of readings of heights that a book gives none for, metres: the defaults that
// `brimline tools` prints.
const (
	staffSD, boardSD, rodSD, behindSD = 0.001, 0.0015, 0.005, 0.003
)

// Soundings by a graduated pole from a string: of the depth, and of the place along and across.
const (
	poleSD, stringSD = 0.006, 0.015
	poleSays         = ", sigma: [6 mm, 15 mm, 15 mm]"
)

// raisedTo puts a mark at a true height, metres above the first.
func (d *day) raisedTo(mark string, z float64) {
	if d.z == nil {
		d.z, d.surface = map[string]float64{}, map[string]float64{}
	}
	d.z[mark] = z
}

// stamped is the time of a reading of heights, one a minute.
func (d *day) stamped() string {
	s := d.clock
	d.clock += 60
	return fmt.Sprintf(", time: \"%sT%02d:%02d:00+02:00\"", d.date, s/3600, s/60%60)
}

// board reads how far a surface lies under a mark; it gives the reading's number and figure.
func (d *day) board(water, mark string) (n string, read float64) {
	is := d.z[mark] - d.surface[water] + boardSD*d.noise.NormFloat64()
	d.say(fmt.Sprintf("- {water: %s, under: %s, is: %.3f%s}\n", water, mark, is, d.stamped()))
	return d.number(), is
}

// sound reads a depth from the string between two marks, at the place where the mark stands; it gives the
// reading's number and figure.
func (d *day) sound(mark, water, a, b string) (n string, read float64) {
	way := d.at[b].Sub(d.at[a]).Unit()
	off := d.at[mark].Sub(d.at[a])
	is := d.surface[water] - d.z[mark] + poleSD*d.noise.NormFloat64()
	at := off.Dot(way) + stringSD*d.noise.NormFloat64()
	left := way.Cross(off) + stringSD*d.noise.NormFloat64()
	hand := "left"
	if left < 0 {
		hand, left = "right", -left
	}
	d.say(fmt.Sprintf("- {depth: %s, below: %s, is: %.3f, line: %s %s, at: %.2f, %s: %.2f%s%s}\n", mark, water, is, a, b, at, hand, left, poleSays, d.stamped()))
	return d.number(), is
}

// behind reads where the wall is, seen from a plumb line hung at a mark.
func (d *day) behind(mark string, down, outward float64) {
	d.say(fmt.Sprintf("- {plumb: %s, down: %.2f, outward: %.0f mm}\n", mark, down, 1000*(outward+behindSD*d.noise.NormFloat64())))
}

// rod reads down the wall from the nose to its foot.
func (d *day) rod(mark string, drop float64) {
	d.say(fmt.Sprintf("- {wall: %s, from: nose, to: wall-foot, is: %.3f}\n", mark, drop+rodSD*d.noise.NormFloat64()))
}

// staffed is what a staff on a mark reads from a level whose line of sight rises; it is not yet written.
func (d *day) staffed(setup, mark string, line, sight, rises float64) (text string, is float64) {
	is = line + rises*sight - d.z[mark] + staffSD*d.noise.NormFloat64()
	return fmt.Sprintf("- {staff: %s, setup: %s, is: %%.3f, sight: %.1f, tool: level%s}\n", mark, setup, sight, d.stamped()), math.Round(is*1000) / 1000
}

// inFigure is a place in the frame of the figure.
func (d *day) inFigure(p plane.Point) plane.Point { return d.frame.Inverse().Apply(p) }

// nearestMark is the mark of the rim nearest to a place of the figure.
func (d *day) nearestMark(p plane.Point) string {
	best, at := math.Inf(1), ""
	for _, m := range d.order {
		if l := d.inFigure(d.at[m]).Dist(p); l < best {
			best, at = l, m
		}
	}
	return at
}

// heights are the true heights for the answer sheet, above the first mark, by name.
func (d *day) heights() map[string]any {
	out, surfaces := map[string]float64{}, map[string]float64{}
	for m, z := range d.z { // order-free: JSON sorts
		out[m] = rounded(z)
	}
	for w, z := range d.surface { // order-free: JSON sorts
		surfaces[w] = rounded(z)
	}
	return map[string]any{"heights": out, "surfaces": surfaces}
}
