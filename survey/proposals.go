package survey

import (
	"math"
	"slices"
	"strings"

	"brimline/advise"
)

func join(marks []string) string { return strings.Join(marks, "–") }

// proposals puts them in words.
func (g *gather) proposals(in []advise.Proposal) []Next {
	out := []Next{}
	for _, p := range in {
		n := Next{Kind: p.Kind, Marks: []string{}, About: some(p.About), Order: p.Order, Gain: p.Gain, Unit: p.Unit, Minutes: p.Minutes, Alone: p.Alone, Why: p.Why.Text(g.names())}
		if math.IsNaN(n.Gain) || math.IsInf(n.Gain, 0) {
			n.Gain = 0
		}
		if c := p.Why.Code; (c == "fixes" || c == "side") && !slices.ContainsFunc(p.Why.Marks, g.onLine) {
			n.Order, n.Gain = "", 0 // it is on no line: the shape gains nothing
		}
		for _, m := range p.Marks {
			n.Marks = append(n.Marks, g.net.Marks[m])
		}
		n.Text = g.imperative(p.Kind, p.Marks)
		if n.About != nil {
			n.Text += ", about " + g.about(*n.About)
		}
		out = append(out, n)
	}
	return out
}

// imperative says what to read, and that it was read before where it was. Only ties are proposed
// that were not.
func (g *gather) imperative(kind string, marks []int) string {
	var names []string
	for _, m := range marks {
		names = append(names, g.net.Marks[m])
	}
	word := ""
	switch {
	case kind == "tie":
		word = "tape " + strings.Join(names, " to ")
	case kind == "offset":
		word = "read the offset of " + names[0] + " from " + join(names[1:])
	case len(names) == 1:
		word = "read " + names[0]
	default:
		word = "read the " + kind + " of " + join(names)
	}
	if g.wasRead(kind, marks) {
		word += " again"
	}
	return word
}

// wasRead says that a reading of this kind and these marks, either way round, is in the book.
func (g *gather) wasRead(kind string, marks []int) bool {
	back := slices.Clone(marks)
	slices.Reverse(back)
	for i := range g.net.Obs {
		o := &g.net.Obs[i]
		if o.Use && o.Kind.Name() == kind && (slices.Equal(o.Marks, marks) || len(marks) == 2 && slices.Equal(o.Marks, back)) {
			return true
		}
	}
	return false
}

// about is a length to expect, to the centimetre or the half inch.
func (g *gather) about(v float64) string {
	step := 0.01
	if g.feet() {
		step = 0.0127
	}
	return g.show()(math.Round(v/step) * step)
}
