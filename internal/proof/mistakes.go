package main

import (
	"fmt"
	"math"
	"slices"

	"brimline/internal/simulate"
	"brimline/survey"
)

// beyond is how far above the smallest detectable size a planted mistake counts.
const beyond = 1.25

// valueWithin is how near the value named must come to the reading before the mistake, metres.
const valueWithin = 0.002

// rates counts what was said of planted mistakes and of good readings.
type rates struct {
	tried, solved   int
	planted, counts int // mistakes; those beyond the detectable size
	shown, suspect  int // of those that count
	spared          int // of those that count, at marks that can spare any two readings
	sparedShown     int // of these
	sparedSuspect   int
	alone, sole     int // of those that count, no other mistake at the same mark; of those suspect
	named           int // shown, of a listed kind
	rightCode       int // of those: the right code first, with the value before the mistake
	other, leftOpen int // shown, of no listed kind; of those: unknown first, without a value
	wrongSuspect    int // mistaken readings that are suspect, whatever their size
	wronglyNamed    int // good readings that are suspect; of a pool without solution one a mistake
	good            int
	goodSuspect     int
	goodDoubtful    int
	missed          []string
}

func (a *rates) add(b rates) {
	a.tried, a.solved = a.tried+b.tried, a.solved+b.solved
	a.planted, a.counts = a.planted+b.planted, a.counts+b.counts
	a.shown, a.suspect = a.shown+b.shown, a.suspect+b.suspect
	a.alone, a.sole = a.alone+b.alone, a.sole+b.sole
	a.spared, a.sparedShown, a.sparedSuspect = a.spared+b.spared, a.sparedShown+b.sparedShown, a.sparedSuspect+b.sparedSuspect
	a.named, a.rightCode = a.named+b.named, a.rightCode+b.rightCode
	a.other, a.leftOpen = a.other+b.other, a.leftOpen+b.leftOpen
	a.wrongSuspect, a.wronglyNamed, a.good = a.wrongSuspect+b.wrongSuspect, a.wronglyNamed+b.wronglyNamed, a.good+b.good
	a.goodSuspect, a.goodDoubtful = a.goodSuspect+b.goodSuspect, a.goodDoubtful+b.goodDoubtful
	a.missed = append(a.missed, b.missed...)
}

// judge counts over one case with mistakes in single readings. r is nil where it was not solved:
// then nothing was shown, and every good reading is blamed.
func judge(c simulate.Case, planted []simulate.Mistake, r *survey.Result) rates {
	a := rates{tried: 1, planted: len(planted), good: len(c.Readings) - len(planted)}
	wrong := map[string]bool{}
	for _, m := range planted {
		h := m.Hits[0]
		wrong[h.N] = true
		counts := math.Abs(h.Now-h.Was) > beyond*h.Detectable
		if counts {
			a.counts++
		}
		alone := counts && !shared(c, planted, h.Index)
		if alone {
			a.alone++
		}
		spared := counts && spares(c, h.Index)
		if spared {
			a.spared++
		}
		if r != nil && counts {
			x := byNumber(r, h.N)
			a.found(m, x)
			if spared && x != nil {
				a.seen(x.State)
			}
			if alone && x != nil && x.State == "suspect" {
				a.sole++
			}
		} else if counts {
			a.missed = append(a.missed, m.Kind+" in "+h.N+" unsolved")
		}
	}
	if r == nil {
		a.goodSuspect, a.goodDoubtful, a.wronglyNamed = a.good, a.good, a.planted
		return a
	}
	a.solved = 1
	var blamed []string
	for _, x := range r.Readings {
		switch {
		case wrong[x.N]:
			if x.State == "suspect" {
				a.wrongSuspect++
			}
		case x.State == "suspect":
			a.goodSuspect++
			a.wronglyNamed++
			blamed = append(blamed, x.N)
		case x.State == "doubtful":
			a.goodDoubtful++
		}
	}
	if len(blamed) > 0 {
		a.missed = append(a.missed, fmt.Sprintf("%d good readings suspected, among them %s", len(blamed), blamed[0]))
	}
	return a
}

// mustSpare is how many readings a mark must be able to lose, whichever they are.
const mustSpare = 2

// spares says that every mark of a reading fixes itself without any two of its readings.
func spares(c simulate.Case, index int) bool {
	for _, m := range c.Readings[index].Marks {
		if c.Spare(m) < mustSpare {
			return false
		}
	}
	return true
}

// seen counts the state of a mistaken reading at marks that can spare two.
func (a *rates) seen(state string) {
	switch state {
	case "suspect":
		a.sparedSuspect++
		a.sparedShown++
	case "doubtful":
		a.sparedShown++
	}
}

// shared says that another mistake touches a mark of the rim that this reading touches.
func shared(c simulate.Case, planted []simulate.Mistake, index int) bool {
	for _, m := range planted {
		if m.Hits[0].Index == index {
			continue
		}
		for _, p := range c.Readings[m.Hits[0].Index].Marks {
			if !slices.Contains(c.Pegs, p) && slices.Contains(c.Readings[index].Marks, p) {
				return true
			}
		}
	}
	return false
}

// found counts what was said of one mistaken reading that should show.
func (a *rates) found(m simulate.Mistake, x *survey.Reading) {
	h := m.Hits[0]
	if x == nil || (x.State != "suspect" && x.State != "doubtful") {
		a.missed = append(a.missed, m.Kind+" in "+h.N+": not shown ("+h.Before+" typed "+h.After+")")
		return
	}
	a.shown++
	if x.State == "suspect" {
		a.suspect++
	}
	if m.Kind == simulate.Unlisted {
		a.other++
		if len(x.Likely) > 0 && x.Likely[0].Code == "unknown" && x.Likely[0].Value == nil {
			a.leftOpen++
		}
		return
	}
	a.named++
	if len(x.Likely) > 0 && says(x.Likely[0], m) {
		a.rightCode++
		return
	}
	a.missed = append(a.missed, m.Kind+" in "+h.N+": "+h.Before+" typed "+h.After+", called "+called(x))
}

// says that an explanation is the mistake.
func says(l survey.Likely, m simulate.Mistake) bool {
	return l.Code == m.Kind && l.Value != nil && math.Abs(*l.Value-m.Hits[0].Was) <= valueWithin
}

func called(x *survey.Reading) string {
	if len(x.Likely) == 0 {
		return "nothing"
	}
	return x.Likely[0].Code
}

// spoiled plants single mistakes in a case, as the promise says, and judges the answer.
func spoiled(c simulate.Case) rates {
	w, planted := simulate.Plant(c, c.Seed, simulate.Planting{
		Share: 0.03, Kinds: []string{"foot", "metre", "tenth", "digits"}, Unlisted: 0.1,
	})
	return judge(w, planted, solve(w))
}

// gather adds up the rates of so many pools and names what was missed.
func gather(c config, r *report, n int, first uint64, one func(seed uint64, k int) rates) rates {
	var a rates
	for k, b := range pools(n, func(k int) rates { return one(first+uint64(k), k) }) {
		for _, m := range b.missed {
			r.miss(c, "seed %d: %s", first+uint64(k), m)
		}
		a.add(b)
	}
	return a
}
