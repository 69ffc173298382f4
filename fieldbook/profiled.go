package fieldbook

import (
	"math"

	"brimline/finding"
)

// StepOut is how far one edge lies outward of another at a mark, as a profile says, metres.
type StepOut struct {
	Mark        string
	Outward, SD float64
}

// StepsOut are what the profiles in force say of how far the edge to lies outward of the edge from, in
// book order; a profile read the other way round counts with its sign changed. Checks, an owner's
// word and drawings are not among them.
func (b *Book) StepsOut(from, to string) []StepOut {
	var out []StepOut
	for _, r := range b.Readings {
		sign := 1.0
		switch {
		case r.Kind != "profile" || r.Struck || r.Check || r.Class == "owner" || r.Class == "drawing":
			continue
		case r.From == to && r.To == from:
			sign = -1
		case r.From != from || r.To != to:
			continue
		}
		for i, v := range r.Values {
			if v.Part == "outward" {
				out = append(out, StepOut{r.Marks[0], sign * v.Metres, b.stepSigma(r.Reading, i)})
			}
		}
	}
	return out
}

// stepSigma is the standard deviation of part i of a profile: its own, its tool's, that of the book's
// rules, else the table's.
func (b *Book) stepSigma(r Reading, i int) float64 {
	t, _ := b.Tool(r.Tool)
	switch {
	case i < len(r.Sigma):
		return r.Sigma[i]
	case len(r.Sigma) == 1:
		return r.Sigma[0]
	case t.Sigma > 0:
		return t.Sigma
	case b.Rules.Sigma[r.Kind] > 0:
		return b.Rules.Sigma[r.Kind]
	}
	return DefaultSigma(r.Kind, r.Values[i].Part, r.Class, 0, 0)
}

// profiled gives the lines that lie where the profiles say their distance, the mean over the stations,
// and where they say none of their own its standard deviation. A line without a station waits, which
// is a finding, and is never put at a distance of zero.
func (b *Book) profiled() {
	for i := range b.Lines {
		l := &b.Lines[i]
		if !l.Profile {
			continue
		}
		from, _ := b.Line(l.From)
		steps := b.StepsOut(from.Edge, l.Edge)
		if from.Edge == "" || l.Edge == "" || len(steps) == 0 {
			l.Sigma = 0
			b.Findings = append(b.Findings, finding.Finding{Code: "profile-unread", Lines: []string{l.Name}, Words: map[string]string{"parent": l.From, "from": from.Edge, "edge": l.Edge}})
			continue
		}
		mean, sd := between(steps)
		if l.Outward = mean; l.Sigma == 0 {
			l.Sigma = sd
		}
	}
}

// between is the mean step, and the standard deviation of a step where none was read: s·√(1 + 1/n),
// s the scatter of n stations, not below the precision of one. One station says nothing of the
// scatter: DerivedSigma stands in its place.
func between(steps []StepOut) (mean, sd float64) {
	n := float64(len(steps))
	var precision float64
	for _, s := range steps {
		mean += s.Outward / n
		precision += s.SD * s.SD / n
	}
	if len(steps) == 1 {
		return mean, math.Hypot(math.Sqrt(precision), DerivedSigma)
	}
	var squares float64
	for _, s := range steps {
		squares += (s.Outward - mean) * (s.Outward - mean)
	}
	scatter := math.Sqrt(math.Max(squares/(n-1), precision))
	return mean, scatter * math.Sqrt(1+1/n)
}
