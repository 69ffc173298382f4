package survey

import (
	"math"

	"brimline/outline"
	"brimline/plane"
)

// fitted lists the lines in the book's frame.
func (g *gather) fitted(r *Result) {
	for _, l := range g.lines {
		out := &Line{Closed: l.Closed, Edge: l.Edge, Gaps: []Gap{}, Runs: []LineRun{}, Vertices: []Vertex{}, Waits: l.Waits}
		r.Lines[l.Name] = out
		r.LineOrder = append(r.LineOrder, l.Name)
		if len(l.Waits) > 0 || !g.solved() {
			continue
		}
		out.Length, out.LengthSD = some(l.Length), some(g.factor*l.LengthSD)
		if l.Closed {
			out.Area, out.AreaSD = some(l.Area), some(g.factor*l.AreaSD)
		}
		for _, run := range l.Runs {
			out.Runs = append(out.Runs, g.run(run))
		}
		path := l.Path.Move(g.place)
		for _, s := range path.Segs {
			out.Vertices = append(out.Vertices, Vertex{s.A.X, s.A.Y, s.Bulge})
		}
		if n := len(path.Segs); !l.Closed && n > 0 {
			out.Vertices = append(out.Vertices, Vertex{path.Segs[n-1].B.X, path.Segs[n-1].B.Y, 0})
		}
	}
}

const degree = 180 / math.Pi

func (g *gather) run(in outline.Run) LineRun {
	r := LineRun{Kind: in.Kind, From: in.From, To: in.To, Length: in.Length, LengthSD: g.factor * in.LengthSD, Joint: in.Joint, Pieces: in.Pieces}
	if !math.IsNaN(in.Turn) {
		r.Turn = some(in.Turn * degree)
	}
	switch in.Kind {
	case "straight":
		b := math.Mod((in.Bearing-g.place.Angle())*degree+720, 360)
		r.Bearing, r.BearingSD = some(b), some(g.factor*in.BearingSD*degree)
	case "arc":
		r.Radius, r.RadiusSD = some(in.Radius), some(g.factor*in.RadiusSD)
		if c := g.place.Apply(in.Centre); r.Radius != nil && c.Finite() {
			r.Centre = &[2]float64{c.X, c.Y}
		}
		r.Sweep, r.SweepSD = some(in.Sweep*degree), some(g.factor*in.SweepSD*degree)
	}
	return r
}

// Defaults of the shape order: common practice, no source.
const (
	shapeTolerance = 0.025
	shapeShare     = 0.5
	shapeUnseen    = 0.01
	coverage95     = 1.96
)

// shape judges the outlines as wholes: the 95 % uncertainty across each line at its marks, in
// the datum of the line itself, against its share of the tolerance.
func (g *gather) shape(r *Result) {
	s := &r.Shape
	s.State, s.Tolerance, s.Why = "unproven", shapeTolerance, []string{}
	s.Share, s.Unseen, s.Tests, s.Weakest = shapeShare, shapeUnseen, []Test{}, []Weak{}
	worst, at := -1.0, ""
	waiting := false
	for _, l := range g.lines {
		if len(l.Waits) > 0 || !g.solved() {
			waiting = true
			continue
		}
		f := g.sol.FitFrame(l.Marks)
		for i, m := range l.Marks {
			if u := g.factor * coverage95 * across(f.MarkCov(m), l.Normals[i], g.net.Edge[m]); u > worst {
				worst, at = u, l.Names[i]
			}
		}
	}
	show := g.show()
	if worst >= 0 {
		s.Worst, s.At = some(worst), at
	}
	switch {
	case len(g.lines) == 0:
		s.Why = append(s.Why, "the book names no line, so there is no outline to judge")
	case worst < 0:
		s.Why = append(s.Why, "no line has all its marks fixed yet")
	case waiting:
		s.Why = append(s.Why, "a line still waits for marks")
	}
	if worst > shapeShare*shapeTolerance {
		s.State = "unfit"
		s.Why = append(s.Why, "the edge at "+at+" is known to "+show(worst)+" (95 %), and "+show(shapeShare*shapeTolerance)+" is allowed")
	}
	if g.sol.Redundancy > 0 && g.sol.Cost > g.sol.ChiHigh {
		s.State = "unfit"
		s.Why = append(s.Why, "the readings disagree more than their stated precision allows")
	}
	if s.State == "unproven" && worst >= 0 {
		s.Why = append(s.Why, g.unproven())
	}
}

// across is the standard deviation of a mark along a normal, with what stays open about the edge.
func across(c [3]float64, n plane.Point, edge float64) float64 {
	v := c[0]*n.X*n.X + 2*c[1]*n.X*n.Y + c[2]*n.Y*n.Y + edge*edge
	return math.Sqrt(math.Max(v, 0))
}

func (g *gather) unproven() string {
	if g.sol.Redundancy <= 0 {
		return "the shape closes, but nothing checks it: no reading is left over"
	}
	return "mistakes that people make have not been ruled out yet"
}
