package fieldbook

import (
	"strconv"

	"brimline/finding"
)

// gonePoints are the points that pegs have left: B once B was moved, then B (2), in book order.
func (j *judged) gonePoints() []string {
	var out []string
	times := map[string]int{}
	for _, e := range j.items {
		m, ok := e.Body.(Moved)
		if !ok || j.force.out[e.ID] {
			continue
		}
		name := m.Mark
		if n := times[m.Mark]; n > 0 {
			name += " (" + strconv.Itoa(n+1) + ")"
		}
		times[m.Mark]++
		out = append(out, name)
	}
	return out
}

// strayCannots finds what is said not to be readable of marks that nothing else names: likely a
// slip in the name, so that the tape meant goes on being proposed.
func (b *Book) strayCannots() {
	named := map[string]bool{}
	note := func(marks ...string) {
		for _, m := range marks {
			named[m] = true
		}
	}
	for _, r := range b.Readings {
		note(r.Marks...)
	}
	for _, m := range b.Marks {
		note(m.Name)
	}
	for _, l := range b.Lines {
		note(l.MarkNames()...)
	}
	for _, c := range b.Corners {
		note(c.Name)
	}
	for _, s := range b.Sides {
		note(s.Mark, s.Line[0], s.Line[1])
	}
	var stray []string
	for _, c := range b.Cannots {
		for _, m := range c.Marks {
			if !named[m] && !named[Peg(m)] && !among(m, stray) {
				stray = append(stray, m)
			}
		}
	}
	if len(stray) > 0 {
		b.Findings = append(b.Findings, finding.Finding{Code: "cannot-stray", Marks: stray})
	}
}
