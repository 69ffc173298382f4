package survey

import (
	"math"

	"brimline/finding"
	"brimline/network"
	"brimline/plane"
)

// leastInside is how far inside the nose a line of what lies under it may come before it is told,
// besides twice the standard deviation of its distance, metres: common practice, no source.
const leastInside = 0.005

// insideNose names tile, waterline and track lines that come out inside the nose: what stands under
// a coping cannot stand out further over the water than its nose does.
func (g *gather) insideNose() {
	if !g.solved() {
		return
	}
	for _, nose := range g.book.Lines {
		over, _, _, _, ok := g.parent(nose.Name, len(g.book.Lines))
		if nose.Edge != "nose" || !ok || !over.Closed {
			continue
		}
		for _, l := range g.book.Lines {
			if l.Edge != "tile" && l.Edge != "waterline" && l.Edge != "track" || planned(l.State) != planned(nose.State) {
				continue
			}
			under, _, _, _, ok := g.parent(l.Name, len(g.book.Lines))
			from, known := g.book.Parent(l.Name)
			if !ok || !known {
				continue
			}
			if in := deepest(under, over); in > leastInside+2*from.Spread {
				g.found = append(g.found, finding.Finding{Code: "inside-nose", Lines: []string{l.Name}, Words: map[string]string{"nose": nose.Name, "edge": l.Edge},
					Figures: map[string]float64{"in": in}})
			}
		}
	}
}

func planned(state string) bool { return state == "planned" }

// deepest is by how much a line lies inside a ring where it lies furthest inside it: at the ends and
// the middles of its segments.
func deepest(line, ring plane.Path) float64 {
	in := math.Inf(-1)
	for _, s := range line.Segs {
		for _, p := range []plane.Point{s.A, s.At(0.5), s.B} {
			in = math.Max(in, -ring.Distance(p))
		}
	}
	return in
}

// beyond names clear readings whose foot lies past the end of an open line.
func (g *gather) beyond() {
	for i := range g.net.Obs {
		o := &g.net.Obs[i]
		t := g.book.Readings[o.Reading]
		if !o.Use || o.Track == nil || !g.net.Ready(g.sol.X, o) || !network.Beyond(o, g.sol.X) {
			continue
		}
		g.found = append(g.found, finding.Finding{Code: "clear-beyond", Readings: []string{t.N}, Marks: t.Marks, Lines: []string{t.Line}})
	}
}

// alone is what a reading would be by the solution itself, whether or not it takes part.
func (g *gather) alone(n string) float64 {
	for i := range g.net.Obs {
		o := &g.net.Obs[i]
		if g.book.Readings[o.Reading].N == n {
			value, jac := make([]float64, len(o.Values)), make([]float64, len(o.Values)*o.Size)
			o.Kind.Predict(g.sol.X, o, value, jac)
			return value[0]
		}
	}
	return math.NaN()
}

// otherWay names readings along a closed line that fit only the other way round.
func (g *gather) otherWay(r *Result) {
	const most = 3.29 // W. Baarda 1968: significance 0.001, two-sided
	for _, x := range r.Readings {
		if x.Kind != "along" || x.Adjusted == nil || x.W == nil || math.Abs(*x.W) <= most || x.State == "struck" {
			continue
		}
		l := r.Lines[x.Line]
		if l == nil || !l.Closed || l.Length == nil {
			continue
		}
		here := g.alone(x.N)
		if math.Abs(*l.Length-here-x.Value) < most*2*x.SD && math.Abs(here-x.Value) > most*2*x.SD {
			g.found = append(g.found, finding.Finding{Code: "other-way", Readings: []string{x.N}, Marks: x.Marks, Lines: []string{x.Line}})
		}
	}
}
