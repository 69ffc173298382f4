package survey

import (
	"math"

	"brimline/advise"
	"brimline/mistake"
	"brimline/plane"
)

// Defaults of the shape order: common practice, no source.
const (
	shapeName      = "shape"
	shapeTolerance = 0.025
	shapeShare     = 0.5
	shapeUnseen    = 0.01
)

// mostWeak is how many of the weakest places are told.
const mostWeak = 3

// shape judges the outlines as wholes, in the datum of each line itself, and says what to read next.
func (g *gather) shape(r *Result) {
	s := &r.Shape
	s.State, s.Tolerance, s.Share, s.Unseen = advise.Unproven, shapeTolerance, shapeShare, shapeUnseen
	s.Why, s.Tests, s.Weakest = []string{}, []Test{}, []Weak{}
	u := g.forbids()
	g.blank(r, u)
	defer func() { s.condemn(u) }()
	orders := []advise.Order{{Name: shapeName, For: "cut", Share: shapeShare, Unseen: shapeUnseen, Cost: 1, Asks: g.asks()}}
	s.Why = append(s.Why, g.waiting(orders[0])...)
	o := g.options()
	if !g.solved() {
		r.Next = g.proposals(advise.Next(g.sol, nil, advise.Odd{}, orders, o))
		return
	}
	verdicts, next := advise.Look(g.sol, g.listed(), g.odd(), orders, o)
	v := verdicts[0]
	if len(orders[0].Asks) > 0 {
		g.tests(s, v)
		if len(s.Why) == 0 || v.State == advise.Unfit {
			s.State = v.State
		}
		for _, why := range v.Why {
			s.Why = append(s.Why, why.Text(g.names()))
		}
	}
	if g.sol.Redundancy > 0 && g.sol.Cost > g.sol.ChiHigh && !r.Statistics.Scaled && s.State == advise.Ready {
		s.State = advise.Unproven
		s.Why = append(s.Why, "the readings disagree more than their stated precision allows")
	}
	g.between(s)
	r.Next = g.proposals(next)
	for _, w := range advise.Weakest(g.sol, orders, o, mostWeak) {
		s.Weakest = append(s.Weakest, g.weak(w))
	}
}

// asks are the moves of the edge at every mark of every line that stands.
func (g *gather) asks() []advise.Ask {
	var out []advise.Ask
	for _, l := range g.lines {
		if len(l.Waits) == 0 && g.solved() {
			out = append(out, advise.Edges(g.sol, l.Marks, l.Normals, g.net.Edge, shapeTolerance)...)
		}
	}
	return out
}

// waiting says why the outlines cannot be judged, or not all of them.
func (g *gather) waiting(o advise.Order) []string {
	waits := false
	for _, l := range g.lines {
		waits = waits || len(l.Waits) > 0 || !g.solved()
	}
	switch {
	case len(g.lines) == 0:
		return []string{"the book names no line, so there is no outline to judge"}
	case len(o.Asks) == 0:
		return []string{"no line has all its marks fixed yet"}
	case waits:
		return []string{"a line still waits for marks"}
	}
	return nil
}

// tests lists the tests of the edge at its marks.
func (g *gather) tests(s *Shape, v advise.Verdict) {
	worst := -1.0
	for _, t := range v.Tests {
		unseen := t.Unseen
		out := Test{Name: t.Name, At: t.At, Value: t.Value, U95: some(t.U95), Tolerance: t.Tolerance, Share: t.Share, Unseen: &unseen, State: t.State}
		if t.State != advise.Ready {
			out.Why = t.Why.Text(g.names())
		}
		s.Tests = append(s.Tests, out)
		if t.U95 > worst && !math.IsInf(t.U95, 0) {
			worst = t.U95
			s.Worst, s.At = some(t.U95), t.At
		}
	}
}

// between tests what lies between the marks of curves, which no reading touches: the rise over the
// span by which a fair curve and the arc of its neighbours may differ. It does not count for ready,
// which is said of the marks.
func (g *gather) between(s *Shape) {
	for _, l := range g.lines {
		if len(l.Waits) > 0 || !g.solved() {
			continue
		}
		worst, at := g.open(l.Path)
		if worst == 0 {
			continue
		}
		t := Test{Name: "between", At: l.Name, U95: some(worst), Tolerance: shapeTolerance, Share: shapeShare, State: advise.Ready}
		if worst > shapeShare*shapeTolerance {
			t.State = advise.Unfit
			t.Why = "the edge between two marks near " + at + " may lie " + g.show()(worst) + " off; read a mark there"
		}
		s.Tests = append(s.Tests, t)
	}
}

// open is the largest difference between a piece of a line and the arc that its neighbours' mean
// curvature would give it, c²·Δκ/8 for a span c (the rise of a flat arc), with the mark it is near.
func (g *gather) open(p plane.Path) (worst float64, at string) {
	n := len(p.Segs)
	for i, s := range p.Segs {
		if !p.Closed && (i == 0 || i == n-1) || n < 3 || s.Bulge == 0 {
			continue
		}
		a, b := p.Segs[(i+n-1)%n], p.Segs[(i+1)%n]
		if a.Bulge == 0 || b.Bulge == 0 {
			continue
		}
		c := s.A.Dist(s.B)
		if d := c * c / 8 * math.Abs(curvature(s)-(curvature(a)+curvature(b))/2); d > worst {
			worst, at = d, g.nearest(s.A)
		}
	}
	return worst, at
}

// curvature of a segment: 4·bulge/(chord·(1 + bulge²)), positive turning left.
func curvature(s plane.Segment) float64 {
	return 4 * s.Bulge / (s.A.Dist(s.B) * (1 + s.Bulge*s.Bulge))
}

func (g *gather) nearest(p plane.Point) string {
	best, name := math.Inf(1), ""
	for m, q := range g.net.Marks {
		if d := g.sol.X.Point(m).Dist(p); d < best {
			best, name = d, q
		}
	}
	return name
}

// odd is what does not fit.
func (g *gather) odd() advise.Odd {
	odd := advise.Odd{Doubtful: g.rep.Groups}
	for i, s := range g.rep.State {
		if s == mistake.Suspect && !g.net.Obs[i].Check {
			odd.Suspect = append(odd.Suspect, i)
		}
	}
	return odd
}

func (g *gather) names() advise.Names {
	return advise.Names{Mark: func(m int) string { return g.net.Marks[m] }, Reading: g.n, Length: g.show()}
}

// weak is the sentence that everything serves.
func (g *gather) weak(w advise.Weak) Weak {
	show := g.show()
	i := g.sol.ObsOf(w.Part)
	t := g.book.Readings[g.net.Obs[i].Reading]
	out := Weak{Reading: t.N, Mark: g.net.Marks[w.Mark], Error: some(w.Error), Move: some(w.Move)}
	name := named(t.Reading, "–")
	if out.Error == nil {
		out.Text = "Any error could hide in " + name + " and would move the edge at " + out.Mark
	} else {
		out.Text = "An error of up to " + show(w.Error) + " could hide in " + name + " and would move the edge at " + out.Mark + " by " + show(w.Move)
	}
	if e := w.Expose; e != nil {
		out.Text += "; " + g.imperative(e.Kind, e.Marks) + " to expose it"
		out.Expose = []string{g.net.Marks[e.Marks[0]], g.net.Marks[e.Marks[1]]}
	}
	out.Text += "."
	return out
}
