package main

import (
	"context"
	"math"
	"slices"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/survey"
)

// levelPlans are ways to read the heights of a rim in which every mark is read more often than fixes
// it. The second session has fewer freeboards than the first.
var levelPlans = []simulate.LevelPlan{
	{Called: "two set-ups and the water", Setups: 2, Boards: 8, Second: 4},
	{Called: "one set-up and the water", Setups: 1, Boards: 8, Second: 3},
	{Called: "a set-up and rises round the rim", Setups: 1, Closed: true, Boards: 4, Second: 2},
}

// Sizes of the mistakes planted, metres.
const (
	staffWrong = 0.1
	waterRise  = 0.03
)

// detectableBy is how far beyond its smallest detectable error a mistake must lie to be promised.
const detectableBy = 1.25

// levelTally counts over days.
type levelTally struct {
	heights, held             int // heights with a truth, and those within 1.96 sd of it
	staffs, shown, said       int // staffs misread beyond detectable; suspect or doubtful; with the right figure among what is likely
	spared, named             int // of marks that are read twice more; suspect as such, with the right figure first
	waters, moved, whole      int // waters moved; named with the amount; and just the readings of the second session
	clean, quiet              int // days without a mistake, and those of which none is said
	goodSuspect, goodReadings int // in days with a staff misread
	sum                       float64
	missed                    string
}

func levelDays(c config) *report {
	r := &report{}
	var all levelTally
	for i, p := range levelPlans {
		var t levelTally
		for k, one := range pools(c.n, func(k int) levelTally { return levelDay(c.kind(i)+uint64(k), p) }) {
			t.add(one)
			if one.missed != "" {
				r.miss(c, "%s, seed %d: %s", p.Called, c.kind(i)+uint64(k), one.missed)
			}
		}
		t.tell(r, p.Called)
		all.add(t)
	}
	r.atLeast("all", "staff wrong by 100 mm where detectable: found", all.shown, all.staffs, 95)
	r.atLeast("all", "its right figure named", all.said, all.staffs, 95)
	r.atLeast("all", "at marks read twice more: it alone is suspect, the right figure first", all.named, all.spared, 95)
	r.atLeast("all", "water 30 mm higher or lower: named with the amount", all.moved, all.waters, 95)
	return r
}

func (t *levelTally) add(o levelTally) {
	t.heights, t.held = t.heights+o.heights, t.held+o.held
	t.staffs, t.shown, t.said = t.staffs+o.staffs, t.shown+o.shown, t.said+o.said
	t.spared, t.named = t.spared+o.spared, t.named+o.named
	t.waters, t.moved, t.whole = t.waters+o.waters, t.moved+o.moved, t.whole+o.whole
	t.clean, t.quiet = t.clean+o.clean, t.quiet+o.quiet
	t.goodSuspect, t.goodReadings = t.goodSuspect+o.goodSuspect, t.goodReadings+o.goodReadings
	t.sum += o.sum
}

func (t *levelTally) tell(r *report, group string) {
	r.share(group, "heights within 1.96 sd of the truth", t.held, t.heights, 93, 97)
	r.figure(group, "mean of (height − truth)²/sd²", t.sum/float64(t.heights), "", 0.9, 1.1)
	r.atLeast(group, "days without a mistake of which none is said", t.quiet, t.clean, 95)
	r.plain(group, "staff wrong by 100 mm beyond 1.25 × detectable, of all", t.staffs, t.clean)
	r.atLeast(group, "suspect or doubtful", t.shown, t.staffs, 95)
	r.atLeast(group, "with the right figure among what is likely", t.said, t.staffs, 95)
	r.plain(group, "of those at marks read twice more", t.spared, t.staffs)
	if t.spared > 0 {
		r.atLeast(group, "there it alone is suspect, with the right figure first", t.named, t.spared, 95)
	}
	r.atMost(group, "good readings suspect then", t.goodSuspect, t.goodReadings, 0.5)
	r.atLeast(group, "water moved by 30 mm: named with the amount", t.moved, t.waters, 95)
	r.plain(group, "with just the readings of the second session", t.whole, t.waters)
}

// levelDay reads one day three times over: as it was, with a staff misread, with a water that moved.
func levelDay(seed uint64, p simulate.LevelPlan) levelTally {
	t := levelTally{}
	sign := 1.0
	if seed%2 == 1 {
		sign = -1
	}
	clean := simulate.Levels(seed, p, 0, 0)
	r := levelled(clean)
	t.covered(clean, r)
	t.misread(simulate.Levels(seed, p, sign*staffWrong, 0), r)
	t.risen(simulate.Levels(seed, p, 0, sign*waterRise))
	return t
}

func levelled(d simulate.LevelDay) *survey.Result {
	b, err := fieldbook.Parse("levels.yaml", d.Book)
	if err != nil {
		return nil
	}
	r, err := survey.Run(context.Background(), survey.Input{Book: &b}, nil)
	if err != nil {
		return nil
	}
	return r
}

// covered counts the heights that lie where they say.
func (t *levelTally) covered(d simulate.LevelDay, r *survey.Result) {
	t.clean++
	if r == nil {
		t.missed = "unsolved"
		return
	}
	if len(r.Mistakes) == 0 {
		t.quiet++
	}
	for _, m := range d.Marks[1:] {
		t.heights++
		z, sd := r.Marks[m].Z, r.Marks[m].SZ
		if z == nil || sd == nil {
			continue
		}
		u := (*z - d.Truth[m]) / *sd
		if t.sum += u * u; math.Abs(u) <= 1.96 {
			t.held++
		}
	}
}

// misread asks whether the staff is named, with what it should have been. Whether it can be is told by
// the day without the mistake: where the mark is read once more it shows that one of the two is wrong,
// where twice more also which.
func (t *levelTally) misread(d simulate.LevelDay, clean *survey.Result) {
	r := levelled(d)
	if r == nil || clean == nil {
		t.missed = "unsolved"
		return
	}
	for k, x := range r.Readings {
		if x.N != d.Wrong {
			t.goodReadings++
			if x.State == "suspect" {
				t.goodSuspect++
			}
			continue
		}
		was := clean.Readings[k]
		if was.Detectable == nil || detectableBy**was.Detectable > staffWrong {
			continue
		}
		t.staffs++
		if x.State == "suspect" || x.State == "doubtful" {
			t.shown++
		}
		right := slices.IndexFunc(x.Likely, func(l survey.Likely) bool {
			return l.Code == "staff" && l.Value != nil && math.Abs(*l.Value-d.Was) < 0.0005
		})
		if right >= 0 {
			t.said++
		}
		if timesRead(clean, x.Marks[0]) < 3 {
			continue
		}
		if t.spared++; right == 0 && x.State == "suspect" {
			t.named++
		} else {
			t.missed = "staff " + d.Wrong + " is " + x.State + ", " + saidOf(r)
		}
	}
}

// timesRead is how many readings touch a mark.
func timesRead(r *survey.Result, mark string) int {
	n := 0
	for _, x := range r.Readings {
		if slices.Contains(x.Marks, mark) {
			n++
		}
	}
	return n
}

// risen asks whether the water is named, with the amount to four of its standard deviations.
func (t *levelTally) risen(d simulate.LevelDay) {
	r := levelled(d)
	if r == nil {
		t.missed = "unsolved"
		return
	}
	t.waters++
	for _, m := range r.Mistakes {
		if m.Code != "water-moved" || len(m.Edit) == 0 {
			continue
		}
		if off := amount(r, m) + d.Moved; math.Abs(off) < 0.005 {
			t.moved++
			if slices.Equal(m.Readings, d.Second) {
				t.whole++
			}
			return
		}
	}
	t.missed = "water: " + saidOf(r)
}

// amount is by how much the first freeboard of an edit would be another.
func amount(r *survey.Result, m survey.Mistake) float64 {
	for _, e := range m.Edit {
		for _, x := range r.Readings {
			if x.N == e.N && x.Kind == "water" {
				return x.Value - *e.Value
			}
		}
	}
	return math.NaN()
}
