package examples_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// day is a measuring day with known truth. Everything lies in the frame of the pegs.
type day struct {
	noise      *rand.Rand
	at         map[string]plane.Point
	order      []string // marks clockwise, r1 nearest to A
	runs       []truthRun
	outline    plane.Path
	frame      plane.Rigid // from the frame of the figure
	sigma, ppm float64     // of the tape
	definition float64     // of the marks of the rim
	feet       bool
	book       strings.Builder

	who, date string // who reads; empty where the book does not say
	clock     int    // seconds of the day
	planted   []planted
	expected  []expected

	z, surface map[string]float64 // true heights of marks and water surfaces, above the first mark
	dropBreaks string             // what the book says of the floor
}

// truthRun is a run as truth.json has it.
type truthRun struct {
	Kind   string   `json:"kind"`
	Marks  []string `json:"marks"`
	Length float64  `json:"length"`
	Radius float64  `json:"radius,omitempty"`
	Sweep  float64  `json:"sweep,omitempty"` // degrees, + to the left
}

// begin stakes a figure given counter-clockwise with evenly spaced marks, so many steps on each of its
// pieces, and brings it to the frame of the pegs, the first two being A and B.
func begin(seed uint64, f simulate.Figure, steps []int, pegs ...plane.Point) *day {
	d := &day{noise: rand.New(rand.NewPCG(seed, 1)), at: map[string]plane.Point{}}
	turn := -plane.Angle(pegs[1].Sub(pegs[0]))
	frame := plane.Turned(turn, pegs[0].Turn(turn).Mul(-1))
	for i, p := range pegs {
		d.at[string(rune('A'+i))] = frame.Apply(p)
	}
	d.at["A"], d.at["B"] = plane.Point{}, plane.Point{X: pegs[0].Dist(pegs[1])}
	f = f.Move(frame)
	d.outline, d.frame = f.Path(), frame

	clockwise := f.Reverse()
	var marks []plane.Point
	var starts []int
	for i, x := range clockwise {
		n := steps[len(steps)-1-i]
		starts = append(starts, len(marks))
		for k := range n {
			marks = append(marks, x.Segs[0].At(float64(k)/float64(n)))
		}
	}
	d.name(clockwise, marks, starts)
	return d
}

// name numbers the marks from the one nearest to A and lists the runs from the first joint.
func (d *day) name(clockwise simulate.Figure, marks []plane.Point, starts []int) {
	n, first := len(marks), 0
	for i, p := range marks {
		if p.Len() < marks[first].Len() {
			first = i
		}
	}
	called := func(i int) string { return "r" + strconv.Itoa((i-first+2*n)%n+1) }
	for i := range n {
		m := "r" + strconv.Itoa(i+1)
		d.order = append(d.order, m)
		d.at[m] = marks[(first+i)%n]
	}
	lead := 0 // the piece whose first mark comes first
	for i, s := range starts {
		if (s-first+n)%n < (starts[lead]-first+n)%n {
			lead = i
		}
	}
	for i := range clockwise {
		k := (lead + i) % len(clockwise)
		s := clockwise[k].Segs[0]
		end := n
		if k+1 < len(starts) {
			end = starts[k+1]
		}
		run := truthRun{Kind: clockwise[k].Kind, Length: rounded(s.Length())}
		for m := starts[k]; m <= end; m++ {
			run.Marks = append(run.Marks, called(m%n))
		}
		if run.Kind == "arc" {
			run.Radius, run.Sweep = rounded(math.Abs(s.Radius())), rounded(s.Sweep()*180/math.Pi)
		}
		d.runs = append(d.runs, run)
	}
}

// say adds lines to the book as they are.
func (d *day) say(text string) { d.book.WriteString(text) }

// tie reads a tape and adds the entry; it gives its number.
func (d *day) tie(a, b, more string) string { return d.put(a, b, d.typed(d.read(a, b)), more) }

// read reads a tape, with noise.
func (d *day) read(a, b string) float64 {
	length := d.at[a].Dist(d.at[b])
	v := d.sigma*d.sigma + math.Pow(d.ppm*1e-6*length, 2)
	for _, m := range []string{a, b} {
		if onRim(m) {
			v += d.definition * d.definition
		}
	}
	return length + math.Sqrt(v)*d.noise.NormFloat64()
}

// put adds the entry of a tie as typed; it gives its number.
func (d *day) put(a, b, text, more string) string {
	fmt.Fprintf(&d.book, "- {tie: %s %s, is: %s, tool: tape%s%s}\n", a, b, text, more, d.signed())
	return d.number()
}

// number is that of the reading last added.
func (d *day) number() string { return strconv.Itoa(strings.Count(d.book.String(), "\n- {")) }

// signed says who reads and when, where somebody is named: a reading every 70 s.
func (d *day) signed() string {
	if d.who == "" {
		return ""
	}
	s := d.clock
	d.clock += 70
	return fmt.Sprintf(", time: \"%sT%02d:%02d:%02d+02:00\", by: %s", d.date, s/3600, s/60%60, s%60, d.who)
}

// typed writes a length in metres, or in feet and inches to the nearest sixteenth.
func (d *day) typed(m float64) string {
	if !d.feet {
		return strconv.FormatFloat(m, 'f', 3, 64)
	}
	n := int(math.Round(m / 0.0254 * 16))
	text := fmt.Sprintf("%d' %d", n/192, n%192/16)
	if part, den := n%16, 16; part > 0 {
		for part%2 == 0 {
			part, den = part/2, den/2
		}
		text += fmt.Sprintf(" %d/%d", part, den)
	}
	return `"` + text + `"`
}

// truth is the answer sheet. more is added to it.
func (d *day) truth(t *testing.T, more map[string]any) []byte {
	t.Helper()
	marks := map[string][2]float64{}
	for m, p := range d.at {
		marks[m] = [2]float64{rounded(p.X), rounded(p.Y)}
	}
	sheet := map[string]any{
		"frame": "metres; A at the origin, B on +x; runs and marks clockwise seen from above; sweep in degrees, + to the left",
		"marks": marks, "area": rounded(d.outline.Area()), "perimeter": rounded(d.outline.Length()), "runs": d.runs,
	}
	if d.planted != nil {
		sheet["planted"], sheet["expected"] = d.planted, d.expected
	}
	for k, v := range more {
		sheet[k] = v
	}
	b, err := json.MarshalIndent(sheet, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return compact(b)
}

// rounded keeps micrometres; a zero loses its sign.
func rounded(v float64) float64 { return math.Round(v*1e6)/1e6 + 0 }

// compact puts short lists on one line.
func compact(b []byte) []byte {
	var out strings.Builder
	flat := false
	lines := strings.Split(string(b), "\n")
	for i, l := range lines {
		if strings.HasSuffix(l, "[") {
			next := strings.TrimSpace(lines[i+1])
			flat = next != "{"
		}
		switch {
		case flat && strings.HasPrefix(strings.TrimSpace(l), "]"):
			flat = false
			out.WriteString(strings.TrimSpace(l) + "\n")
		case flat && strings.HasSuffix(l, "["):
			out.WriteString(l)
		case flat:
			text := strings.TrimSpace(l)
			if strings.HasSuffix(text, ",") {
				text += " "
			}
			out.WriteString(text)
		default:
			out.WriteString(l + "\n")
		}
	}
	return []byte(out.String())
}
