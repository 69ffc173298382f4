package fieldbook

import (
	"strconv"
	"strings"
	"time"

	"brimline/finding"
)

// move is one time that a peg was shifted: its place in book order, and when.
type move struct {
	at   int
	time time.Time
}

// moves lists what is in force of every mark's moves, in book order.
func (j *judged) moves() map[string][]move {
	out := map[string][]move{}
	for i, e := range j.items {
		if m, ok := e.Body.(Moved); ok && !j.force.out[e.ID] {
			out[m.Mark] = append(out[m.Mark], move{i, e.Time})
		}
	}
	return out
}

// before says that the peg was shifted before entry e, the at-th in book order: by time where both
// have one, else by place.
func (m move) before(e Entry, at int) bool {
	if !m.time.IsZero() && !e.Time.IsZero() && !m.time.Equal(e.Time) {
		return m.time.Before(e.Time)
	}
	return m.at < at
}

// pointOf is the name of the point that entry e, the at-th in book order, means by a mark: "B"
// until the peg is moved, then "B (2)", "B (3)".
func pointOf(mark string, moves map[string][]move, e Entry, at int) string {
	n := 1
	for _, m := range moves[mark] {
		if m.before(e, at) {
			n++
		}
	}
	if n == 1 {
		return mark
	}
	return mark + " (" + strconv.Itoa(n) + ")"
}

func pointsOf(marks []string, moves map[string][]move, e Entry, at int) []string {
	var out []string
	for _, m := range marks {
		out = append(out, pointOf(m, moves, e, at))
	}
	return out
}

// Peg is the name that the book gives to the peg of a mark: that of "B (2)" is "B".
func Peg(mark string) string {
	name, _, _ := strings.Cut(mark, " (")
	return name
}

// stillMoved finds pegs that were moved before anything read them: likely a slip in the name.
func (b *Book) stillMoved(j *judged) {
	read := map[string]bool{}
	for _, r := range b.Readings {
		for _, m := range r.Marks {
			read[m] = true
		}
	}
	var marks []string
	for _, e := range j.items {
		if m, ok := e.Body.(Moved); ok && !j.force.out[e.ID] && !read[m.Mark] && !among(m.Mark, marks) {
			marks = append(marks, m.Mark)
		}
	}
	if len(marks) > 0 {
		b.Findings = append(b.Findings, finding.Finding{Code: "moved-unread", Marks: marks})
	}
}
