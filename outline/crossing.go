package outline

import (
	"slices"

	"brimline/adjust"
	"brimline/finding"
	"brimline/plane"
)

// crossing names the marks between which a line crosses itself, the first of its places only:
// one is enough to look at.
func (l *Line) crossing(s *adjust.Solution) []finding.Finding {
	places := l.Path.Crossings()
	if len(places) == 0 {
		return nil
	}
	x := places[0]
	marks := l.between(s, x.I, x.At)
	for _, m := range l.between(s, x.J, x.At) {
		if !slices.Contains(marks, m) {
			marks = append(marks, m)
		}
	}
	return []finding.Finding{{Code: "crossing", Lines: []string{l.Name}, Marks: marks,
		Figures: map[string]float64{"x": x.At.X, "y": x.At.Y}}}
}

// between gives the marks before and after a place on a segment of the line.
func (l *Line) between(s *adjust.Solution, seg int, p plane.Point) []string {
	for _, r := range l.Runs {
		if seg < r.First || seg >= r.First+r.Pieces {
			continue
		}
		run := plane.Path{Segs: l.Path.Segs[r.First : r.First+r.Pieces]}
		_, t := l.Path.Segs[seg].Nearest(p)
		here := float64(seg-r.First) + t
		from, n := r.From, len(l.Names)
		start := slices.Index(l.Names, r.From)
		if start < 0 || !slices.Contains(l.Names, r.To) { // an unreached corner
			return []string{r.From, r.To}
		}
		for k := start + 1; k < start+n && l.Names[k%n] != r.To; k++ {
			i, t, _ := run.Nearest(s.X.Point(l.Marks[k%n]))
			if float64(i)+t > here {
				return []string{from, l.Names[k%n]}
			}
			from = l.Names[k%n]
		}
		return []string{from, r.To}
	}
	return nil
}
