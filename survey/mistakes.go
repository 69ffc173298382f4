package survey

import (
	"math"

	"brimline/finding"
	"brimline/mistake"
)

// heldMarks are the marks of readings that take part only with the lengths they were, in plan and in
// height.
func (g *gather) heldMarks() {
	g.held, g.heldUp = map[int]bool{}, map[int]bool{}
	for _, i := range g.rep.Held {
		for _, m := range g.net.Obs[i].Of {
			g.heldUp[m] = true
		}
		for _, m := range g.net.Obs[i].Marks {
			if !g.net.Pegs[m] {
				g.held[m] = true
			}
		}
	}
}

// state says what is known of a reading, with the explanations.
func (g *gather) state(out *Reading, i int) {
	o := &g.net.Obs[i]
	switch g.rep.State[i] {
	case mistake.Suspect:
		out.State = "suspect"
	case mistake.Doubtful:
		out.State = "doubtful"
		n := g.rep.Group[i]
		out.Group = &n
	}
	if g.rep.State[i] != mistake.Good {
		for _, e := range g.rep.Likely[i] {
			out.Likely = append(out.Likely, Likely{Code: e.Code, Cause: e.Cause, Value: some(e.Value), Probability: math.Min(e.Chance, 1)})
		}
	}
	if o.Check && g.solved() && g.net.Ready(g.sol.X, o) {
		out.State = "disagrees"
		if g.sol.Agrees[i] {
			out.State = "agrees"
		}
	}
}

// early adds what a column shows by itself, of readings that nothing else checks.
func (g *gather) early(r *Result) {
	lone := map[string]bool{}
	for _, x := range r.Readings {
		lone[x.N] = x.State == "lone"
	}
	for _, f := range mistake.Early(g.book) {
		if lone[f.Readings[0]] && lone[f.Readings[1]] {
			g.found = append(g.found, f)
		}
	}
}

// mistakes lists what was found, as a person may accept it.
func (g *gather) mistakes(r *Result) {
	for _, m := range g.rep.Mistakes {
		out := Mistake{Code: m.Code, Probability: math.Min(m.Chance, 1), Edit: []Edit{}, Readings: []string{}}
		for _, i := range m.Obs {
			out.Readings = append(out.Readings, g.n(i))
		}
		for _, e := range m.Edits {
			if edit, ok := g.edit(e); ok {
				out.Edit = append(out.Edit, edit)
			}
		}
		out.Text = g.said(m)
		r.Mistakes = append(r.Mistakes, out)
	}
	if len(g.rep.Held) > 0 {
		f := finding.Finding{Code: "held-corrected"}
		for m, name := range g.net.Marks {
			if g.held[m] || g.heldUp[m] {
				f.Marks = append(f.Marks, name)
			}
		}
		if len(f.Marks) > 0 {
			g.found = append(g.found, f)
		}
	}
}

// n is the number of an observation's reading, as people say it.
func (g *gather) n(i int) string { return g.book.Readings[g.net.Obs[i].Reading].N }

func (g *gather) edit(e mistake.Edit) (Edit, bool) {
	i := g.sol.ObsOf(e.Part)
	o := &g.net.Obs[i]
	out := Edit{N: g.n(i)}
	if len(o.Values) > 1 {
		out.Part = o.Kind.Parts(o)[e.Part-g.sol.First[i]]
	} else if len(g.book.Readings[o.Reading].Values) > 1 {
		out.Part = o.Kind.Parts(o)[0]
	}
	if e.Peg[0] >= 0 {
		for _, m := range o.Marks {
			if m == e.Peg[0] {
				m = e.Peg[1]
			}
			out.Marks = append(out.Marks, g.net.Marks[m])
		}
		return out, true
	}
	out.Value = some(e.Value)
	return out, out.Value != nil
}

// said puts a mistake in words.
func (g *gather) said(m mistake.Mistake) string {
	show := g.show()
	name := func(i int) string {
		if i < 0 {
			return ""
		}
		return g.net.Marks[i]
	}
	span := name(m.From)
	if m.To != m.From && m.To >= 0 {
		span = "from " + name(m.From) + " to " + name(m.To)
	} else if span != "" {
		span = "at " + span
	}
	switch m.Code {
	case "columns":
		return name(m.Peg) + " and " + name(m.Other) + " are swapped " + span
	case "slip":
		if m.Peg < 0 {
			return "the numbering slips by one in all columns " + span
		}
		return "the numbering slips by one in the column of " + name(m.Peg) + " " + span
	case "peg-moved":
		return name(m.Peg) + " stood " + show(m.Size) + " elsewhere when it was taped " + span
	case "wrong-edge":
		return "taped from " + name(m.Peg) + " " + span + " to another edge, " + show(m.Size) + " apart"
	case "water-moved":
		return g.waterSaid(m.Other, m.Obs, m.Size)
	case "tape-zero":
		word := "the tapes " + span
		if m.Tool != "" {
			word = m.Tool + " " + span
		}
		long := "long"
		if m.Size < 0 {
			long = "short"
		}
		return word + ": every length is " + show(math.Abs(m.Size)) + " too " + long
	}
	return g.single(m)
}

// single puts a mistake in one reading in words.
func (g *gather) single(m mistake.Mistake) string {
	i := m.Obs[0]
	t := g.book.Readings[g.net.Obs[i].Reading]
	word := "reading " + t.N + " (" + named(t.Reading, " ") + ")"
	if m.Doubtful {
		word = "reading " + t.N + " or another of its group"
	}
	if m.Code == "unknown" {
		return word + " is wrong; no listed mistake fits"
	}
	word += ": " + m.Cause
	for _, e := range m.Edits {
		if !math.IsNaN(e.Value) {
			word += "; it would be " + g.show()(e.Value)
		}
	}
	return word
}
