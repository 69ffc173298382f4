package fieldbook

import (
	"sort"

	"brimline/finding"
	"brimline/unit"
)

// Book says what a log says when all its entries are there. It is the same for every order of
// the log's entries. Of what is described several times the latest by time, then by id, holds.
// The findings are in Book.Findings too.
func (l Log) Book() (Book, []finding.Finding) {
	log, found := union(l)
	j, more := log.judge()
	b := Book{Log: log, Units: Units{Length: unit.M}, Findings: append(found, more...)}
	b.describe(&j)
	b.list(&j)
	b.below(&j)
	b.profiled()
	b.unread()
	b.strayCannots()
	b.Name = b.Job.Name
	return b, b.Findings
}

// list takes the items in book order. Readings, and what cannot be read, name the point that a peg
// is at their time; a side keeps the name as typed.
func (b *Book) list(j *judged) {
	moves := j.moves()
	for i, e := range j.items {
		out := j.force.out[e.ID]
		switch s := e.Body.(type) {
		case Reading:
			b.Readings = append(b.Readings, j.taken(e, s, pointsOf(s.Marks, moves, e, i)))
		case Side:
			if !out {
				b.Sides = append(b.Sides, s)
			}
		case Remark:
			if !out {
				b.Remarks = append(b.Remarks, s)
			}
		case Cannot:
			if !out {
				s.Marks = [2]string(pointsOf(s.Marks[:], moves, e, i))
				b.Cannots = append(b.Cannots, s)
			}
		}
	}
	b.Gone = j.gonePoints()
	b.stillMoved(j)
}

// taken is a reading as the Book lists it, with the marks that it means.
func (j *judged) taken(e Entry, r Reading, marks []string) Taken {
	r.Marks = marks
	t := Taken{N: j.number[e.ID], ID: e.ID, Time: e.Time, By: e.By, Struck: j.force.out[e.ID], Replace: j.number[e.Replaces], Reading: r}
	if t.Struck {
		t.Why = j.why(e.ID)
	}
	if r.Computed {
		t.As = j.asRead(e)
	}
	return t
}

// describe takes of each name the description that holds, names in the order of their first.
func (b *Book) describe(j *judged) {
	var names []string
	said := map[string][]Entry{}
	for _, e := range j.settings {
		if j.force.out[e.ID] {
			continue
		}
		n := settingName(e.Body)
		if len(said[n]) == 0 {
			names = append(names, n)
		}
		said[n] = append(said[n], e)
	}
	for _, n := range names {
		e := latest(said[n])
		if e.Time.IsZero() && differ(said[n]) {
			b.Findings = append(b.Findings, finding.Finding{Code: "two-words", Words: map[string]string{"name": n}})
		}
		b.take(e.Body)
	}
	sort.Slice(b.Tools, func(i, k int) bool { return b.Tools[i].Name < b.Tools[k].Name })
	sort.Slice(b.Setups, func(i, k int) bool { return b.Setups[i].Name < b.Setups[k].Name })
}

func (b *Book) take(body Body) {
	switch s := body.(type) {
	case Job:
		b.Job = s
	case Private:
		b.Private = s
	case Units:
		b.Units = s
	case Place:
		b.Place = s
	case Rules:
		b.Rules = s
	case Tool:
		b.Tools = append(b.Tools, s)
	case Setup:
		b.Setups = append(b.Setups, s)
	case Mark:
		b.Marks = append(b.Marks, s)
	case Line:
		b.Lines = append(b.Lines, s)
	case Corner:
		b.Corners = append(b.Corners, s)
	case Floor:
		b.Floor = s
	case Step:
		b.Steps = append(b.Steps, s)
	case Ledge:
		b.Ledges = append(b.Ledges, s)
	case Raised:
		b.Raised = append(b.Raised, s)
	case Spill:
		b.Spills = append(b.Spills, s)
	}
}

// settingName is the name that `added` sets: job, lines.rim.
func settingName(body Body) string {
	switch s := body.(type) {
	case Tool:
		return "tools." + s.Name
	case Setup:
		return "setups." + s.Name
	case Mark:
		return "marks." + s.Name
	case Line:
		return "lines." + s.Name
	case Corner:
		return "unreached." + s.Name
	case Step:
		return "steps." + s.Name
	case Ledge:
		return "ledges." + s.Name
	case Raised:
		return "raised." + s.Name
	case Spill:
		return "spills." + s.Name
	}
	return body.body()
}

// latest is the entry that holds: by time, then by id.
func latest(es []Entry) Entry {
	best := es[0]
	for _, e := range es[1:] {
		if c := e.Time.Compare(best.Time); c > 0 || c == 0 && e.ID > best.ID {
			best = e
		}
	}
	return best
}

func differ(es []Entry) bool {
	for _, e := range es[1:] {
		if canonical(Entry{Body: e.Body}, false) != canonical(Entry{Body: es[0].Body}, false) {
			return true
		}
	}
	return false
}

// unread finds lines and words of the place whose marks no reading in force touches yet.
func (b *Book) unread() {
	read := map[string]bool{}
	for _, r := range b.Readings {
		for _, m := range r.Marks {
			read[m] = read[m] || !r.Struck
		}
	}
	missing := func(marks []string) []string {
		var out []string
		for _, m := range marks {
			if m != "" && !read[m] && !among(m, out) {
				out = append(out, m)
			}
		}
		return out
	}
	for _, l := range b.Lines {
		var at []string
		for _, m := range l.MarkNames() {
			if c, ok := b.Corner(m); ok && !read[m] {
				at = append(append(at, c.Meet[0][:]...), c.Meet[1][:]...)
			} else {
				at = append(at, m)
			}
		}
		if out := missing(at); len(out) > 0 {
			b.Findings = append(b.Findings, finding.Finding{Code: "line-unread", Lines: []string{l.Name}, Marks: out})
		}
	}
	b.unreadBody(missing)
	if out := missing(b.Place.marks()); len(out) > 0 {
		b.Findings = append(b.Findings, finding.Finding{Code: "place-order", Marks: out, Words: map[string]string{"name": "place"}})
	}
}
