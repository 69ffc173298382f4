package survey

import (
	"slices"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/network"
	"brimline/outline"
)

// hold adjusts once more, and only once, where readings along or to a line see it as a curve: with the runs that were
// found held fixed, and with what the marks of a curve leave open counted.
func (g *gather) hold(f fieldbook.Files) error {
	if !g.solved() || !g.seen() {
		return nil
	}
	without := g.untracked()
	if without == nil {
		return g.ctx.Err()
	}
	var found []network.Line
	for i, l := range g.net.Lines {
		if !open(l) {
			continue
		}
		book, _ := g.book.Line(l.Name)
		fitted, _ := outline.Fit(without, g.spec(book), g.net.Edge)
		if len(fitted.Waits) == 0 {
			found = append(found, held(&g.net.Lines[i], fitted, book))
		}
	}
	n := network.Hold(g.book, f, found, without.X)
	again, _ := adjust.Solve(g.ctx, n, g.sol.X, adjust.Options{Fallback: g.start.X})
	if again == nil {
		return g.ctx.Err()
	}
	g.net, g.sol = n, again
	return nil
}

// untracked is the solution without the readings along or to lines, so that a mistake in one of them
// does not tell what the lines are made of; nil when the context ends.
func (g *gather) untracked() *adjust.Solution {
	var out []int
	for i := range g.net.Obs {
		if g.net.Obs[i].Track != nil && g.sol.In[i] {
			out = append(out, g.sol.First[i])
		}
	}
	if len(out) == 0 || len(out) >= g.sol.Rows {
		return g.sol
	}
	return g.sol.Again(g.ctx, adjust.Change{Out: out})
}

// seen says that a reading in use goes along or to a line through a curve.
func (g *gather) seen() bool {
	for i := range g.net.Obs {
		o := &g.net.Obs[i]
		if o.Track == nil || !o.Use || !g.net.Ready(g.sol.X, o) {
			continue
		}
		for _, r := range o.Track.Runs {
			if r.Kind == "curve" {
				return true
			}
		}
	}
	return false
}

// open says that a line has something that is left to be found.
func open(l network.Line) bool {
	return len(l.Corners) > 0 || slices.ContainsFunc(l.Runs, func(r network.Run) bool { return r.Kind == "any" })
}

// held is a line with what was found in the place of every run said to be any, and with the rounding
// found of its corners.
func held(l *network.Line, fitted *outline.Line, book fieldbook.Line) network.Line {
	out := network.Line{Name: l.Name, Corners: slices.Clone(l.Corners)}
	for i := range out.Corners {
		for _, c := range fitted.Corners {
			if c.Name == out.Corners[i].Name {
				out.Corners[i].Round = c.Radius
			}
		}
	}
	names, marks := book.MarkNames(), markNumbers(l)
	var found []network.Run
	for _, r := range fitted.Runs {
		if m := stretch(names, marks, r); r.Found && len(m) > 1 {
			found = append(found, network.Run{Kind: r.Kind, Marks: m, Tangent: r.Joint == "tangent"})
		}
	}
	for _, r := range l.Runs {
		if r.Kind != "any" {
			out.Runs = append(out.Runs, r)
			continue
		}
		n := ends(found, r)
		if n == 0 {
			out.Runs = append(out.Runs, r)
			continue
		}
		found[0].Tangent = found[0].Tangent || r.Tangent
		out.Runs, found = append(out.Runs, found[:n]...), found[n:]
	}
	return out
}

// ends is how many of the found runs stand for a run of the book: all up to its last mark, of a
// whole loop all there are.
func ends(found []network.Run, r network.Run) int {
	last := r.Marks[len(r.Marks)-1]
	if last == r.Marks[0] {
		return len(found)
	}
	for k, f := range found {
		if f.Marks[len(f.Marks)-1] == last {
			return k + 1
		}
	}
	return 0
}

// markNumbers are the numbers of a line's marks and corners in order, as Line.MarkNames names them.
func markNumbers(l *network.Line) []int {
	var out []int
	for _, r := range l.Runs {
		m := r.Marks
		if len(out) > 0 {
			m = m[1:]
		}
		out = append(out, m...)
	}
	if l.Closed && len(out) > 1 {
		out = out[:len(out)-1]
	}
	return out
}

// stretch is the marks of a found run in order; nil where it only rounds a corner.
func stretch(names []string, marks []int, r outline.Run) []int {
	from, to, n := slices.Index(names, r.From), slices.Index(names, r.To), len(names)
	if from < 0 || to < 0 || from == to && marks[from] < 0 {
		return nil
	}
	if to <= from {
		to += n
	}
	var out []int
	for k := from; k <= to; k++ {
		out = append(out, marks[k%n])
	}
	return out
}
