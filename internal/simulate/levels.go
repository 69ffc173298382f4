package simulate

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"time"
)

// LevelPlan says how the heights of a rim are read on a day: from how many set-ups of a level every
// mark, and how many marks the freeboard is read at in the first session and in the second.
type LevelPlan struct {
	Called                 string
	Setups, Boards, Second int
	Closed                 bool // rises from mark to mark round the rim as well
}

// LevelDay is the field book of such a day with known heights, metres above the first mark.
type LevelDay struct {
	Book   []byte
	Truth  map[string]float64
	Marks  []string
	Wrong  string   // n of the reading misread, "" none
	Was    float64  // what it should have been
	Moved  float64  // rise of the water before the second session
	Second []string // n of the readings against the water then
}

// streamLevels is the stream of levelling days, apart from those of pools.
const streamLevels = 40

// Standard deviations of a levelling day, metres: common practice, no source.
const (
	staffSD = 0.001
	boardSD = 0.0015
	riseSD  = 0.002
	soundSD = 0.008
)

// levelStart is when the first session begins; the second follows five hours later. Invented.
var levelStart = time.Date(2026, 5, 14, 9, 0, 0, 0, time.UTC)

// levelBook writes the readings of a day one after another.
type levelBook struct {
	r    *rand.Rand
	at   time.Time
	line []levelLine
}

// levelLine is one reading: words with %s where the value stands.
type levelLine struct {
	words   string
	value   float64
	staff   bool
	surface bool
}

// read adds a reading of what is true, with noise of sd once it is written to the millimetre.
func (l *levelBook) read(words string, truth, sd float64, staff, surface bool) {
	v := truth + l.r.NormFloat64()*math.Sqrt(sd*sd-1e-6/12)
	l.line = append(l.line, levelLine{words, math.Round(v*1000) / 1000, staff, surface})
}

// Levels makes a day: 8 to 14 marks on a rim out of level by up to 40 mm. staff is the error of one
// staff reading drawn, moved the rise of the water between the sessions; 0 for none.
func Levels(seed uint64, p LevelPlan, staff, moved float64) LevelDay {
	l := &levelBook{r: stream(seed, streamLevels, p.Called), at: levelStart}
	d := LevelDay{Truth: map[string]float64{}, Moved: moved}
	for k := range 8 + l.r.IntN(7) {
		name := fmt.Sprintf("r%d", k+1)
		d.Marks = append(d.Marks, name)
		if d.Truth[name] = 0; k > 0 {
			d.Truth[name] = between(l.r, -0.02, 0.02)
		}
	}
	l.staffs(d, p)
	water := -between(l.r, 0.08, 0.2)
	l.session(d, p.Boards, water, 1)
	second := len(l.line)
	l.at = levelStart.Add(5 * time.Hour)
	l.session(d, p.Second, water+moved, 2)
	for k := second; k < len(l.line); k++ {
		if l.line[k].surface {
			d.Second = append(d.Second, fmt.Sprint(k+1))
		}
	}
	if staff != 0 {
		l.misread(&d, staff)
	}
	d.Book = l.text()
	return d
}

// staffs reads every mark from every set-up, and rises round the rim where the plan says so.
func (l *levelBook) staffs(d LevelDay, p LevelPlan) {
	for s := range p.Setups {
		sight := between(l.r, 1.2, 1.6)
		for _, m := range d.Marks {
			l.read(fmt.Sprintf("staff: %s, setup: S%d, is: %%s", m, s+1), sight-d.Truth[m], staffSD, true, false)
		}
	}
	for k, m := range d.Marks {
		if next := d.Marks[(k+1)%len(d.Marks)]; p.Closed {
			l.read(fmt.Sprintf("level: %s %s, rise: %%s", m, next), d.Truth[next]-d.Truth[m], riseSD, false, false)
		}
	}
}

// session reads the freeboard at so many marks and four depths below the same surface.
func (l *levelBook) session(d LevelDay, boards int, water float64, number int) {
	timed := func() string {
		l.at = l.at.Add(2 * time.Minute)
		return ", time: \"" + l.at.Format(time.RFC3339) + "\""
	}
	for k := range boards {
		m := d.Marks[k*len(d.Marks)/boards]
		l.read("water: w1, under: "+m+", is: %s"+timed(), d.Truth[m]-water, boardSD, false, true)
	}
	for k := range 4 {
		f := fmt.Sprintf("f%d%d", number, k+1)
		d.Truth[f] = water - between(l.r, 0.9, 2.0)
		l.read("depth: "+f+", below: w1, is: %s"+timed(), water-d.Truth[f], soundSD, false, true)
	}
}

// misread makes one staff reading wrong.
func (l *levelBook) misread(d *LevelDay, by float64) {
	var staffs []int
	for k := range l.line {
		if l.line[k].staff {
			staffs = append(staffs, k)
		}
	}
	k := pick(l.r, staffs)
	d.Wrong, d.Was = fmt.Sprint(k+1), l.line[k].value
	l.line[k].value += by
}

// text is the book: sigmas are stated, so that the figures promised are those of the noise drawn.
func (l *levelBook) text() []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "brimline: 1\nrules: {sigma: {staff: %g, water: %g, level: %g, depth: %g}}\nreadings:\n", staffSD, boardSD, riseSD, soundSD)
	for _, x := range l.line {
		fmt.Fprintf(&b, "- {"+x.words+"}\n", fmt.Sprintf("\"%.3f\"", x.value))
	}
	return []byte(b.String())
}
