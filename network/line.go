package network

import (
	"math"

	"brimline/fieldbook"
)

// Line is a line with runs of its own, in numbers.
type Line struct {
	Name    string
	Closed  bool
	Runs    []Run
	Corners []Corner // unreached
	Fuzz    float64  // sd of what stays open about its edge, metres
}

// Run is a stretch of a line. Of Marks −1−k stands for Corners[k] of the line, Unread for a mark
// that no reading names; a joint of runs that were found may be in neither, and then the next run
// begins at another mark than the one before ends at.
type Run struct {
	Kind    string // straight, arc, curve; any and soft are drawn as curves
	Marks   []int
	Tangent bool // the joint at its start
}

// Unread stands for a mark that no reading names.
const Unread = -1 << 30

// Corner is where the straight through the first two marks meets that through the others.
type Corner struct {
	Name         string
	Meet         [4]int
	Round, Sigma float64 // radius of its rounding; sd of what stays open, metres
}

// lines numbers the lines of the book that have runs.
func (g *builder) lines() {
	for _, l := range g.book.Lines {
		if l.From != "" {
			continue
		}
		out := Line{Name: l.Name, Closed: l.Closed, Fuzz: l.Fuzz}
		corner := map[string]int{}
		for _, r := range l.Runs {
			run := Run{Kind: r.Kind, Tangent: r.Joint == "tangent"}
			for _, m := range r.Marks {
				run.Marks = append(run.Marks, g.onLine(&out, corner, m))
			}
			out.Runs = append(out.Runs, run)
		}
		for _, h := range g.held {
			if h.Name == l.Name {
				out.Runs, out.Corners = h.Runs, h.Corners
			}
		}
		g.n.Lines = append(g.n.Lines, out)
	}
}

// onLine is the number of a mark of a line. A corner that was read after all is a mark.
func (g *builder) onLine(l *Line, corner map[string]int, name string) int {
	if i, ok := g.n.ByName[name]; ok {
		return i
	}
	c, ok := g.book.Corner(name)
	if !ok {
		return Unread
	}
	if k, have := corner[name]; have {
		return -1 - k
	}
	out := Corner{Name: name, Round: c.Round, Sigma: c.Sigma}
	for i, m := range []string{c.Meet[0][0], c.Meet[0][1], c.Meet[1][0], c.Meet[1][1]} {
		if out.Meet[i], ok = g.n.ByName[m]; !ok {
			out.Meet[i] = Unread
		}
	}
	corner[name] = len(l.Corners)
	l.Corners = append(l.Corners, out)
	return -1 - corner[name]
}

// Hold is the network of the same book in which some lines have the runs, and their corners the
// rounding, that were found where the book leaves them open. At x, the solution that they were found
// in, what the marks of a curve leave open of its length is added to the readings along it.
func Hold(b *fieldbook.Book, f fieldbook.Files, found []Line, x State) *Network {
	n, _ := build(b, f, found)
	for i := range n.Obs {
		o := &n.Obs[i]
		if o.Track != nil && !o.clears() && n.Ready(x, o) {
			o.SD[0] = math.Hypot(o.SD[0], unsampled(o, x))
		}
	}
	return n
}

func (o *Obs) clears() bool { _, ok := o.Kind.(Clear); return ok }

// unsampled is how well the marks of its curves tell the length that a reading sees, metres: a
// seventh of what it differs by when every other mark is left out. The error of a fair curve goes
// with the third power of the spacing where curvature leaps, and with a higher one where it does
// not (L. F. Richardson's extrapolation, Phil. Trans. R. Soc. A 226, 1927).
func unsampled(o *Obs, x State) float64 {
	thin := *o
	track := *o.Track
	track.Runs = nil
	for _, r := range o.Track.Runs {
		track.Runs = append(track.Runs, r.thinned())
	}
	thin.Track = &track
	return math.Abs(newTrace(o, x).taped()-newTrace(&thin, x).taped()) / 7
}

// thinned is a curve through every other of its marks, those at the ends of the run and of the
// stretch kept; other runs stay.
func (r TrackRun) thinned() TrackRun {
	n := len(r.At)
	if r.Kind != "curve" || n < 5 {
		return r
	}
	at, first, last := r.At, r.First, r.Last
	r.At = nil
	for k, m := range at {
		if k == first {
			r.First = len(r.At)
		}
		if k == last%n {
			r.Last = len(r.At)
		}
		if k%2 == 0 || k == n-1 && !r.Loop || k == first || k == last%n {
			r.At = append(r.At, m)
		}
	}
	if last >= n {
		r.Last += len(r.At)
	}
	return r
}
