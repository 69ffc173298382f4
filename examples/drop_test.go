package examples_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// Sizes of Long Drop in metres: the nose, the legs of its cut corners along and across, the opening
// of the steps, the track behind the nose, and how much further back it stands at the deep end,
// where the wall leans out: the tape in the track reads twice that more than a parallel would.
const (
	dropLong, dropWide   = 10.97, 5.49
	legAlong, legAcross  = 1.22, 1.19
	stepsWide            = 2.44
	trackBack, trackLean = 0.032, 0.0155
)

// drop is a rectangle with cut corners, taped along the nose of its coping from two pegs and a third.
// The liner's track lies behind the nose, where no tape from a peg gets; a tape in the track checks
// it, once over the shallow half and once all round. The second disagrees and is right.
func drop(t *testing.T) (book, truth []byte) {
	d := begin(26121, cutBox(dropLong, dropWide, legAlong, legAcross), []int{6, 2, 2, 2, 6, 2, 1, 2},
		plane.Point{X: -3.3, Y: -4.9}, plane.Point{X: 3.4, Y: -5.0}, plane.Point{X: 0.4, Y: 4.6})
	d.sigma, d.ppm, d.definition = 0.0025, 100, 0.002
	d.steps(stepsWide)

	d.say(dropHead)
	for range 3 {
		d.tie("A", "B", "")
	}
	d.tie("A", "C", "")
	d.tie("B", "C", "")
	d.say("- {side: r1, of: A B, hand: left}\n# A and B to every mark of the nose, clockwise; C to every second\n")
	for i, m := range d.order {
		d.tie("A", m, "")
		d.tie("B", m, "")
		if i%2 == 0 {
			d.tie("C", m, "")
		}
	}
	d.say("# the opening of the steps, by a rule\n")
	d.line("width: s1 s2", "", stepsWide, widthSD, "s1", "s2")
	d.say("# checks: the chord of each cut corner, both diagonals\n")
	ends := d.cuts()
	for i := range ends {
		d.tie(ends[i][0], ends[i][1], ", check: true")
	}
	for i := range 2 {
		d.tie(ends[i][0], ends[i+2][0], "")
		d.tie(ends[i][1], ends[i+2][1], "")
	}
	d.say("# the tape laid in the track: round the shallow end, then all round\n")
	more := d.inTrack(t)
	d.planted, d.expected = []planted{}, []expected{}
	d.dropWater()
	for k, v := range d.heights() { // order-free: JSON sorts
		more[k] = v
	}
	more["volume"] = math.Round(dropVolume(cutBox(dropLong, dropWide, legAlong, legAcross).Path())*1e3) / 1e3
	d.say(dropTail)
	for _, r := range d.runs {
		d.say("    - " + simulate.Run{Kind: r.Kind, Marks: r.Marks, Joint: "kink"}.Entry(true) + "\n")
	}
	d.say("  track: {from: rim, outward: 32 mm, sigma: 0.5 mm, edge: track, corners: mitre}\n" + d.dropBreaks)
	return []byte(d.book.String()), d.truth(t, more)
}

// cutBox is a rectangle whose corners are cut, the legs of the cuts being along its length and across.
func cutBox(length, width, along, across float64) simulate.Figure {
	x, y := length/2, width/2
	return simulate.Rounded([]plane.Point{
		{X: along - x, Y: -y}, {X: x - along, Y: -y}, {X: x, Y: across - y}, {X: x, Y: y - across},
		{X: x - along, Y: y}, {X: along - x, Y: y}, {X: -x, Y: y - across}, {X: -x, Y: across - y},
	}, make([]float64, 8))
}

// steps marks the opening of the steps in the middle of the end that has no other marks.
func (d *day) steps(wide float64) {
	for i := range d.runs {
		r := &d.runs[i]
		if len(r.Marks) > 2 {
			continue
		}
		a, b := d.at[r.Marks[0]], d.at[r.Marks[1]]
		in := (r.Length - wide) / 2 / r.Length
		d.at["s1"], d.at["s2"] = plane.Lerp(a, b, in), plane.Lerp(b, a, in)
		for k, m := range d.order {
			if m == r.Marks[0] {
				d.order = append(d.order[:k+1], append([]string{"s1", "s2"}, d.order[k+1:]...)...)
				break
			}
		}
		r.Marks = []string{r.Marks[0], "s1", "s2", r.Marks[1]}
		return
	}
}

// cuts are the ends of each cut corner, clockwise.
func (d *day) cuts() [][2]string {
	var out [][2]string
	for _, r := range d.runs {
		if math.Abs(r.Length-math.Hypot(legAlong, legAcross)) < 1e-6 {
			out = append(out, [2]string{r.Marks[0], r.Marks[len(r.Marks)-1]})
		}
	}
	return out
}

// inTrack reads the tape in the track and gives what the answer sheet says of it.
func (d *day) inTrack(t *testing.T) map[string]any {
	track, err := beside(d.outline.Reverse(), trackBack)
	if err != nil {
		t.Fatal(err)
	}
	from, to := d.middles()
	part, _ := track.Between(d.at[from], d.at[to])
	const lies = ", sigma: 4 mm, check: true"
	d.line(fmt.Sprintf("along: %s %s, line: track", from, to), lies, part, 0.004, from, to)
	whole := track.Length() + 2*trackLean
	first := d.line("round: track", lies, whole, 0.004)
	again := d.line("round: track", lies+", note: laid anew", whole, 0.004)
	return map[string]any{
		"outline": d.outlined(), "lines": map[string]float64{"track": rounded(whole)}, "disagrees": []string{first, again},
	}
}

// middles are the marks half-way along both long sides, in the order in which the line comes from
// one to the other past the steps.
func (d *day) middles() (from, to string) {
	passed := false
	for k := range 2 * len(d.runs) {
		r := d.runs[k%len(d.runs)]
		switch mid := r.Marks[len(r.Marks)/2]; {
		case strings.HasPrefix(r.Marks[1], "s"):
			passed = from != ""
		case r.Length < 5:
		case passed:
			return from, mid
		default:
			from = mid
		}
	}
	return from, to
}

// By a formula for a ring with sharp corners a parallel at d is longer by 2d times the sum of the
// tangents of half its turns; the track is 31 mm longer than that.
func TestTrackLeans(t *testing.T) {
	cut := math.Atan2(legAcross, legAlong)
	turns := 2 * 4 * (math.Tan(cut/2) + math.Tan((math.Pi/2-cut)/2))
	s := truthOf(t, "long-drop")
	if by := s.Lines["track"] - s.Perimeter - turns*trackBack; math.Abs(by-0.031) > 2e-6 {
		t.Errorf("the track is %.6f m longer than the parallel", by)
	}
	r := answerOf(t, "long-drop")
	track := r.Lines["track"]
	if by := s.Lines["track"] - *track.Length; by < 3*(*track.LengthSD) {
		t.Errorf("the derived track is %.1f mm short, sd %.1f mm: nobody would see it", 1e3*by, 1e3**track.LengthSD)
	}
}

const dropHead = `# Long Drop: rectangle with cut corners, 25 marks from two pegs and a third, a tape in the track. Invented.
brimline: 1
job: {name: Long Drop, ref: 26-117, measured: 2026-05-19, start: "08:50", end: "14:30", by: crew 2, alone: false, weather: "dry, still, 17 degrees"}
units: {length: m}
tools:
  tape: {sigma: 2.5 mm, ppm: 100, serial: S-9}   # steel tape, one at each end
marks:
  A: {kind: peg}
  B: {kind: peg}
  C: {kind: peg, note: on the lawn across}
readings:
- {note: the pool is full; the liner is to be new}
# the base, then the third peg
`

const dropTail = `- {note: "track read by rule from the nose at s1, s2 and beside the steps: 32, 32 and 33 mm; nobody held the rule at the deep end"}
- {note: the walls lean out at the deep end}
lines:
  rim:
    closed: true
    edge: nose
    state: found
    definition: 2 mm
    runs:
`
