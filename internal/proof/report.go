package main

import (
	"fmt"
	"io"
	"math"
	"text/tabwriter"
)

// report is what a section found: figures, some with a band.
type report struct {
	lines  []line
	missed []string // pools, when asked for
}

// line is one figure: of counts, good of them out of; else value in a unit.
type line struct {
	group, what string
	value       float64 // per cent where it is a share
	count       string  // "231 of 240"
	unit        string
	lo, hi      float64 // band; NaN where none
}

func (l line) holds() bool {
	return !(l.value < l.lo) && !(l.value > l.hi) && !(l.banded() && math.IsNaN(l.value))
}

func (l line) banded() bool { return !math.IsNaN(l.lo) || !math.IsNaN(l.hi) }

// share adds good out of all in per cent, with a band. Of nothing counted a banded share is
// missed.
func (r *report) share(group, what string, good, all int, lo, hi float64) {
	v := math.NaN()
	if all > 0 {
		v = 100 * float64(good) / float64(all)
	}
	r.lines = append(r.lines, line{group, what, v, fmt.Sprintf("%d of %d", good, all), "%", lo, hi})
}

// atLeast, atMost and plain are shares with one bound, and with none.
func (r *report) atLeast(group, what string, good, all int, lo float64) {
	r.share(group, what, good, all, lo, math.NaN())
}

func (r *report) atMost(group, what string, good, all int, hi float64) {
	r.share(group, what, good, all, math.NaN(), hi)
}

func (r *report) plain(group, what string, good, all int) {
	r.share(group, what, good, all, math.NaN(), math.NaN())
}

// figure adds a value with a unit.
func (r *report) figure(group, what string, value float64, unit string, lo, hi float64) {
	r.lines = append(r.lines, line{group, what, value, "", unit, lo, hi})
}

// miss names a pool.
func (r *report) miss(c config, format string, args ...any) {
	if c.verbose {
		r.missed = append(r.missed, fmt.Sprintf(format, args...))
	}
}

// print writes the table and says whether every band holds.
func (r *report) print(out io.Writer) bool {
	for _, m := range r.missed {
		fmt.Fprintln(out, "  missed:", m)
	}
	w := tabwriter.NewWriter(out, 2, 0, 2, ' ', 0)
	ok := true
	for _, l := range r.lines {
		word := ""
		if l.banded() {
			word = "holds"
			if !l.holds() {
				word, ok = "MISSED", false
			}
		}
		fmt.Fprintf(w, "  %s\t%s\t%s %s\t%s\t%s\t%s\n", l.group, l.what, number(l.value), l.unit, l.count, l.band(), word)
	}
	w.Flush()
	return ok
}

func number(v float64) string {
	if v != 0 && math.Abs(v) < 0.005 {
		return fmt.Sprintf("%.1e", v)
	}
	return fmt.Sprintf("%.2f", v)
}

func (l line) band() string {
	switch {
	case math.IsNaN(l.lo) && math.IsNaN(l.hi):
		return ""
	case math.IsNaN(l.hi):
		return "≥ " + fmt.Sprint(l.lo)
	case math.IsNaN(l.lo):
		return "≤ " + fmt.Sprint(l.hi)
	}
	return fmt.Sprint(l.lo, "–", l.hi)
}
