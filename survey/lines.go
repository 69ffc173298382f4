package survey

import (
	"math"

	"brimline/outline"
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
		out.Inferred = some(l.Inferred)
		for _, gap := range l.Gaps {
			out.Gaps = append(out.Gaps, Gap{gap.From, gap.To, gap.Length, g.factor * gap.SD})
		}
		out.Family = g.family(l.Family)
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

// family says what a line is in a sentence, with its sizes.
func (g *gather) family(f *outline.Family) *Family {
	if f == nil {
		return nil
	}
	out := &Family{Kind: f.Kind, Text: f.Text(g.show()), Figures: map[string]float64{}}
	for _, x := range f.Figures {
		v := x.Value
		if x.Name == "skew" || x.Name == "parallel" {
			v *= degree
		}
		out.Figures[x.Name] = v
	}
	return out
}
