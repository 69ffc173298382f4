package main

import (
	"fmt"
	"math"

	"brimline/internal/simulate"
	"brimline/survey"
)

// coverageTally counts over pools of one method.
type coverageTally struct {
	tried, solved, right    int
	marks, in95, in50       int
	lines, area95, length95 int
	missed                  string
}

// coverage measures pools without mistakes, of every shape by every method.
func coverage(c config) *report {
	r := &report{}
	for i, m := range simulate.Methods {
		var t coverageTally
		for k, one := range pools(c.n, func(k int) coverageTally { return cover(c.kind(i)+uint64(k), k, m) }) {
			t.add(one)
			if one.missed != "" {
				r.miss(c, "%s seed %d: %s", m.Name(), c.kind(i)+uint64(k), one.missed)
			}
		}
		r.plain(m.Name(), "solved", t.solved, t.tried)
		r.atLeast(m.Name(), "right", t.right, t.tried, 99.5)
		r.share(m.Name(), "marks in 95 %", t.in95, t.marks, 94, 96)
		r.share(m.Name(), "marks in 50 %", t.in50, t.marks, 48, 52)
		r.plain(m.Name(), "areas in 1.96 sd", t.area95, t.lines)
		r.plain(m.Name(), "lengths in 1.96 sd", t.length95, t.lines)
	}
	return r
}

func cover(seed uint64, k int, m simulate.Method) coverageTally {
	c := simulate.Pool(seed, shape(k), m, simulate.Options{})
	t := coverageTally{tried: 1}
	r := solve(c)
	if r == nil {
		t.missed = "unsolved"
		t.marks = len(everyMark(c)) - 2 // a miss in every rate
		return t
	}
	t.solved = 1
	t.count(c, r)
	if off := offMarks(c, r); len(off) > 0 {
		t.missed = fmt.Sprint(off)
		return t
	}
	t.right = 1
	return t
}

func (t *coverageTally) add(o coverageTally) {
	t.tried, t.solved, t.right = t.tried+o.tried, t.solved+o.solved, t.right+o.right
	t.marks, t.in95, t.in50 = t.marks+o.marks, t.in95+o.in95, t.in50+o.in50
	t.lines, t.area95, t.length95 = t.lines+o.lines, t.area95+o.area95, t.length95+o.length95
}

// offMarks lists the marks further from the truth than max(60 mm, 4 × the major standard
// semi-axis).
func offMarks(c simulate.Case, r *survey.Result) []string {
	var out []string
	for _, name := range everyMark(c) {
		m, t := r.Marks[name], c.Truth[name]
		d := math.Hypot(*m.X-t.X, *m.Y-t.Y)
		major := 0.0
		if m.Ellipse95 != nil {
			major = m.Ellipse95.Major / radius95
		}
		if d > math.Max(0.060, 4*major) {
			out = append(out, fmt.Sprintf("%s by %.3f m", name, d))
		}
	}
	return out
}

// Radii of the 95 % and the 50 % region of a plane normal distribution, in standard deviations.
var radius95, radius50 = math.Sqrt(-2 * math.Log(0.05)), math.Sqrt(-2 * math.Log(0.5))

func (t *coverageTally) count(c simulate.Case, r *survey.Result) {
	for _, name := range everyMark(c)[2:] { // the first two are the datum
		d := away(r.Marks[name], c.Truth[name].X, c.Truth[name].Y)
		t.marks++
		if d <= radius95 {
			t.in95++
		}
		if d <= radius50 {
			t.in50++
		}
	}
	l := r.Lines["rim"]
	if l == nil || l.Area == nil {
		return
	}
	t.lines++
	if math.Abs(*l.Area-c.Area) <= 1.96**l.AreaSD {
		t.area95++
	}
	if math.Abs(*l.Length-c.Perimeter) <= 1.96**l.LengthSD {
		t.length95++
	}
}

// away is how far the truth lies from a mark, in standard deviations of its ellipse.
func away(m *survey.Mark, x, y float64) float64 {
	e := m.Ellipse95
	s, k := math.Sincos(e.Bearing * math.Pi / 180)
	dx, dy := *m.X-x, *m.Y-y
	return radius95 * math.Hypot((s*dx+k*dy)/e.Major, (k*dx-s*dy)/e.Minor)
}
