package fieldbook

import (
	"strconv"
	"strings"

	"brimline/finding"
)

// judged is a log in order, with what holds.
type judged struct {
	items    []Entry // the list of readings, book order
	settings []Entry // the rest, book order
	number   map[ID]string
	force    force
	byID     map[ID]Entry // the items
	by       map[ID]Entry // who took an entry out of force: the first in book order
}

// judge orders a union and says what holds in it; its findings are about strikes and
// replacements.
func (l Log) judge() (judged, []finding.Finding) {
	j := judged{items: ordered(l, true), settings: ordered(l, false), number: map[ID]string{}, byID: map[ID]Entry{}, by: map[ID]Entry{}, force: inForce(l)}
	j.count()
	here := make(map[ID]bool, len(l))
	for _, e := range l {
		here[e.ID] = true
	}
	var found []finding.Finding
	swaps := map[ID][]string{}
	var twice []ID
	for _, family := range [][]Entry{j.items, j.settings} {
		for _, e := range family {
			t := target(e)
			if t == "" {
				continue
			}
			if !here[t] {
				found = append(found, finding.Finding{Code: "strike-nothing", Readings: j.named(e), Words: map[string]string{"id": string(t)}})
				continue
			}
			if j.force.out[e.ID] {
				continue
			}
			if _, taken := j.by[t]; !taken && j.force.out[t] {
				j.by[t] = e
			}
			if e.Replaces != "" {
				swaps[t] = append(swaps[t], j.label(e))
				if len(swaps[t]) == 2 {
					twice = append(twice, t)
				}
			}
		}
	}
	for _, t := range twice {
		found = append(found, finding.Finding{Code: "two-replace", Readings: swaps[t]})
	}
	for _, ids := range j.force.circles {
		var words []string
		for _, id := range ids {
			words = append(words, string(id))
		}
		found = append(found, finding.Finding{Code: "circle", Words: map[string]string{"ids": strings.Join(words, ", ")}})
	}
	return j, found
}

// count numbers the items: a column once, its rows behind a point.
func (j *judged) count() {
	n, before := 0, ID("")
	for _, e := range j.items {
		if e.Column == "" || e.Column != before {
			n++
		}
		before = e.Column
		j.byID[e.ID] = e
		j.number[e.ID] = strconv.Itoa(n)
		if e.Column != "" {
			j.number[e.ID] += "." + strconv.Itoa(e.Row)
		}
	}
}

// label is the number of an entry, or its id where it has none.
func (j *judged) label(e Entry) string {
	if n := j.number[e.ID]; n != "" {
		return n
	}
	return string(e.ID)
}

func (j *judged) named(e Entry) []string { return []string{j.label(e)} }

// why is the reason for which an entry is out of force.
func (j *judged) why(id ID) string {
	e, ok := j.by[id]
	if !ok {
		return ""
	}
	if s, ok := e.Body.(Strike); ok {
		if s.Reason == "" {
			return "struck by " + j.label(e)
		}
		return s.Reason
	}
	if e.Why == "" {
		return "replaced by " + j.label(e)
	}
	return "replaced by " + j.label(e) + ": " + e.Why
}
