package outline

import (
	"math"
	"slices"
)

// ready is the line as the fit takes it: soft runs as fair curves, the play of its joints along
// the edge, and what is open about the edge at each mark, unreached corners (of which there are so
// many) included: that of a soft run counts at the marks that lie on no other.
func (l Spec) ready(edge []float64, corners int) (Spec, []float64) {
	edge = append(slices.Clone(edge), make([]float64, corners)...)
	firm := make([]bool, len(edge))
	for _, r := range l.Runs {
		for _, m := range r.Marks {
			firm[m] = firm[m] || r.Kind != "soft"
		}
	}
	open := make([]float64, len(edge))
	l.Runs = slices.Clone(l.Runs)
	for i := range l.Runs {
		r := &l.Runs[i]
		if i > 0 || l.Closed {
			r.play = math.Max(r.Slide, l.Runs[(i+len(l.Runs)-1)%len(l.Runs)].Slide)
		}
		if r.Kind != "soft" {
			continue
		}
		r.Kind, r.soft = "curve", true
		for _, m := range r.Marks {
			if !firm[m] {
				open[m] = math.Max(open[m], r.Sigma)
			}
		}
	}
	for m, sd := range open {
		edge[m] = math.Hypot(edge[m], sd)
	}
	return l, edge
}
